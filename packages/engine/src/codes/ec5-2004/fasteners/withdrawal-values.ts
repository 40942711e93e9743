import { defineFormula, type Trace } from "../../../formula/index.ts";
import { metres, millimetres, newtons, qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { isSmooth, slantLength, type PointSide } from "./reach.ts";
import { clause, projectRule } from "./sources.ts";

/** Pull-out of one nail. rho [kg/m3], d, t length that holds [m]; F_w [N]. */
export const nailPullOut = defineFormula(
  {
    id: "ec5-2004.fastener.nail-pull-out",
    title: "Characteristic pull-out of one nail",
    symbol: "F_w",
    unit: "N",
    text: "20e-6 * rho^2 * 1e6 * d * t",
    inputs: { rho: "kg/m3", d: "m", t: "m" },
    validity:
      "Smooth nails; ring-shank nails hold more by the maker's declared value, which is not counted here.",
    source: clause("equations 8.23 to 8.25", "memory"),
  },
  ({ rho, d, t }) => 20e-6 * rho ** 2 * 1e6 * d * t,
);

/** Share of a nail's hold that a short reach earns. x reach over diameter, o and w start and width of the rise [1]; k_t [1]. */
export const shortNailShare = defineFormula(
  {
    id: "ec5-2004.fastener.short-nail",
    title: "Share of a nail's hold for a short reach",
    symbol: "k_t",
    unit: "1",
    text: "max(0, min(1, (x - o) / w))",
    inputs: { x: "1", o: "1", w: "1" },
    validity: "Smooth nails rise from 8 to 12 diameters, others from 6 to 8.",
    source: clause("8.3.2(7)"),
  },
  ({ x, o, w }) => Math.max(0, Math.min(1, (x - o) / w)),
);

/** The head of a nail through the side piece. rho [kg/m3], d_h head [m]; F_h [N]. */
export const headThrough = defineFormula(
  {
    id: "ec5-2004.fastener.head-through",
    title: "Characteristic pull-through of one head",
    symbol: "F_h",
    unit: "N",
    text: "70e-6 * rho^2 * 1e6 * d_h^2",
    inputs: { rho: "kg/m3", d_h: "m" },
    validity: "Nails; screws by project decision, whose declared values are higher.",
    source: clause("equation 8.26"),
  },
  ({ rho, d_h }) => 70e-6 * rho ** 2 * 1e6 * d_h ** 2,
);

/** Shank of a smooth nail in the side piece helps its head. F_h [N], rho [kg/m3], d, t [m]; F_s [N]. */
export const headAndShank = defineFormula(
  {
    id: "ec5-2004.fastener.head-and-shank",
    title: "Characteristic hold of a smooth nail in the side piece",
    symbol: "F_s",
    unit: "N",
    text: "20e-6 * rho^2 * 1e6 * d * t + F_h",
    inputs: { rho: "kg/m3", d: "m", t: "m", F_h: "N" },
    validity: "Smooth nails.",
    source: clause("equation 8.24"),
  },
  ({ rho, d, t, F_h }) => 20e-6 * rho ** 2 * 1e6 * d * t + F_h,
);

/** Pull-out of one screw. rho [kg/m3], d thread, l thread in the main piece [m]; F_w [N]. */
export const screwPullOut = defineFormula(
  {
    id: "ec5-2004.fastener.screw-pull-out",
    title: "Characteristic pull-out of one screw",
    symbol: "F_w",
    unit: "N",
    text: "0.52 * (1000 * d)^(-0.5) * (1000 * l)^(-0.1) * rho^0.8 * (1000 * d) * (1000 * l) * min(1000 * d / 8, 1)",
    inputs: { rho: "kg/m3", d: "m", l: "m" },
    validity:
      "Square to the grain, thread of 6 diameters and more in the main piece. Under 6 mm by project decision.",
    source: clause("equations 8.38 to 8.40 (A1:2008)"),
  },
  ({ rho, d, l }) =>
    0.52 *
    (1000 * d) ** -0.5 *
    (1000 * l) ** -0.1 *
    rho ** 0.8 *
    (1000 * d) *
    (1000 * l) *
    Math.min((1000 * d) / 8, 1),
);

/** Screws that pull together. n [1]; n_ef [1]. */
export const screwsTogether = defineFormula(
  {
    id: "ec5-2004.fastener.screws-together",
    title: "Effective number of screws pulled together",
    symbol: "n_ef",
    unit: "1",
    text: "n^0.9",
    inputs: { n: "1" },
    validity: "n >= 1.",
    source: clause("equation 8.41"),
  },
  ({ n }) => n ** 0.9,
);

/** Thread inside the main piece. l length, T thread, s side, m main [m]; l_ef [m]. */
export const threadInside = defineFormula(
  {
    id: "ec5-2004.fastener.thread-inside",
    title: "Thread inside the main piece",
    symbol: "l_ef",
    unit: "m",
    text: "max(0, min(l, s + m) - max(s, l - T))",
    inputs: { l: "m", T: "m", s: "m", m: "m" },
    validity: "The point counts as thread.",
    source: projectRule("what of the thread lies between the faces of the main piece"),
  },
  ({ l, T, s, m }) => Math.max(0, Math.min(l, s + m) - Math.max(s, l - T)),
);

export const withdrawalFormulas = [
  nailPullOut,
  shortNailShare,
  headThrough,
  headAndShank,
  screwPullOut,
  screwsTogether,
  threadInside,
] as const;

/** One fastener along its length, characteristic: out of the main piece and through the side piece. */
export interface Pull {
  readonly out: Qty<"N">;
  /** Null where the head is not known or the side piece is steel. */
  readonly head: Qty<"N"> | null;
  readonly reason: string | null;
}

export function pullOf(joint: FastenerJoint, at: PointSide, trace?: Trace): Pull {
  const nothing = (reason: string): Pull => ({ out: newtons(0), head: null, reason });
  if (joint.grain === "end") return nothing("nothing driven into end grain may be pulled along its length");
  if (at.fault !== null) return nothing(at.fault);
  return joint.fastener.kind === "nail" ? pullOfNail(joint, at, trace) : pullOfScrew(joint, trace);
}

function pullOfNail(joint: FastenerJoint, { t_p, head_side }: PointSide, trace?: Trace): Pull {
  const { fastener: f, main } = joint;
  if (isSmooth(joint) && joint.duration === "permanent")
    return {
      out: newtons(0),
      head: null,
      reason: "smooth nails may not carry a lasting pull: use ring-shank nails or screws",
    };
  const d = millimetres(f.diameter_mm);
  const t = f.shank === "ring" ? rings(joint, head_side, trace) : t_p;
  const [o, w] = isSmooth(joint) ? [8, 4] : [6, 2];
  const k = shortNailShare({ x: qty(t_p / d, "1"), o: qty(o, "1"), w: qty(w, "1") }, trace);
  const full = nailPullOut({ rho: qty(main.density_k ?? NaN, "kg/m3"), d, t }, trace);
  const out = qty(k * full, "N");
  const short =
    t > 0 ? `reaches in no more than ${o} diameters` : "no rings of the nail are in the main piece";
  const reason = out > 0 ? null : short;
  return { out, head: headOf(joint, head_side, trace), reason };
}

/** Length of the rings inside the main piece; a ring-shank nail without a known one counts as ringed all along. */
function rings({ fastener: f, main, toe_nail }: FastenerJoint, s: Qty<"m">, trace?: Trace): Qty<"m"> {
  const whole = millimetres(f.length_mm);
  const l = toe_nail ? slantLength({ l: whole }, trace) : whole;
  const T = millimetres(f.thread_mm ?? f.length_mm);
  return threadInside({ l, T, s, m: metres(main.thickness_m) }, trace);
}

function headOf(joint: FastenerJoint, t: Qty<"m">, trace?: Trace): Qty<"N"> | null {
  const { side, fastener: f } = joint;
  if (side.material === "steel" || f.head_mm === undefined) return null;
  const rho = qty(side.density_k ?? NaN, "kg/m3");
  const F_h = headThrough({ rho, d_h: millimetres(f.head_mm) }, trace);
  return isSmooth(joint) ? headAndShank({ rho, d: millimetres(f.diameter_mm), t, F_h }, trace) : F_h;
}

function pullOfScrew(joint: FastenerJoint, trace?: Trace): Pull {
  const { fastener: f, side, main } = joint;
  const d = millimetres(f.diameter_mm);
  const l = threadInside(
    {
      l: millimetres(f.length_mm),
      T: millimetres(f.thread_mm ?? NaN),
      s: metres(side.thickness_m),
      m: metres(main.thickness_m),
    },
    trace,
  );
  if (l + 1e-12 < 6 * d)
    return { out: newtons(0), head: null, reason: "less than 6 diameters of thread in the main piece" };
  const out = screwPullOut({ rho: qty(main.density_k ?? NaN, "kg/m3"), d, l }, trace);
  return { out, head: headOf(joint, metres(side.thickness_m), trace), reason: null };
}
