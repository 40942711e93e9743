import { recordValue, type Source, type Trace } from "../formula/index.ts";
import {
  boardGapSlack,
  resolveRules,
  ruleSource,
  ruleWords,
  type ResolvedRule,
  type ResolvedRules,
  type RuleTopic,
} from "../rules/index.ts";
import { qty, type Qty } from "../units/index.ts";
import type { Setting } from "./setting.ts";
import type { CheckBase, CheckKind } from "./types.ts";

/** What the checks by rule share: the plan's setting and the rules it follows. */
export interface RuleSetting {
  readonly setting: Setting;
  readonly resolved: ResolvedRules;
}

export function ruleSettingOf(setting: Setting): RuleSetting {
  const { plan, tables } = setting.input;
  return { setting, resolved: resolveRules(plan.rules, tables.rule_profiles, plan.units) };
}

export const rulesOn = ({ resolved }: RuleSetting, topic: RuleTopic): ResolvedRule[] =>
  resolved.rules.filter((r) => r.topic === topic);

export const ruleOn = (s: RuleSetting, topic: RuleTopic): ResolvedRule | undefined => rulesOn(s, topic)[0];

export const sourceOf = ({ setting }: RuleSetting, rule: ResolvedRule): Source =>
  ruleSource(rule, setting.input.tables.sources, setting.context.units);

/** "at most 1/2 in (Accessible trail)", or the project's own value, said to be so. */
export function ruleText({ setting, resolved }: RuleSetting, rule: ResolvedRule): string {
  const words = ruleWords(rule, setting.context.units);
  const own = rule.origin.kind === "override" ? "project's own value" : resolved.profile!.name;
  return `${words} (${own})`;
}

/** A check's base without its parts; `shareResults` adds these. */
export type RuleBase = Omit<CheckBase, "parts">;

const CAUTION =
  "Held against the chosen profile only. Where the place, its owner or an officer asks for other rules, those hold.";

export const ruleBase = (
  s: RuleSetting,
  rule: ResolvedRule,
  kind: CheckKind,
  id: string,
  title: string,
  caution = CAUTION,
): RuleBase => ({ id: `${kind}.${id}`, kind, title, rule: sourceOf(s, rule), caution });

/** Rounding of lengths and limits alike, so that what stands exactly on a limit is judged as being on it. */
const FINE = 1e5;
export const fine = (value: number): number => Math.round(value * FINE) / FINE;

/** A rule's value in the working. */
export function recordRule(s: RuleSetting, rule: ResolvedRule, trace: Trace): void {
  recordValue(trace, {
    id: `rule.${rule.id}`,
    title: rule.title,
    symbol: "limit",
    value: rule.value,
    unit: rule.unit,
    source: sourceOf(s, rule),
    how: rule.direction === "less-than" ? "as the rule gives it: less than" : "as the rule gives it",
    ...(rule.when === "" ? {} : { note: rule.when }),
  });
}

/**
 * Demand and capacity of one value under a rule: what is limited stands against the limit, what is asked for against
 * what is there. "Less than" leaves the limit itself outside.
 */
export function against(
  s: RuleSetting,
  rule: ResolvedRule,
  actual: number,
  trace: Trace,
): { readonly demand: Qty; readonly capacity: Qty } {
  recordRule(s, rule, trace);
  const limit = qty(fine(rule.value), rule.unit);
  switch (rule.direction) {
    case "at-most":
      return { demand: qty(actual, rule.unit), capacity: limit };
    case "less-than":
      return {
        demand: qty(actual, rule.unit),
        capacity: qty(Math.max(0, fine(rule.value) - 1 / FINE), rule.unit),
      };
    case "at-least":
    case "as-large-as-can-be":
      return { demand: limit, capacity: qty(actual, rule.unit) };
    case "about":
      return {
        demand: qty(fine(Math.abs(actual - rule.value)), rule.unit),
        capacity: boardGapSlack({}, trace),
      };
  }
}
