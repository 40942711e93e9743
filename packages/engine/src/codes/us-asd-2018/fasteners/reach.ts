import type { Trace } from "../../../formula/index.ts";
import type { Fastener } from "../../../materials/index.ts";
import { metres, millimetres, qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import {
  bearingLength,
  leastLagPenetration,
  leastPenetration,
  penetration,
  shortShare,
  tipInside,
  toePenetration,
  toeSide,
  usualTip,
} from "./reach-formulas.ts";

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
