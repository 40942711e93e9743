import { adhesionFactor, grippingLength, stakeGirth, stakePullOut } from "../flood/index.ts";
import type { Trace } from "../formula/index.ts";
import { hasBase, type SupportKind } from "../kit/index.ts";
import { sidewaysShare, tippingHold, tippingMoment, type ResolvedRule } from "../rules/index.ts";
import { weightOf } from "../structure/index.ts";
import { inches, kilograms, metres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { MISSING_STRENGTH, recordStrength } from "./ground-strength.ts";
import { massOf } from "./lifting.ts";
import type { MetJoint } from "./plan-joints.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { recordRule, ruleBase, ruleOn, type RuleSetting } from "./rule-setting.ts";
import type { CheckResult } from "./types.ts";
import { allStakes } from "./uplift.ts";

const CAUTION =
  "Stiff parts on ground that does not give way. Two people leaning out at one place, a hooked cart or a blow from drift wood are not counted.";

/** A person at the deck's edge against the dead load and the far stakes, about the outer edge of the feet. */
export function tippingChecks(s: RuleSetting, joints: readonly MetJoint[]): CheckResult[] {
  const rule = ruleOn(s, "tipping");
  if (!rule || joints.length === 0) return [];
  const base = ruleBase(s, rule, "tipping", "edge", "Tipping under a person at the edge", CAUTION);
  return shareResults(
    base,
    joints.map((met) => tippingFinding(s, rule, met)),
  );
}

/** Dry mass of the joint: half of each part on it, and its support [kg]. */
function dryMass(s: RuleSetting, { joint, parts, support }: MetJoint): number {
  const { masses } = s.setting.input;
  const { gravity } = s.setting;
  const half = parts.reduce((sum, part) => {
    const own = part.kind === "module" ? masses.module(part.length_m) : masses.platform;
    return sum + massOf(own, gravity, "new") / (part.kind === "module" ? 2 : 4);
  }, 0);
  return half + massOf(masses.support(support, joint.support_height_m), gravity, "new");
}

/** Outer edge of the feet from the middle line [m]; null without feet. */
const outerEdge = (kind: SupportKind): number | null =>
  kind.feet.length === 0
    ? null
    : Math.max(...kind.feet.map((f) => Math.abs(f.offset_across_mm) + f.across_mm / 2)) / 1000;

/** Pull-out of the stakes on the far side [N]: half of them, rounded down. */
function farStakes(s: RuleSetting, kind: SupportKind, met: MetJoint, trace: Trace): Qty<"N"> {
  const { anchor } = kind;
  const size = s.setting.context.tables.sizes.find((x) => x.id === anchor?.size);
  const count = anchor ? Math.floor(anchor.count / 2) : 0;
  if (!anchor || !size || count === 0 || !met.strength) return newtons(0);
  recordStrength(met.strength, trace);
  const { su } = met.strength;
  const [b, d] = [inches(size.thickness_in), inches(size.width_in)];
  const P = stakeGirth({ b, d }, trace);
  const L_g = grippingLength({ L: metres(anchor.embedment_mm / 1000), b: metres(Math.max(b, d)) }, trace);
  const R_1 = stakePullOut({ alpha: adhesionFactor({ su }, trace), su, P, L_g }, trace);
  return allStakes({ n: qty(count, "1"), R_1 }, trace);
}

function tippingFinding(s: RuleSetting, rule: ResolvedRule, met: MetJoint): Finding {
  const { plan } = s.setting.input;
  const parts = [met.joint.id];
  const kind = met.support;
  if (hasBase(kind))
    return {
      kind: "not-applicable",
      parts,
      because: `"${kind.name}" is held by ${kind.form === "float" ? "its width and its anchors" : "its piles in the ground"}: an engineer must say so`,
    };
  const edge = outerEdge(kind);
  if (edge === null) return { kind: "unknown", parts, missing: [`the feet of "${kind.name}"`] };
  const people = plan.visits.map((v) => v.person_kg);
  if (people.length === 0) return { kind: "unknown", parts, missing: ["a visit with the mass of a person"] };
  return tippingOf(s, rule, met, kind, edge, Math.max(...people));
}

function tippingOf(
  s: RuleSetting,
  rule: ResolvedRule,
  met: MetJoint,
  kind: SupportKind,
  edge_m: number,
  person_kg: number,
): Finding {
  const { units } = s.setting.context;
  const parts = [met.joint.id];
  const working: Trace = [];
  recordRule(s, rule, working);
  const W = weightOf({ m: kilograms(person_kg) }, working, "one person with the pack");
  const e = metres(s.setting.geometry.deck_width_m / 2);
  const h = metres(Math.max(0, met.joint.deck_m - met.joint.ground_m));
  const o = metres(edge_m);
  const demand = tippingMoment({ W, e, o, k_h: sidewaysShare({}, working), h }, working);
  const D = weightOf({ m: kilograms(dryMass(s, met)) }, working, "dry parts on the joint and the support");
  const n = qty(rule.value, "1");
  const none = tippingHold({ D, o, R_s: newtons(0), l: o, n });
  const isHeldByWeight = demand <= none;
  if (!isHeldByWeight && kind.anchor && kind.anchor.count >= 2 && !met.strength)
    return { kind: "unknown", parts, missing: [MISSING_STRENGTH] };
  const R_s = isHeldByWeight ? newtons(0) : farStakes(s, kind, met, working);
  const l = metres(edge_m + kind.sill.length_mm / 2000);
  const capacity = tippingHold({ D, o, R_s, l, n }, working);
  const missing = Math.max(0, demand - capacity) * rule.value;
  const holds = isHeldByWeight
    ? "its own weight"
    : R_s > 0
      ? "its weight and the far stakes"
      : "its own weight";
  const say = (v: number, unit: "m" | "N"): string => showQuantity(v, unit, units);
  return {
    kind: "judged",
    parts,
    verdict: {
      unit: "N*m",
      demand,
      capacity,
      governs: `one person at the edge, deck ${say(h, "m")} over ground`,
      working,
    },
    carries: `Held by ${holds}.`,
    change: `Needs ${say(missing / l, "N")} more hold by stakes at the far end of the sill, or feet ${say(missing / (D + W), "m")} farther out on each side.`,
  };
}
