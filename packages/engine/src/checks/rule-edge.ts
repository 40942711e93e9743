import type { Trace } from "../formula/index.ts";
import { fallHeight, leastCurb, meetsRule, type ResolvedRule } from "../rules/index.ts";
import { M_PER_IN, metres, qty, showQuantity } from "../units/index.ts";
import { edgeFalls, type EdgeFall } from "./rule-ground.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { against, fine, recordRule, ruleBase, ruleOn, ruleText, type RuleSetting } from "./rule-setting.ts";
import { sizeOf, type Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";

const UNKNOWN_GROUND = "ground heights under the deck and 1 m beside it";

/** Rails, curbs and consents by the height of the fall. Kits of this program have no rails. */
export function edgeChecks(s: RuleSetting): CheckResult[] {
  const falls = edgeFalls(s.setting);
  const rail = ruleOn(s, "fall-without-rail");
  const consent = ruleOn(s, "fall-without-consent");
  const curb = ruleOn(s, "fall-without-curb");
  return [
    ...(rail ? fallChecks(s, rail, "rail", "Edge without a rail", falls, railChange(s)) : []),
    ...(consent
      ? fallChecks(
          s,
          consent,
          "consent",
          "Fall without a building consent",
          falls,
          () => "Needs the consent that the rule speaks of, or a lower deck.",
        )
      : []),
    ...(curb ? curbChecks(s, curb, falls) : []),
  ];
}

/** Height of the fall of one part [m], with its working; null where no ground is known. */
function fallOf(fall: EdgeFall, trace: Trace): number | null {
  if (fall.ground_m === null) return null;
  return fine(fallHeight({ z_d: metres(fall.deck_m), z_g: metres(fall.ground_m) }, trace));
}

type Change = (over_m: number) => string;

const railChange =
  (s: RuleSetting): Change =>
  (over_m) => {
    const { units } = s.setting.context;
    const height = ruleOn(s, "rail-height");
    const rail = height ? `a rail of ${showQuantity(height.value, "m", units)}` : "a rail";
    return `Would pass with the deck ${showQuantity(over_m + 0.001, "m", units)} lower there, or needs ${rail} on both sides, which this kit does not have: ask an engineer.`;
  };

function fallChecks(
  s: RuleSetting,
  rule: ResolvedRule,
  id: string,
  title: string,
  falls: readonly EdgeFall[],
  change: Change,
): CheckResult[] {
  const { units } = s.setting.context;
  const findings = falls.map((fall): Finding => {
    const parts = [fall.part.id];
    const working: Trace = [];
    const height = fallOf(fall, working);
    if (height === null) return { kind: "unknown", parts, missing: [UNKNOWN_GROUND] };
    const { demand, capacity } = against(s, rule, height, working);
    if (fall.has_gaps && demand <= capacity) return { kind: "unknown", parts, missing: [UNKNOWN_GROUND] };
    return {
      kind: "judged",
      parts,
      verdict: {
        unit: "m",
        demand,
        capacity,
        governs: "the deepest ground within reach of the edge",
        working,
      },
      carries: `Falls ${showQuantity(height, "m", units)}; the rule: ${ruleText(s, rule)}.`,
      change: change(Math.max(0, height - capacity)),
    };
  });
  return shareResults(ruleBase(s, rule, "edge", id, title), findings);
}

/** Height of what stops a foot or a wheel at the deck's edge [m]; 0 without a curb or an upturned mesh. */
export function curbHeight(setting: Setting): number {
  const { kit } = setting.input.plan;
  const curb = kit.curb ? sizeOf(setting, kit.curb.size).thickness_in * M_PER_IN : 0;
  const mesh = kit.deck.kind === "mesh" ? (kit.deck.upturn_mm - 2 * kit.deck.wire_mm) / 1000 : 0;
  return Math.max(0, curb, mesh);
}

/** Where there is no rail and the fall is over the rule's, a curb must be there. */
function curbChecks(s: RuleSetting, rule: ResolvedRule, falls: readonly EdgeFall[]): CheckResult[] {
  const { units } = s.setting.context;
  const asked = ruleOn(s, "curb-height");
  const have = curbHeight(s.setting);
  const findings = falls.map((fall): Finding => {
    const parts = [fall.part.id];
    const working: Trace = [];
    const height = fallOf(fall, working);
    if (height === null) return { kind: "unknown", parts, missing: [UNKNOWN_GROUND] };
    recordRule(s, rule, working);
    if (meetsRule(rule, height))
      return fall.has_gaps
        ? { kind: "unknown", parts, missing: [UNKNOWN_GROUND] }
        : { kind: "not-applicable", parts, because: `no fall over ${showQuantity(rule.value, "m", units)}` };
    if (asked) recordRule(s, asked, working);
    const need = asked ? asked.value : leastCurb({}, working);
    const say = (m: number): string => showQuantity(m, "m", units);
    return {
      kind: "judged",
      parts,
      verdict: {
        unit: "m",
        demand: qty(need, "m"),
        capacity: qty(have, "m"),
        governs: `no rail, and a fall of ${say(height)}`,
        working,
      },
      carries: have > 0 ? `The edge stands ${say(have)} over the deck.` : "The deck has no curb.",
      change: `Would pass with a curb ${say(need)} high at both edges.`,
    };
  });
  return shareResults(ruleBase(s, rule, "edge", "curb", "Curb where there is no rail"), findings);
}
