import { defineFormula, recordValue, type Trace } from "../../../formula/index.ts";
import { PA_PER_PSI, metres, millimetres, psi, qty, type Qty } from "../../../units/index.ts";
import type { Found } from "../../contract.ts";
import { noCapacity, type FastenerCapacity, type FastenerJoint } from "../../fastener-contract.ts";
import { holeShare } from "../../fastener-holes.ts";
import { leastYieldMode } from "../lateral.ts";
import { noFactor } from "../service-factors.ts";
import { nds } from "../sources.ts";
import { mainBearing, sideBearing } from "./bearing.ts";
import { durationOf, lateralFactors, wetLateral } from "./factors.ts";
import { usJointFaults } from "./faults.ts";
import { groupOf } from "./group.ts";
import { bears, reachOf, tableShare, type Reach } from "./reach.ts";
import { reductionsOf } from "./reduction.ts";

/** Lateral value of the whole joint. Z [N], n fasteners, factors [1]; Z' [N]. */
export const adjustedLateral = defineFormula(
  {
    id: "us-asd-2018.fastener.adjusted-lateral",
    title: "Lateral value of the fasteners that may be used",
    symbol: "Z'",
    unit: "N",
    text: "n * Z * CD_c * CM * Cg * Ceg * Ctn * C_p * C_h",
    inputs: { n: "1", Z: "N", CD_c: "1", CM: "1", Cg: "1", Ceg: "1", Ctn: "1", C_p: "1", C_h: "1" },
    validity: "Spaced so that the wood does not split; full edge and end distances.",
    source: nds("Table 11.3.1", "seen"),
  },
  ({ n, Z, CD_c, CM, Cg, Ceg, Ctn, C_p, C_h }) => n * Z * CD_c * CM * Cg * Ceg * Ctn * C_p * C_h,
);

/** Bending yield of a fastener known by its tensile strength alone. fu [Pa], d [m]; Fyb [Pa]. */
export const yieldFromTensile = defineFormula(
  {
    id: "us-asd-2018.fastener.yield-from-tensile",
    title: "Bending yield from the tensile strength",
    symbol: "Fyb",
    unit: "Pa",
    text: "1.8 * fu * (1000 * d)^(-0.4)",
    inputs: { fu: "Pa", d: "m" },
    validity: "Round steel fasteners: the European yield moment over the plastic section modulus d^3 / 6.",
    source: {
      id: "causey-fasteners",
      title: "Project decision on fasteners",
      at: "one yield moment for both codes",
      status: "project",
    },
  },
  ({ fu, d }) => 1.8 * fu * (1000 * d) ** -0.4,
);

/**
 * Lateral value of nails, wood screws and lag screws (NDS 2018, chapters 11 and 12), single or double shear. 0 N with a
 * reason where the point does not reach in far enough. Problems name what is missing.
 */
export function usLateral(joint: FastenerJoint, trace?: Trace): Found<FastenerCapacity> {
  const problems = usJointFaults(joint, "lateral");
  if (problems.length > 0) return { ok: false, problems };
  const reach = reachOf(joint, trace);
  if (reach.fault !== null) return { ok: true, value: noCapacity(qty(0, "N"), reach.fault) };
  const { one, mode, C_p } = referenceValue(joint, reach, trace);
  const value = adjustedLateral(
    {
      n: qty(joint.count, "1"),
      Z: one,
      CD_c: durationOf(joint, trace),
      CM: wetLateral(joint, reach.D, trace),
      Cg: groupOf(joint, reach.D, trace),
      Ceg: joint.grain === "end" ? lateralFactors.end_grain({}, trace) : noFactor({}),
      Ctn: joint.toe_nail ? lateralFactors.toe_nail({}, trace) : noFactor({}),
      C_p,
      C_h: holeShare(joint, "lateral", trace),
    },
    trace,
  );
  const reason = value > 0 ? null : `${joint.hole.name}: nothing to count on`;
  return {
    ok: true,
    value: { value, one, governs: `yield mode ${mode}`, reason, not_checked: notChecked(joint) },
  };
}

const notChecked = ({ side }: FastenerJoint): string[] => [
  "splitting, and the timber between fasteners: keep the distances of the guidance",
  ...(side.material === "steel" ? ["the steel plate itself: tearing and bearing"] : []),
];

function referenceValue(joint: FastenerJoint, reach: Reach, trace?: Trace) {
  const { fastener: f, shear } = joint;
  const { D } = reach;
  const byTable = joint.short_reach === "table" && !isSteelThrough(joint);
  const { assumed, share } = byTable
    ? tableShare(joint, reach, trace)
    : { assumed: reach.p, share: noFactor({}) };
  const end = byTable
    ? assumed
    : isSteelThrough(joint)
      ? metres(joint.side.thickness_m)
      : bears(reach, trace);
  const [root, Fyb] = rootAndYield(joint, trace);
  const dowel = {
    D: root,
    lm: shear === "double" ? metres(joint.main.thickness_m) : end,
    ls: shear === "double" ? qty(Math.min(reach.side, end), "m") : reach.side,
    Fem: mainBearing(joint, D, trace),
    Fes: sideBearing(joint, D, trace),
    Fyb,
  };
  const found = leastYieldMode(
    dowel,
    reductionsOf(joint, D, f.kind === "nail" ? D : root, trace),
    shear,
    trace,
  );
  return { one: found.value, mode: found.mode, C_p: share };
}

/** In double shear through plates the far plate is no wood to bear on by depth. */
const isSteelThrough = ({ side, shear }: FastenerJoint): boolean =>
  side.material === "steel" && shear === "double";

/** Diameter of the yield equations (root of screws) and bending yield, as steps of the working. */
function rootAndYield({ fastener: f }: FastenerJoint, trace?: Trace): readonly [Qty<"m">, Qty<"Pa">] {
  const source = nds("Table L2 to L4 and Table I1", f.status);
  const how = "as tabulated";
  const D = millimetres(f.kind === "nail" ? f.diameter_mm : (f.root_mm ?? NaN));
  const title = f.kind === "nail" ? "Shank diameter" : "Root diameter";
  recordValue(trace, { id: "screw.root", title, symbol: "D", value: D, unit: "m", source, how });
  if (f.fyb_psi === undefined)
    return [D, yieldFromTensile({ fu: qty((f.fu_mpa ?? NaN) * 1e6, "Pa"), d: D }, trace)];
  const Fyb = psi(f.fyb_psi);
  recordValue(trace, {
    id: "screw.fyb",
    title: "Bending yield of the fastener",
    symbol: "Fyb",
    value: Fyb,
    unit: "Pa",
    source,
    how: `as tabulated: ${(Fyb / PA_PER_PSI).toFixed(0)} psi`,
  });
  return [D, Fyb];
}
