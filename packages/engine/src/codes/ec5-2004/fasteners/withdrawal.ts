import type { Trace } from "../../../formula/index.ts";
import { newtons, qty, type Qty } from "../../../units/index.ts";
import type { Found } from "../../contract.ts";
import { noCapacity, type FastenerCapacity, type FastenerJoint } from "../../fastener-contract.ts";
import { holeShare } from "../../fastener-holes.ts";
import { designValue, drying, gammaM, kmodOf, noFactor, toeNailWithdrawal } from "./factors.ts";
import { ec5JointFaults } from "./faults.ts";
import { pointSideOf } from "./reach.ts";
import { pullOf, screwsTogether } from "./withdrawal-values.ts";

/**
 * Design pull along nails and screws, out of the main piece or the head through the side piece, whichever is less
 * (EN 1995-1-1, 8.3.2 and 8.7.2). 0 N with a reason in end grain, for short reaches and for smooth nails under a lasting pull.
 */
export function ec5Withdrawal(joint: FastenerJoint, trace?: Trace): Found<FastenerCapacity> {
  const problems = ec5JointFaults(joint, "withdrawal");
  if (problems.length > 0) return { ok: false, problems };
  const pull = pullOf(joint, pointSideOf(joint, trace), trace);
  if (pull.reason !== null) return { ok: true, value: noCapacity(newtons(0), pull.reason) };
  const isHead = pull.head !== null && pull.head < pull.out;
  const F_k = isHead ? pull.head : pull.out;
  const n = qty(joint.count, "1");
  const value = designValue(
    {
      n_ef: joint.fastener.kind === "nail" ? n : screwsTogether({ n }, trace),
      F_k,
      k_mod: kmodOf(joint, trace),
      g_M: gammaM({}, trace),
      k_a: along(joint, trace),
      k_h: holeShare(joint, "withdrawal", trace),
    },
    trace,
  );
  const governs = isHead
    ? "the head pulls through the side piece"
    : "the fastener pulls out of the main piece";
  const reason = value > 0 ? null : `${joint.hole.name}: nothing to count on`;
  return {
    ok: true,
    value: { value, one: F_k, governs, reason, not_checked: notChecked(joint, pull.head === null) },
  };
}

function along({ fastener: f, moisture, toe_nail }: FastenerJoint, trace?: Trace): Qty<"1"> {
  const changes = moisture === "cycles" || moisture === "fresh";
  const dries = f.kind === "nail" && changes ? drying({}, trace) : noFactor({});
  return qty(dries * (toe_nail ? toeNailWithdrawal({}, trace) : noFactor({})), "1");
}

const notChecked = ({ side, fastener: f }: FastenerJoint, noHead: boolean): string[] => [
  ...(side.material === "wood" && noHead ? ["the head pulling through the side piece: missing head_mm"] : []),
  ...(f.kind === "nail" ? [] : ["the screw in tension: the maker's declared value"]),
];
