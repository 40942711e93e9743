import { defineConstant, defineFormula, type Trace } from "../../../formula/index.ts";
import type { Fastener } from "../../../materials/index.ts";
import { metres, millimetres, qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { nds } from "../sources.ts";

export const leastPenetration = defineConstant(
  "us-asd-2018.fastener.least-penetration",
  "Least penetration of a nail or wood screw, in shank diameters",
  "p_min",
  6,
  "1",
  nds("12.1.5 and 12.1.6", "seen"),
);

export const leastLagPenetration = defineConstant(
  "us-asd-2018.fastener.least-lag-penetration",
  "Least penetration of a lag screw without its point, in diameters",
  "p_min",
  4,
  "1",
  nds("12.1.4", "seen"),
);

/** How far a fastener is inside the piece that holds it. l length, s pieces before it, m its thickness [m]; p [m]. */
export const penetration = defineFormula(
  {
    id: "us-asd-2018.fastener.penetration",
    title: "Penetration into the piece that holds the point",
    symbol: "p",
    unit: "m",
    text: "max(0, min(l - s, m))",
    inputs: { l: "m", s: "m", m: "m" },
    validity: "Head flush with the side piece.",
    source: nds("12.1.4 to 12.1.6", "memory"),
  },
  ({ l, s, m }) => Math.max(0, Math.min(l - s, m)),
);

/** Penetration of a toe-nail at 30 degrees, started a third of its length from the end. l, m [m]; p [m]. */
export const toePenetration = defineFormula(
  {
    id: "us-asd-2018.fastener.toe-penetration",
    title: "Penetration of a toe-nail",
    symbol: "p",
    unit: "m",
    text: "max(0, min(l * cos(pi / 6) - l / 3, m))",
    inputs: { l: "m", m: "m" },
    validity: "Driven at about 30 degrees to the side piece, a third of the nail's length up from its end.",
    source: nds("12.1.6.3 and 12.3.5", "memory"),
  },
  ({ l, m }) => Math.max(0, Math.min(l * Math.cos(Math.PI / 6) - l / 3, m)),
);

/** How far a nail driven at 30 degrees reaches along the straight way. l [m]; l_t [m]. */
export const toeLength = defineFormula(
  {
    id: "us-asd-2018.fastener.toe-length",
    title: "Reach of a toe-nail along the straight way",
    symbol: "l_t",
    unit: "m",
    text: "l * cos(pi / 6)",
    inputs: { l: "m" },
    validity: "Driven at about 30 degrees.",
    source: nds("12.1.6.3 and 12.3.5", "memory"),
  },
  ({ l }) => l * Math.cos(Math.PI / 6),
);

export const toeSide = defineFormula(
  {
    id: "us-asd-2018.fastener.toe-side",
    title: "Length of a toe-nail in the side piece",
    symbol: "ls",
    unit: "m",
    text: "l / 3",
    inputs: { l: "m" },
    validity: "Started a third of the nail's length up from the end of the side piece.",
    source: nds("12.1.6.3", "memory"),
  },
  ({ l }) => l / 3,
);

export const usualTip = defineFormula(
  {
    id: "us-asd-2018.fastener.tip",
    title: "Length of the tapered point",
    symbol: "E",
    unit: "m",
    text: "2 * D",
    inputs: { D: "m" },
    validity: "Nails and wood screws; lag screws whose point is not tabulated.",
    source: nds("12.3.5", "memory"),
  },
  ({ D }) => 2 * D,
);

/** Part of the point that is inside the holding piece. E point, l length, s before, m thickness [m]; E_t [m]. */
export const tipInside = defineFormula(
  {
    id: "us-asd-2018.fastener.tip-inside",
    title: "Part of the point that is inside the holding piece",
    symbol: "E_t",
    unit: "m",
    text: "max(0, E - max(0, l - s - m))",
    inputs: { E: "m", l: "m", s: "m", m: "m" },
    validity: "A fastener that comes out at the back loses less of its point.",
    source: nds("12.3.5", "memory"),
  },
  ({ E, l, s, m }) => Math.max(0, E - Math.max(0, l - s - m)),
);

/** Length that counts in the yield modes: short fasteners lose half their point. p, E_t [m]; l_b [m]. */
export const bearingLength = defineFormula(
  {
    id: "us-asd-2018.fastener.bearing-length",
    title: "Length of the fastener that bears in the piece that holds the point",
    symbol: "l_b",
    unit: "m",
    text: "p - E_t / 2",
    inputs: { p: "m", E_t: "m" },
    validity: "p < 10 D; with p >= 10 D nothing is taken off.",
    source: nds("12.3.5", "memory"),
  },
  ({ p, E_t }) => p - E_t / 2,
);

/** Share of the tabulated lateral value of a fastener that reaches less deep than the tables assume. p, p_t [m]; C_p [1]. */
export const shortShare = defineFormula(
  {
    id: "us-asd-2018.fastener.short-share",
    title: "Share of the tabulated value for a short reach",
    symbol: "C_p",
    unit: "1",
    text: "min(1, p / p_t)",
    inputs: { p: "m", p_t: "m" },
    validity: "p from 6 D (lag screws 4 D) on; p_t is 10 D, for lag screws 8 D.",
    source: nds(
      "Tables 12J to 12R: p over 10 D, lag screws over 8 D (AWC answer on the penetration depth factor)",
      "seen",
    ),
  },
  ({ p, p_t }) => Math.min(1, p / p_t),
);

/** Where the point of a fastener sits. Lengths in metres. */
export interface Reach {
  /** Nominal diameter. */
  readonly D: Qty<"m">;
  readonly p: Qty<"m">;
  readonly tip: Qty<"m">;
  readonly tip_inside: Qty<"m">;
  /** Length in the side piece under the head. */
  readonly side: Qty<"m">;
  /** Why the reach is not enough to count on; null when it is. */
  readonly fault: string | null;
}

/** What the fastener passes before the piece that holds its point, and the thickness of that piece [m]. */
function way({ side, main, shear }: FastenerJoint): { readonly before: number; readonly holds: number } {
  return shear === "double"
    ? { before: side.thickness_m + main.thickness_m, holds: side.thickness_m }
    : { before: side.thickness_m, holds: main.thickness_m };
}

/** Where the point sits in the piece that holds it: the main piece, in double shear the far side piece. */
export function reachOf(joint: FastenerJoint, trace?: Trace): Reach {
  const { fastener: f, toe_nail } = joint;
  const D = millimetres(f.diameter_mm);
  const l = millimetres(f.length_mm);
  const { before, holds } = way(joint);
  const tip = f.tip_mm === undefined ? usualTip({ D }, trace) : millimetres(f.tip_mm);
  const m = metres(holds);
  const side = toe_nail ? toeSide({ l }, trace) : metres(joint.side.thickness_m);
  const p = toe_nail ? toePenetration({ l, m }, trace) : penetration({ l, s: metres(before), m }, trace);
  const tip_inside = toe_nail ? tip : tipInside({ E: tip, l, s: metres(before), m }, trace);
  const fault = reachFault(joint, { p, tip_inside, l, before }, trace);
  return { D, p, tip, tip_inside, side, fault };
}

interface Way {
  readonly p: Qty<"m">;
  readonly tip_inside: Qty<"m">;
  readonly l: Qty<"m">;
  readonly before: number;
}

function reachFault(joint: FastenerJoint, at: Way, trace?: Trace): string | null {
  const f: Fastener = joint.fastener;
  const D = millimetres(f.diameter_mm);
  if (!joint.toe_nail && at.l <= at.before)
    return joint.shear === "double"
      ? "the fastener does not reach into the far side piece"
      : "the fastener does not reach through the side piece";
  if (joint.shear === "double" && joint.side.material === "steel")
    return at.l + 1e-12 >= at.before + joint.side.thickness_m
      ? null
      : "the fastener does not reach through the far plate";
  if (f.kind === "lag-screw") {
    const least = leastLagPenetration({}, trace);
    return at.p - at.tip_inside + 1e-12 < least * D ? `reaches in less than ${least} diameters` : null;
  }
  const least = leastPenetration({}, trace);
  return at.p + 1e-12 < least * D ? `reaches in less than ${least} shank diameters` : null;
}

/** Length that bears in the holding piece by the yield equations. */
export const bears = ({ p, D, tip_inside }: Reach, trace?: Trace): Qty<"m"> =>
  p >= 10 * D ? p : bearingLength({ p, E_t: tip_inside }, trace);

/** Reach that the printed tables take for granted, and the share of their value that this reach earns. */
export function tableShare(joint: FastenerJoint, reach: Reach, trace?: Trace) {
  const isLag = joint.fastener.kind === "lag-screw";
  const p_t = qty((isLag ? 8 : 10) * reach.D, "m");
  const p = isLag ? qty(Math.max(0, reach.p - reach.tip_inside), "m") : reach.p;
  return { assumed: qty(Math.max(reach.p, p_t), "m"), share: shortShare({ p, p_t }, trace) };
}
