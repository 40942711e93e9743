import { M_PER_IN, showQuantity, type UnitSystem } from "../units/index.ts";
import type { Rule, RuleProfile, RuleTopic } from "./profile.ts";

/** Two rules that no walkway can meet together. */
export interface RuleClash {
  readonly a: Rule;
  readonly b: Rule;
  /** Names of the profiles they stand in. */
  readonly profile_a: string;
  readonly profile_b: string;
  readonly message: string;
}

/** Topics that limit one and the same thing: the free width between two boards is the opening of a deck. */
const quantityOf = (topic: RuleTopic): string => (topic === "board-gap" ? "opening" : topic);

/** A grade as "1:12", another ratio as a number, a length in the reader's units. */
export function showRuleValue(rule: Pick<Rule, "unit" | "value" | "topic">, units: UnitSystem): string {
  if (rule.unit === "m") return showLength(rule.value, units);
  if (rule.topic === "steep-share") return `${Math.round(rule.value * 100)} %`;
  const isGrade = ["grade", "ramp-start", "rest-grade", "cross-slope"].includes(rule.topic);
  return isGrade && rule.value > 0 ? `1:${round(1 / rule.value)}` : String(round(rule.value));
}

/** In feet and inches, a short length that is round only in millimetres is shown in these too. */
function showLength(m: number, units: UnitSystem): string {
  const shown = showQuantity(m, "m", units);
  const offTape = Math.abs(m - (Math.round((m / M_PER_IN) * 16) / 16) * M_PER_IN);
  return units === "us" && m < 1 && offTape > 2e-4 ? `${shown} (${Math.round(m * 1000)} mm)` : shown;
}

const round = (v: number): number => Math.round(v * 1000) / 1000;

/** What a rule asks, in words: "at most 1/2 in". */
export function ruleWords(rule: Rule, units: UnitSystem): string {
  if (rule.direction === "as-large-as-can-be") return "as large as can be";
  const word = { "at-most": "at most", "less-than": "less than", "at-least": "at least", about: "about" };
  return `${word[rule.direction]} ${showRuleValue(rule, units)}`;
}

interface Bounds {
  readonly low: number;
  readonly high: number;
}

function boundsOf({ direction, value }: Rule): Bounds {
  switch (direction) {
    case "at-most":
    case "less-than":
      return { low: -Infinity, high: value };
    case "at-least":
      return { low: value, high: Infinity };
    case "about":
      return { low: value, high: value };
    case "as-large-as-can-be":
      return { low: Infinity, high: Infinity };
  }
}

const SLACK = 1e-9;

/** Whether no value meets both rules. Bands of grade never clash: each speaks of grades of its own. */
export function doClash(a: Rule, b: Rule): boolean {
  if (a.id === b.id || a.topic === "listed" || a.topic === "grade-run") return false;
  if (quantityOf(a.topic) !== quantityOf(b.topic)) return false;
  if (a.direction === "as-large-as-can-be" && b.direction === a.direction) return false;
  const [x, y] = [boundsOf(a), boundsOf(b)];
  return x.low > y.high + SLACK || y.low > x.high + SLACK;
}

/** Every clash between rules in play and the rules of other profiles; each pair once. */
export function ruleClashes(
  profile: string,
  rules: readonly Rule[],
  others: readonly RuleProfile[],
  units: UnitSystem,
): RuleClash[] {
  return others.flatMap((other) =>
    rules.flatMap((a) =>
      other.rules
        .filter((b) => doClash(a, b))
        .map((b) => ({
          a,
          b,
          profile_a: profile,
          profile_b: other.name,
          message: `"${a.title}" (${profile}): ${ruleWords(a, units)}, and "${b.title}" (${other.name}): ${ruleWords(b, units)}, cannot both be met.`,
        })),
    ),
  );
}
