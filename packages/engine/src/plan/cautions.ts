import type { CheckResult } from "../checks/index.ts";
import type { Cost } from "../cost/index.ts";
import type { Plan } from "./document.ts";

/** Cautions that always show, and those this plan's results call for. */
export function planCautions(plan: Plan, checks: readonly CheckResult[], cost: Cost): string[] {
  const cautions = [
    "Causey supports judgement. It does not replace a licensed engineer, the local code, or the permit officer; what the law asks is theirs to say.",
    "The checks are for the crew and cart of the visits, staff only. For the public, for spans beyond the kit, or where a fall could hurt, ask a licensed engineer.",
    "Timber grade and ground strength are assumed until they are verified on site: look at the grade stamps, read the ground at the joints.",
    "Before use, prove the walkway: load each module with one and a half times the heaviest visit (common practice, no source), standing still, from the start outward; look for cracks, slipping seats and sinking supports; take the load off and look again.",
    "Two or more lift a module; keep clear of pinch points. Cut treated timber off the marsh, over a sheet, with dust mask and gloves; never burn the waste.",
    "Mud and tide can cut people off: nobody works alone, the way back is known, and work stops at thunder. Cold water kills quickly.",
  ];
  if (checks.some((c) => c.status === "fail"))
    cautions.push(
      "Some parts do not meet the chosen rule: do not build before the failed checks are settled.",
    );
  if (checks.some((c) => c.status === "cannot-check"))
    cautions.push("Some checks could not be made for want of data: they are not passes.");
  if (checks.some((c) => (c.status === "pass" || c.status === "fail") && c.from_memory))
    cautions.push(
      "Some values come from memory and are marked so: confirm them in print before relying on them.",
    );
  if (cost.unpriced.length > 0)
    cautions.push(`The cost leaves out ${cost.unpriced.length} items without a price.`);
  if (plan.flood_level === null)
    cautions.push("No flood level is set: nothing was checked against floating away.");
  return cautions;
}
