import { defineConstant, defineFormula, type Trace } from "../../../formula/index.ts";
import { metres, newtons, qty, type Qty } from "../../../units/index.ts";
import type { Found } from "../../contract.ts";
import { noCapacity, type FastenerCapacity, type FastenerJoint } from "../../fastener-contract.ts";
import { holeShare } from "../../fastener-holes.ts";
import { bearingOf, shankOf } from "./dowel.ts";
import {
  designValue,
  effectiveAcross,
  endGrain,
  gammaM,
  isClassThree,
  kmodOf,
  noFactor,
  toeNailLateral,
} from "./factors.ts";
import { ec5JointFaults } from "./faults.ts";
import { isSmooth, pointSideOf, type PointSide } from "./reach.ts";
import { clause } from "./sources.ts";
import { steelModes } from "./steel-modes.ts";
import { pullOf } from "./withdrawal-values.ts";
import { doubleModes, singleModes, type Mode } from "./wood-modes.ts";

const share = (name: string, what: string, value: number) =>
  defineConstant(
    `ec5-2004.fastener.rope-${name}`,
    `Most that the pull may add, ${what}`,
    "k_r",
    value,
    "1",
    clause("8.2.2(2)"),
  );
export const ropeShares = {
  smooth: share("smooth", "round smooth nails", 0.15),
  ring: share("ring", "ring-shank nails", 0.25),
  screw: share("screw", "screws", 1),
} as const;

/** Rope part on top of bending and crushing. F_J, F_ax [N], k_r [1]; F_v [N]. */
export const withRope = defineFormula(
  {
    id: "ec5-2004.fastener.rope",
    title: "Lateral value of one shear plane with the pull along the fastener",
    symbol: "F_v",
    unit: "N",
    text: "F_J + min(k_r * F_J, F_ax / 4)",
    inputs: { F_J: "N", k_r: "1", F_ax: "N" },
    validity:
      "Failure modes in which the fastener tilts or bends; F_ax is its characteristic hold along its length.",
    source: clause("8.2.2(2)"),
  },
  ({ F_J, k_r, F_ax }) => F_J + Math.min(k_r * F_J, F_ax / 4),
);

export const bothPlanes = defineFormula(
  {
    id: "ec5-2004.fastener.two-planes",
    title: "Lateral value of one fastener in two shear planes",
    symbol: "F_2",
    unit: "N",
    text: "2 * F_v",
    inputs: { F_v: "N" },
    validity: "Two equal side pieces.",
    source: clause("8.1.3"),
  },
  ({ F_v }) => 2 * F_v,
);

export const lateralFormulas = [...Object.values(ropeShares), withRope, bothPlanes] as const;

/**
 * Design lateral value of nails and screws (EN 1995-1-1, 8.2, 8.3 and 8.7), single or double shear. 0 N with a reason
 * where the point does not reach in far enough and for end grain that may not carry. Problems name what is missing.
 */
export function ec5Lateral(joint: FastenerJoint, trace?: Trace): Found<FastenerCapacity> {
  const problems = ec5JointFaults(joint, "lateral");
  if (problems.length > 0) return { ok: false, problems };
  const at = pointSideOf(joint, trace);
  const barred = at.fault ?? endGrainFault(joint);
  if (barred !== null) return { ok: true, value: noCapacity(newtons(0), barred) };
  const { one, mode } = characteristic(joint, at, trace);
  const value = designValue(
    {
      n_ef: effectiveAcross(joint, trace),
      F_k: one,
      k_mod: kmodOf(joint, trace),
      g_M: gammaM({}, trace),
      k_a:
        joint.grain === "end"
          ? endGrain({}, trace)
          : joint.toe_nail
            ? toeNailLateral({}, trace)
            : noFactor({}),
      k_h: holeShare(joint, "lateral", trace),
    },
    trace,
  );
  const reason = value > 0 ? null : `${joint.hole.name}: nothing to count on`;
  return {
    ok: true,
    value: { value, one, governs: `failure mode ${mode}`, reason, not_checked: notChecked(joint) },
  };
}

function endGrainFault(joint: FastenerJoint): string | null {
  if (joint.grain !== "end") return null;
  if (isSmooth(joint)) return "smooth nails in end grain may carry nothing";
  if (joint.fastener.kind !== "nail" && joint.fastener.diameter_mm > 6)
    return "no rule for screws over 6 mm in end grain";
  return isClassThree(joint.moisture)
    ? "nails and screws in end grain may carry nothing in wet wood (service class 3)"
    : null;
}

/** One fastener, characteristic: the least failure mode, rope part and shear planes in. */
function characteristic(joint: FastenerJoint, at: PointSide, trace?: Trace) {
  const rope = joint.rope && joint.shear === "single" && !joint.toe_nail ? pullOfOne(joint, at, trace) : null;
  const planeOf = (mode: Mode, t?: Trace): Qty<"N"> => {
    const F_J = mode.value(t);
    return mode.rope && rope ? withRope({ F_J, ...rope }, t) : F_J;
  };
  const least = modesOf(joint, at, trace).reduce((a, b) => (planeOf(b) < planeOf(a) ? b : a));
  const F_v = planeOf(least, trace);
  return { one: joint.shear === "double" ? bothPlanes({ F_v }, trace) : F_v, mode: least.name };
}

function pullOfOne(joint: FastenerJoint, at: PointSide, trace?: Trace) {
  // Without the thread's length nothing along the fastener is known, and so nothing helps across it.
  if (joint.fastener.kind !== "nail" && joint.fastener.thread_mm === undefined) return null;
  const { out, head } = pullOf(joint, at, trace);
  const F_ax = newtons(Math.min(out, head ?? out));
  const kind = joint.fastener.kind === "nail" ? (isSmooth(joint) ? "smooth" : "ring") : "screw";
  return { F_ax, k_r: ropeShares[kind]({}, trace) };
}

function modesOf(joint: FastenerJoint, { t_p, head_side }: PointSide, trace?: Trace): readonly Mode[] {
  const { side, main, shear } = joint;
  const { d, M_y } = shankOf(joint, trace);
  const isDouble = shear === "double";
  const f_h2 = bearingOf(joint, joint.grain === "end" ? { ...main, angle_deg: 90 } : main, d, trace);
  const inMain = isDouble ? metres(main.thickness_m) : t_p;
  if (side.material === "steel")
    return steelModes({ d, M_y, f_h: f_h2, t: inMain, plate: metres(side.thickness_m) }, shear, trace);
  const f_h1 = bearingOf(joint, side, d, trace);
  const t_1 = isDouble ? metres(Math.min(head_side, t_p)) : head_side;
  const wood = { d, M_y, f_h1, f_h2, t_1, t_2: inMain, b: qty(f_h2 / f_h1, "1"), r: qty(inMain / t_1, "1") };
  return isDouble ? doubleModes(wood) : singleModes(wood);
}

const notChecked = ({ side }: FastenerJoint): string[] => [
  "splitting, and the timber between fasteners: keep the distances of the guidance",
  ...(side.material === "steel" ? ["the steel plate itself: tearing and bearing"] : []),
];
