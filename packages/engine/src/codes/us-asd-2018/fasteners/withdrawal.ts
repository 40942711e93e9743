import { defineFormula, type Trace } from "../../../formula/index.ts";
import { metres, millimetres, qty, type Qty } from "../../../units/index.ts";
import type { Found } from "../../contract.ts";
import { noCapacity, type FastenerCapacity, type FastenerJoint } from "../../fastener-contract.ts";
import { holeShare } from "../../fastener-holes.ts";
import { noFactor } from "../service-factors.ts";
import { nds } from "../sources.ts";
import { durationOf, wetWithdrawal, withdrawalFactors } from "./factors.ts";
import { usJointFaults } from "./faults.ts";
import { pullThroughDeep, pullThroughThin, withdrawalRate } from "./withdrawal-rates.ts";
import { toeLength } from "./reach-formulas.ts";
import { reachOf, type Reach } from "./reach.ts";

/** Thread, rings or shank inside the main piece. l length, T thread, E_c point taken off, s side, m main [m]; p_w [m]. */
export const heldLength = defineFormula(
  {
    id: "us-asd-2018.fastener.held-length",
    title: "Length that holds in the main piece",
    symbol: "p_w",
    unit: "m",
    text: "max(0, min(l - E_c, s + m) - max(s, l - T))",
    inputs: { l: "m", T: "m", E_c: "m", s: "m", m: "m" },
    validity:
      "T is the whole length for smooth nails; the point of lag screws does not hold, that of others does.",
    source: nds("12.2", "seen"),
  },
  ({ l, T, E_c, s, m }) => Math.max(0, Math.min(l - E_c, s + m) - Math.max(s, l - T)),
);

/** Withdrawal of the whole joint. W [N/m], p_w [m], n fasteners, factors [1]; W' [N]. */
export const adjustedWithdrawal = defineFormula(
  {
    id: "us-asd-2018.fastener.adjusted-withdrawal",
    title: "Withdrawal value of the fasteners that may be used",
    symbol: "W'",
    unit: "N",
    text: "n * W * p_w * CD_c * CM * Ceg * Ctn * C_h",
    inputs: { n: "1", W: "N/m", p_w: "m", CD_c: "1", CM: "1", Ceg: "1", Ctn: "1", C_h: "1" },
    validity: "The steel itself holds; full edge and end distances.",
    source: nds("Table 11.3.1", "seen"),
  },
  ({ n, W, p_w, CD_c, CM, Ceg, Ctn, C_h }) => n * W * p_w * CD_c * CM * Ceg * Ctn * C_h,
);

/** Pull-through of all heads. n [1], W_H [N], factors [1]; W_H' [N]. */
export const adjustedPullThrough = defineFormula(
  {
    id: "us-asd-2018.fastener.adjusted-pull-through",
    title: "Pull-through value of the heads that may be used",
    symbol: "W_H'",
    unit: "N",
    text: "n * W_H * CD_c * CM_H",
    inputs: { n: "1", W_H: "N", CD_c: "1", CM_H: "1" },
    validity: "Round flat heads on a wooden side piece.",
    source: nds("Table 11.3.1 and 12.2.5; wet service from memory", "memory"),
  },
  ({ n, W_H, CD_c, CM_H }) => n * W_H * CD_c * CM_H,
);

/**
 * Withdrawal of nails, wood screws and lag screws out of the main piece, and the head through the side piece, whichever is
 * less (NDS 2018, 12.2). 0 N with a reason for nails and wood screws in end grain and for points that do not reach in.
 */
export function usWithdrawal(joint: FastenerJoint, trace?: Trace): Found<FastenerCapacity> {
  const problems = usJointFaults(joint, "withdrawal");
  if (problems.length > 0) return { ok: false, problems };
  const nothing = (reason: string): Found<FastenerCapacity> => ({
    ok: true,
    value: noCapacity(qty(0, "N"), reason),
  });
  if (joint.grain === "end" && joint.fastener.kind !== "lag-screw")
    return nothing("nails and wood screws driven into end grain have no withdrawal value");
  const reach = reachOf(joint, trace);
  if (reach.fault !== null) return nothing(reach.fault);
  const p_w = held(joint, reach, trace);
  if (p_w <= 0) return nothing("no thread of the fastener is in the main piece");
  const out = pulledOut(joint, reach, p_w, trace);
  if (out.all <= 0) return nothing(`${joint.hole.name}: nothing to count on`);
  const head = throughSide(joint, trace);
  const isHead = head !== null && head.all < out.all;
  return {
    ok: true,
    value: {
      value: isHead ? head.all : out.all,
      one: isHead ? head.one : out.one,
      governs: isHead ? "the head pulls through the side piece" : "the fastener pulls out of the main piece",
      reason: null,
      not_checked: notChecked(joint, head === null),
    },
  };
}

function held(joint: FastenerJoint, reach: Reach, trace?: Trace): Qty<"m"> {
  const { fastener: f, main } = joint;
  const whole = millimetres(f.length_mm);
  const l = joint.toe_nail ? toeLength({ l: whole }, trace) : whole;
  const T = f.kind === "nail" && f.shank !== "ring" ? l : millimetres(f.thread_mm ?? f.length_mm);
  const E_c = f.kind === "lag-screw" ? reach.tip : metres(0);
  return heldLength({ l, T, E_c, s: reach.side, m: metres(main.thickness_m) }, trace);
}

function pulledOut(joint: FastenerJoint, reach: Reach, p_w: Qty<"m">, trace?: Trace) {
  const W = withdrawalRate(joint, reach.D, trace);
  const all = adjustedWithdrawal(
    {
      n: qty(joint.count, "1"),
      W,
      p_w,
      CD_c: durationOf(joint, trace),
      CM: wetWithdrawal(joint, trace),
      Ceg: joint.grain === "end" ? withdrawalFactors.lag_end_grain({}, trace) : noFactor({}),
      Ctn: joint.toe_nail ? withdrawalFactors.toe_nail({}, trace) : noFactor({}),
      C_h: holeShare(joint, "withdrawal", trace),
    },
    trace,
  );
  return { all, one: qty(W * p_w, "N") };
}

/** The head through a wooden side piece; null where the head is not known or the side piece is steel. */
function throughSide(joint: FastenerJoint, trace?: Trace) {
  const { side, fastener: f } = joint;
  if (side.material === "steel" || f.head_mm === undefined) return null;
  const [D_H, G] = [millimetres(f.head_mm), qty(side.gravity ?? NaN, "1")];
  const t = metres(side.thickness_m);
  const W_H = t <= 2.5 * D_H ? pullThroughThin({ D_H, G, t }, trace) : pullThroughDeep({ D_H, G }, trace);
  const CM_H = joint.moisture === "dry" ? noFactor({}) : withdrawalFactors.screw_wet({}, trace);
  const all = adjustedPullThrough(
    { n: qty(joint.count, "1"), W_H, CD_c: durationOf(joint, trace), CM_H },
    trace,
  );
  return { all, one: W_H };
}

const notChecked = ({ side }: FastenerJoint, noHead: boolean): string[] => [
  ...(side.material === "wood" && noHead ? ["the head pulling through the side piece: missing head_mm"] : []),
  "the steel of the fastener in tension",
];
