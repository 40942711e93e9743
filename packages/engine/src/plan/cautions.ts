import type { CheckResult } from "../checks/index.ts";
import { priceSourceWords, unpricedWords, type Cost } from "../cost/index.ts";
import type { Plan } from "./document.ts";

export interface CautionInput {
  readonly plan: Plan;
  readonly checks: readonly CheckResult[];
  readonly cost: Cost;
  /** From `deckLevelCautions` and `visitClosureCautions`. */
  readonly deck: readonly string[];
  readonly visits: readonly string[];
}

/** Whose word counts; the title block of every paper says it too. */
export const FIRST_CAUTION =
  "Causey supports judgement. It does not replace a licensed engineer, the local code, or the permit officer; what the law asks is theirs to say.";

/** A caution that is true of every walkway, and what a paper with little room says in its place. */
export interface StandingCaution {
  readonly text: string;
  readonly short: string;
}

/** True of every walkway: they follow what was found in this one. */
export const STANDING_CAUTIONS: readonly StandingCaution[] = [
  {
    text: "The checks are for the crew and cart of the visits, staff only. For the public, for spans beyond the kit, or where a fall could hurt, ask a licensed engineer.",
    short: "Checked for staff only, with the crew and cart of the visits",
  },
  {
    text: "Timber grade and ground strength are assumed until they are verified on site: look at the grade stamps, read the ground at the joints.",
    short: "verify timber grade and ground strength on site",
  },
  {
    text: "Before use, prove the walkway: load each module with one and a half times the heaviest visit (common practice, no source), standing still, from the start outward; look for cracks, slipping seats and sinking supports; take the load off and look again.",
    short: "prove each module with one and a half times the heaviest visit before use",
  },
  {
    text: "Two or more lift a module; keep clear of pinch points. Cut treated timber off the marsh, over a sheet, with dust mask and gloves; never burn the waste.",
    short: "two or more lift a module; cut treated timber off the marsh and never burn it",
  },
  {
    text: "Mud and tide can cut people off: nobody works alone, the way back is known, and work stops at thunder. Cold water kills quickly.",
    short: "mud and tide can cut people off: nobody works alone, work stops at thunder",
  },
];

/**
 * Cautions of a plan: first whose word counts, then what was found in this very plan, the most dangerous first, then
 * those that always show. Papers with little room show the first few.
 */
export const planCautions = (input: CautionInput): string[] => [
  FIRST_CAUTION,
  ...foundCautions(input),
  ...STANDING_CAUTIONS.map((c) => c.text),
];

function foundCautions({ plan, checks, cost, deck, visits }: CautionInput): string[] {
  const cautions: string[] = [];
  if (checks.some((c) => c.status === "fail"))
    cautions.push(
      "Some parts do not meet the chosen rule: do not build before the failed checks are settled.",
    );
  cautions.push(...deck, ...visits, ...exampleCautions(plan, cost));
  if (checks.some((c) => c.status === "cannot-check"))
    cautions.push("Some checks could not be made for want of data: they are not passes.");
  if (checks.some((c) => (c.status === "pass" || c.status === "fail") && c.from_memory))
    cautions.push(
      "Some values come from memory and are marked so: confirm them in print before relying on them.",
    );
  if (cost.unpriced.length > 0) cautions.push(`The cost is ${unpricedWords(cost)}.`);
  if (plan.flood_level === null)
    cautions.push("No flood level is set: nothing was checked against floating away.");
  return cautions;
}

/** Numbers that a fresh plan brings as examples must not pass for real ones. */
function exampleCautions(plan: Plan, cost: Cost): string[] {
  const prices = cost.price_sources.filter((s) => s.is_example);
  const levels = plan.levels.filter((l) => /^example\b/iu.test(l.source.trim()));
  return [
    ...(prices.length > 0
      ? [
          `Prices are examples, nobody offered them: ${prices.map(priceSourceWords).join("; ")}. Every sum of money rests on them: put in your yard's prices.`,
        ]
      : []),
    ...(levels.length > 0
      ? [
          `Water levels are examples: ${levels.map((l) => `"${l.name}"`).join(", ")}. Put in the levels of this place and where they come from.`,
        ]
      : []),
  ];
}
