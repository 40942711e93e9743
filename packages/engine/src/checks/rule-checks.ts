import type { Source } from "../formula/index.ts";
import type { MetJoint } from "./plan-joints.ts";
import { cannotCheck, missingOf } from "./result.ts";
import { cartChecks } from "./rule-cart.ts";
import { deckRuleChecks } from "./rule-deck.ts";
import { edgeChecks } from "./rule-edge.ts";
import { gradeChecks } from "./rule-grade.ts";
import { openingChecks } from "./rule-opening.ts";
import { pairingChecks } from "./rule-pairing.ts";
import { setbackChecks } from "./rule-setback.ts";
import { ruleSettingOf, type RuleSetting } from "./rule-setting.ts";
import { tippingChecks } from "./rule-tipping.ts";
import { widthChecks } from "./rule-width.ts";
import type { Setting } from "./setting.ts";
import type { CheckResult, RuleCheckKind } from "./types.ts";

/** Kinds of check by rule, in the order they are shown. */
export const RULE_KINDS: readonly RuleCheckKind[] = [
  "width",
  "cart",
  "opening",
  "edge",
  "grade",
  "deck-rule",
  "public-span",
  "setback",
  "tipping",
  "pairing",
];

const RULES: Source = {
  id: "rule-profiles",
  title: "Rule profiles of the tables, docs/methods/rules.md",
  status: "project",
};

/**
 * Every check by rule of a plan's layout. Parts share one result for all that meet a rule and one for all that do
 * not. A profile that the tables lack, or an override that cannot count, is a result that cannot be checked.
 */
export function ruleChecks(setting: Setting, joints: readonly MetJoint[]): CheckResult[] {
  const parts = setting.input.layout.parts.map((p) => p.id);
  if (parts.length === 0) return [];
  const s = ruleSettingOf(setting);
  return [
    ...unsettled(s, parts),
    ...widthChecks(s),
    ...cartChecks(s),
    ...openingChecks(s),
    ...edgeChecks(s),
    ...gradeChecks(s),
    ...deckRuleChecks(s),
    ...setbackChecks(s),
    ...tippingChecks(s, joints),
    ...pairingChecks(s),
  ];
}

function unsettled({ resolved }: RuleSetting, parts: readonly string[]): CheckResult[] {
  if (resolved.problems.length === 0) return [];
  return [
    cannotCheck(
      {
        id: "edge.profile",
        kind: "edge",
        title: "Rule profile and overrides",
        parts,
        rule: RULES,
        caution: "Choose the rules before anything is built.",
      },
      missingOf(resolved.problems),
    ),
  ];
}
