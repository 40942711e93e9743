import type { Source, Trace } from "../formula/index.ts";
import { recordTrain, weightOf } from "../structure/index.ts";
import { DomainError, kilograms, newtons, showQuantity } from "../units/index.ts";
import type { LiveMemory } from "./bearing-check.ts";
import type { BearingJoint } from "./bearing.ts";
import { totalForce } from "./formulas.ts";
import type { CheckContext } from "./input.ts";
import { resultOf } from "./result.ts";
import type { CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

const makersRating = (name: string): Source => ({
  id: "support-rating",
  title: `Rating of "${name}" as the kit gives it`,
  status: "project",
});

/** Load on the heaviest joint of one rated kind of support against its rating. */
export function checkRating(
  joints: readonly BearingJoint[],
  cases: readonly LoadCase[],
  label: { readonly parts: readonly string[] },
  { units }: CheckContext,
  memory: LiveMemory,
): CheckResult {
  const weight = (joint: BearingJoint): number => weightOf({ m: kilograms(joint.dead_kg) });
  const all = joints.flatMap((joint) => cases.map((load) => ({ joint, load, N: memory.of(joint, load).N })));
  const worst = all.reduce((a, b) => (b.N + weight(b.joint) > a.N + weight(a.joint) ? b : a));
  const { support } = worst.joint;
  if (support.rating_n === null) throw new DomainError("support-without-rating", { support: support.id });
  const working: Trace = [];
  worst.load.explain(working);
  recordTrain(working, "V_l", "Largest live load on the joint", worst.N, "N", worst.load.name);
  const V_d = weightOf(
    { m: kilograms(worst.joint.dead_kg) },
    working,
    "parts on the joint and the support, soaked",
  );
  const demand = totalForce({ V_d, V_l: newtons(worst.N) }, working);
  const capacity = newtons(support.rating_n);
  const rule = makersRating(support.name);
  const carries = `Rated for ${showQuantity(capacity, "N", units)}.`;
  const change = "Needs a support of a higher rating, or shorter modules on it.";
  return resultOf(
    {
      id: `bearing.rating.${support.id}`,
      kind: "bearing",
      title: `Rating of the support "${support.name}"`,
      parts: label.parts,
      rule,
      caution: "The rating is the builder's own word: ask how it was found, and for what ground.",
    },
    { unit: "N", demand, capacity, governs: worst.load.name, working },
    { carries, change: demand <= capacity ? null : change },
  );
}
