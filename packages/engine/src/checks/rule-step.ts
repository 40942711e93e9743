import type { Trace } from "../formula/index.ts";
import type { Joint } from "../layout/index.ts";
import { fallHeight, type ResolvedRule } from "../rules/index.ts";
import { metres, showQuantity } from "../units/index.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { against, fine, ruleBase, rulesOn, ruleText, type RuleSetting } from "./rule-setting.ts";
import type { Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";

export interface StartStep {
  readonly joint: Joint;
  /** From the ground to the deck [m]. */
  readonly rise_m: number;
}

/** Joints at which the walkway begins: nothing arrives there. */
export function startSteps({ input }: Setting): StartStep[] {
  const { parts, joints } = input.layout;
  const arrived = new Set(
    parts.flatMap((p) => (p.kind === "module" ? [p.to] : [p.exits.ahead, p.exits.left, p.exits.right])),
  );
  const begins = new Set(parts.map((p) => p.from).filter((id) => !arrived.has(id)));
  return joints
    .filter((j) => begins.has(j.id))
    .map((joint) => ({ joint, rise_m: joint.deck_m - joint.ground_m }));
}

/** The step up to the first deck, where the profile limits steps. Parts meet flush: they share a sill at every joint. */
export function stepChecks(s: RuleSetting): CheckResult[] {
  return rulesOn(s, "step").flatMap((rule) => {
    const findings = startSteps(s.setting).map((step) => stepFinding(s, rule, step));
    return shareResults(ruleBase(s, rule, "grade", "step", "Step onto the deck"), findings);
  });
}

function stepFinding(s: RuleSetting, rule: ResolvedRule, { joint }: StartStep): Finding {
  const { units } = s.setting.context;
  const { ramp } = s.setting.input.plan.kit;
  if (ramp) return { kind: "not-applicable", parts: [joint.id], because: "a ramp leads onto the first deck" };
  const working: Trace = [];
  const height = fine(fallHeight({ z_d: metres(joint.deck_m), z_g: metres(joint.ground_m) }, working));
  return {
    kind: "judged",
    parts: [joint.id],
    verdict: {
      unit: "m",
      ...against(s, rule, height, working),
      governs: `the first deck at ${joint.id}`,
      working,
    },
    carries: `A step of ${showQuantity(height, "m", units)}; the rule: ${ruleText(s, rule)}.`,
    change: "Would pass with a ramp in the kit, or with firm ground made up to the deck.",
  };
}
