import type { Rule } from "./profile.ts";

const SLACK = 1e-9;
/** How far a value may differ from one that a rule gives as "about" [m]. */
const ABOUT_M = 0.003;

/** Whether a value meets a rule. Lengths in metres, grades and shares as ratios; exactly on an "at most" is met. */
export function meetsRule(rule: Pick<Rule, "direction" | "value">, actual: number): boolean {
  switch (rule.direction) {
    case "at-most":
      return actual <= rule.value + SLACK;
    case "less-than":
      return actual < rule.value - SLACK;
    case "at-least":
      return actual >= rule.value - SLACK;
    case "about":
      return Math.abs(actual - rule.value) <= ABOUT_M + SLACK;
    case "as-large-as-can-be":
      return true;
  }
}
