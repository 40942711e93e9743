import {
  defineMethod,
  formulaCalculation,
  inputProblem,
  recordValue,
  type Calculation,
  type Field,
  type JsonObject,
  type Problem,
  type Source,
  type Trace,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import {
  gradeRuns,
  meetsRule,
  resolveRules,
  ruleFormulas,
  ruleWords,
  type GradeStep,
  type RuleProfile,
} from "../rules/index.ts";
import type { UnitSystem } from "../units/index.ts";
import { number, text, unitsField } from "./method-fields.ts";

const PROFILES: Source = {
  id: "rule-profiles",
  title: "Rule profiles of the tables; each rule names its own source",
  status: "project",
};
const profileField = text("profile", "Id of the rule profile");
const unitsOf = (input: JsonObject): UnitSystem => (input["units"] as UnitSystem | undefined) ?? "metric";

type Found = { readonly profile: RuleProfile } | { readonly problems: readonly Problem[] };

function profileFrom(input: JsonObject, { tables }: CalcContext): Found {
  const profile = tables.rule_profiles.find((p) => p.id === input["profile"]);
  if (profile) return { profile };
  const known = tables.rule_profiles.map((p) => p.id).join(", ");
  const message = "the tables have no such rule profile";
  return { problems: [inputProblem("profile", input["profile"], message, `Use one of: ${known}.`)] };
}

const profileRules = defineMethod<CalcContext>(
  {
    id: "rules.profile-rules",
    title: "Rules of a profile, and where they clash with the other profiles",
    inputs: [profileField, unitsField],
    outputs: [
      { key: "rules", title: "Each rule in words with its source and status", type: "array" },
      { key: "clashes", title: "Clashes, each naming both rules", type: "array" },
    ],
    validity: "Law or guidance of the named place only; never legal advice.",
    sources: [PROFILES],
  },
  (input, context) => {
    const found = profileFrom(input, context);
    if ("problems" in found) return found;
    const units = unitsOf(input);
    const { profile_rules, clashes } = said(found.profile, context, units);
    return { rules: profile_rules, clashes };
  },
);

function said(profile: RuleProfile, { tables }: CalcContext, units: UnitSystem) {
  const choice = { profile: profile.id, overrides: [] };
  const { rules, clashes } = resolveRules(choice, tables.rule_profiles, units);
  const profile_rules = rules.map((r) => ({
    id: r.id,
    title: r.title,
    says: ruleWords(r, units),
    when: r.when,
    source: tables.sources[r.source]?.title ?? r.source,
    at: r.at,
    status: r.status,
  }));
  return { profile_rules, clashes: clashes.map((c) => c.message) };
}

const ruleValue = defineMethod<CalcContext>(
  {
    id: "rules.held-against",
    title: "One value held against one rule of a profile",
    inputs: [
      profileField,
      text("rule", "Id of the rule"),
      number("value", "Value: metres for lengths, ratio for grades and shares", 0, 1e6),
      unitsField,
    ],
    outputs: [
      { key: "meets", title: "Whether the value meets the rule", type: "boolean" },
      text("says", "The rule in words"),
    ],
    validity: 'Exactly on an "at most" or "at least" is met; on a "less than" it is not.',
    sources: [PROFILES],
  },
  (input, context, trace) => {
    const found = profileFrom(input, context);
    if ("problems" in found) return found;
    const rule = found.profile.rules.find((r) => r.id === input["rule"]);
    if (!rule) {
      const known = found.profile.rules.map((r) => r.id).join(", ");
      return {
        problems: [
          inputProblem("rule", input["rule"], "the profile has no such rule", `Use one of: ${known}.`),
        ],
      };
    }
    const source = context.tables.sources[rule.source];
    recordValue(trace, {
      id: `rule.${rule.id}`,
      title: rule.title,
      symbol: "limit",
      value: rule.value,
      unit: rule.unit,
      source: { id: rule.source, title: source?.title ?? rule.source, at: rule.at, status: rule.status },
      how: "as the rule gives it",
    });
    return { meets: meetsRule(rule, input["value"] as number), says: ruleWords(rule, unitsOf(input)) };
  },
);

const stepsField: Field = {
  key: "steps",
  title: "Parts in order: { length_mm, rise_mm }, rise negative where it goes down",
  type: "array",
};

function stepsFrom(input: JsonObject): readonly GradeStep[] | { readonly problems: readonly Problem[] } {
  const rows = input["steps"] as readonly unknown[];
  const steps = rows.map((row, i) => {
    const { length_mm, rise_mm } = (row ?? {}) as Record<string, unknown>;
    return { part: `part ${i + 1}`, length_m: Number(length_mm) / 1000, rise_m: Number(rise_mm) / 1000 };
  });
  const isGood = (s: GradeStep): boolean =>
    s.length_m > 0 && Number.isFinite(s.length_m) && Number.isFinite(s.rise_m);
  if (steps.length > 0 && steps.length <= 5000 && steps.every(isGood)) return steps;
  const mend = "Give 1 to 5000 parts as { length_mm, rise_mm } with lengths over 0.";
  return { problems: [inputProblem("steps", rows, "must be parts with a length and a rise", mend)] };
}

const runsMethod = defineMethod<CalcContext>(
  {
    id: "rules.grade-runs",
    title: "Runs of one band of grade, their limits and the rests that are missing",
    inputs: [profileField, stepsField],
    outputs: [
      {
        key: "runs",
        title: "Each run: kind, parts, length_mm, grade, limit_mm, meets, missing_rests",
        type: "array",
      },
      number("steepest", "Steepest grade"),
    ],
    validity: "One branch; its own ends count as rests.",
    sources: [PROFILES],
  },
  (input, context, trace) => {
    const found = profileFrom(input, context);
    if ("problems" in found) return found;
    const steps = stepsFrom(input);
    if ("problems" in steps) return steps;
    const report = gradeRuns(steps, found.profile.rules);
    recordSteepest(trace, report.steepest);
    return {
      runs: report.runs.map((run) => ({
        kind: run.kind,
        parts: [...run.parts],
        length_mm: run.length_m * 1000,
        grade: run.grade,
        limit_mm: run.rule ? run.rule.value * 1000 : null,
        meets: run.kind !== "over" && (run.rule === null || meetsRule(run.rule, run.length_m)),
        missing_rests: run.missing_rests,
      })),
      steepest: report.steepest,
    };
  },
);

const recordSteepest = (trace: Trace, value: number): void =>
  recordValue(trace, {
    id: "rules.steepest",
    title: "Steepest grade of the parts",
    symbol: "g",
    value,
    unit: "1",
    source: { id: "geometry", title: "Geometry", at: "rise over run", status: "computed" },
    how: "largest of all parts",
  });

/** Every calculation of the rules, for the registry. */
export const ruleCalculations: readonly Calculation<CalcContext>[] = [
  ...ruleFormulas.map(formulaCalculation),
  profileRules,
  ruleValue,
  runsMethod,
];
