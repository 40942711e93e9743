import { shorten, type Problem, type Source } from "../formula/index.ts";
import type { UnitSystem } from "../units/index.ts";
import { ruleClashes, showRuleValue, type RuleClash } from "./clash.ts";
import type { Rule, RuleProfile } from "./profile.ts";
import type { RuleChoice, RuleOverride } from "./types.ts";

/** Where a rule's value comes from: the profile, or the project's own value with its reason. */
export type RuleOrigin =
  | { readonly kind: "profile"; readonly profile: string }
  | {
      readonly kind: "override";
      readonly profile: string;
      /** The profile's own value. */
      readonly instead_of: number;
      readonly reason: string;
      readonly by: string;
      readonly date: string;
    };

export type ResolvedRule = Rule & { readonly origin: RuleOrigin };

export interface ResolvedRules {
  /** Null when the plan names a profile that the tables lack. */
  readonly profile: RuleProfile | null;
  readonly rules: readonly ResolvedRule[];
  readonly clashes: readonly RuleClash[];
  readonly problems: readonly Problem[];
}

const problem = (place: string, value: unknown, message: string, mend: string): Problem => ({
  code: "rules",
  severity: "error",
  file: "plan.json",
  place,
  value: shorten(value),
  message,
  mend,
});

/**
 * The rules a plan follows, with the project's own values put in, and every clash with the other profiles.
 *
 * choice    the plan's profile and overrides; the last override of a rule counts
 * profiles  every profile of the tables
 * units     of the words in a clash's message
 *
 * An override without a reason, or of a rule that the profile lacks, is a problem and changes nothing.
 */
export function resolveRules(
  choice: RuleChoice,
  profiles: readonly RuleProfile[],
  units: UnitSystem,
): ResolvedRules {
  const profile = profiles.find((p) => p.id === choice.profile);
  if (!profile) {
    const known = profiles.map((p) => p.id).join(", ");
    const message = `the rule profile "${choice.profile}" is not in the tables`;
    const found = problem("rules.profile", choice.profile, message, `Use one of: ${known}.`);
    return { profile: null, rules: [], clashes: [], problems: [found] };
  }
  const problems = choice.overrides.flatMap((o, i) => overrideFaults(o, i, profile));
  const counted = choice.overrides.filter((o, i) => overrideFaults(o, i, profile).length === 0);
  const rules = profile.rules.map((rule): ResolvedRule => {
    const own = counted.findLast((o) => o.rule === rule.id);
    if (!own) return { ...rule, origin: { kind: "profile", profile: profile.name } };
    const { reason, by, date } = own;
    return {
      ...rule,
      value: own.value,
      origin: { kind: "override", profile: profile.name, instead_of: rule.value, reason, by, date },
    };
  });
  const others = profiles.filter((p) => p !== profile);
  return { profile, rules, clashes: ruleClashes(profile.name, rules, others, units), problems };
}

function overrideFaults(o: RuleOverride, i: number, profile: RuleProfile): Problem[] {
  const place = `rules.overrides[${i}]`;
  const faults: Problem[] = [];
  if (!profile.rules.some((r) => r.id === o.rule))
    faults.push(
      problem(
        place,
        o.rule,
        `the profile "${profile.name}" has no rule "${o.rule}"`,
        "Take the override out, or choose the profile that has the rule.",
      ),
    );
  if (o.reason.trim() === "")
    faults.push(
      problem(
        place,
        o.reason,
        `the override of "${o.rule}" gives no reason`,
        "Say why the rule's own value does not do here.",
      ),
    );
  if (!Number.isFinite(o.value) || o.value < 0)
    faults.push(
      problem(
        place,
        o.value,
        `the override of "${o.rule}" is no number of 0 or more`,
        "Give metres, or a ratio.",
      ),
    );
  return faults;
}

/** The source of a rule as a check shows it; an override is marked as the project's own, with reason, name and day. */
export function ruleSource(
  rule: ResolvedRule,
  sources: Readonly<Record<string, Source>>,
  units: UnitSystem,
): Source {
  const own = sources[rule.source];
  const title = own?.title ?? rule.source;
  if (rule.origin.kind === "profile")
    return { id: rule.source, title, at: `${rule.title}: ${rule.at}`, status: rule.status };
  const { instead_of, reason, by, date } = rule.origin;
  const was = showRuleValue({ ...rule, value: instead_of }, units);
  const at = `${rule.title}: the project's own value instead of ${was}: ${reason} (${by}, ${date})`;
  return { id: rule.source, title, at, status: "project" };
}
