import { kitGeometry } from "../kit/index.ts";
import type { Tables } from "../materials/index.ts";
import { clearSquare, resolveRules, type ResolvedRule } from "../rules/index.ts";
import { M_PER_IN, metres, showQuantity } from "../units/index.ts";
import type { LayoutChoice, Plan } from "./document.ts";

/** The plan's choices for the search as the chosen rules narrow them, and what they narrowed, in words. */
export interface RuledChoice {
  readonly choice: LayoutChoice;
  /** Empty when the plan's own limits are as narrow as the rules'. */
  readonly notes: readonly string[];
}

const SLACK = 1e-9;

/**
 * The limits that the layout search keeps: no deck steeper than the chosen rules allow, and places to pass no farther
 * apart than they allow, where the deck is too narrow to pass and the kit's platform is large enough to be such a place.
 * The plan's own limits stay where they are narrower. Rules whose platform the kit lacks are left to the checks.
 */
export function ruledChoice(plan: Plan, tables: Tables): RuledChoice {
  const { profile, rules } = resolveRules(plan.rules, tables.rule_profiles, plan.units);
  const { layout } = plan;
  const name = profile?.name ?? plan.rules.profile;
  const grade = least(rules.filter((r) => r.topic === "grade"));
  const interval = passingInterval(plan, tables, rules);
  const isGentler = grade !== null && grade < layout.max_grade - SLACK;
  const isCloser = interval !== null && interval < (layout.passing_every_m ?? Infinity) - SLACK;
  return {
    choice: {
      ...layout,
      ...(isGentler ? { max_grade: grade } : {}),
      ...(isCloser ? { passing_every_m: interval } : {}),
    },
    notes: [
      ...(isGentler ? [`The search kept to a deck of at most ${inWords(grade)}, as "${name}" asks.`] : []),
      ...(isCloser
        ? [
            `A place to pass was asked for at least every ${showQuantity(interval, "m", plan.units)}, as "${name}" asks.`,
          ]
        : []),
    ],
  };
}

const least = (rules: readonly ResolvedRule[]): number | null =>
  rules.length === 0 ? null : Math.min(...rules.map((r) => r.value));

const inWords = (grade: number): string => (grade > 0 ? `1:${Math.round(10 / grade) / 10}` : "level");

/** Null where no place to pass is asked for, or where the kit's platform would not count as one. */
function passingInterval(plan: Plan, tables: Tables, rules: readonly ResolvedRule[]): number | null {
  const valueOf = (topic: ResolvedRule["topic"]): number | null =>
    rules.find((r) => r.topic === topic)?.value ?? null;
  const [interval, size] = [valueOf("passing-interval"), valueOf("passing-size") ?? 0];
  if (interval === null) return null;
  const { clear_width_m, platform_side_m } = kitGeometry(plan.kit, tables.sizes);
  const curb = tables.sizes.find((s) => s.id === plan.kit.curb?.size);
  const square = clearSquare({ s: platform_side_m, c: metres((curb?.width_in ?? 0) * M_PER_IN) });
  return clear_width_m >= size - 1e-6 || square < size - 1e-6 ? null : interval;
}
