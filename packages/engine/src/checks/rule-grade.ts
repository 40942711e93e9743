import { recordValue, type Trace } from "../formula/index.ts";
import { rampRise } from "../kit/index.ts";
import {
  gradeFormula,
  gradeRuns,
  layoutGrades,
  steeperLength,
  type GradeRun,
  type GradeStep,
  type ResolvedRule,
} from "../rules/index.ts";
import { metres, qty, showQuantity } from "../units/index.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { against, fine, ruleBase, ruleOn, rulesOn, ruleText, type RuleSetting } from "./rule-setting.ts";
import { startSteps, stepChecks } from "./rule-step.ts";
import type { CheckResult } from "./types.ts";

const inWords = (grade: number): string => (grade > 0 ? `1:${Math.round(10 / grade) / 10}` : "level");
const SUM = {
  id: "layout",
  title: "The plan's layout",
  at: "joints' deck levels",
  status: "project",
} as const;

/** Every part as a step of grade, branch by branch; a ramp of the kit stands before the first. */
export function planGrades(s: RuleSetting): GradeStep[][] {
  const { layout, plan } = s.setting.input;
  const { ramp } = plan.kit;
  const branches = layoutGrades(layout);
  if (!ramp) return branches;
  for (const { joint, rise_m } of startSteps(s.setting)) {
    const length_mm = ramp.lengths_mm.find((l) => rampRise(l, ramp.max_grade) >= rise_m * 1000);
    const first = layout.parts.find((p) => p.from === joint.id);
    const branch = branches.find((b) => b.some((step) => step.part === first?.id));
    if (length_mm === undefined || !branch || rise_m <= 0) continue;
    const slope_m = length_mm / 1000;
    branch.unshift({ part: joint.id, length_m: Math.sqrt(slope_m ** 2 - rise_m ** 2), rise_m });
  }
  return branches;
}

/** Grade, lengths of ramps, rests, steps and cross slope, as far as the profile has rules for them. */
export function gradeChecks(s: RuleSetting): CheckResult[] {
  const branches = planGrades(s);
  const steps = branches.flat();
  const stepResults = stepChecks(s);
  if (steps.length === 0) return stepResults;
  const runs = branches.flatMap((branch) => gradeRuns(branch, s.resolved.rules).runs);
  return [
    ...rulesOn(s, "grade").flatMap((rule) => steepest(s, rule, steps)),
    ...rulesOn(s, "grade-run").flatMap((rule) => bandLength(s, rule, runs)),
    ...rulesOn(s, "steep-share").flatMap((rule) => steepShare(s, rule, steps)),
    ...rulesOn(s, "rest-length").flatMap((rule) => rests(s, rule, runs)),
    ...rulesOn(s, "run-rise").flatMap((rule) => rampRises(s, rule, branches, "rise")),
    ...rulesOn(s, "rise-without-rail").flatMap((rule) => rampRises(s, rule, branches, "handrail")),
    ...rulesOn(s, "cross-slope").flatMap((rule) => crossSlope(s, rule, steps)),
    ...stepResults,
  ];
}

function steepest(s: RuleSetting, rule: ResolvedRule, steps: readonly GradeStep[]): CheckResult[] {
  const { units } = s.setting.context;
  const findings = steps.map((step): Finding => {
    const working: Trace = [];
    const rise = Math.abs(step.rise_m);
    const g = fine(gradeFormula({ h: metres(rise), l: metres(step.length_m) }, working));
    const limits = against(s, rule, g, working);
    const most = rule.value * step.length_m;
    return {
      kind: "judged",
      parts: [step.part],
      verdict: {
        unit: "1",
        ...limits,
        governs: `${step.part} at ${inWords(g)}`,
        working,
      },
      carries: `Rises ${showQuantity(rise, "m", units)} in ${showQuantity(step.length_m, "m", units)}: ${inWords(g)}; the rule: ${ruleText(s, rule)}.`,
      change: `Would pass with a rise of at most ${showQuantity(most, "m", units)} over it: even out the heights of its supports, or turn the line.`,
    };
  });
  return shareResults(ruleBase(s, rule, "grade", "steepest", "Steepest grade"), findings);
}

function recordLength(trace: Trace, title: string, value: number): void {
  recordValue(trace, {
    id: "rules.run-length",
    title,
    symbol: "l",
    value,
    unit: "m",
    source: SUM,
    how: "sum of its parts",
  });
}

function bandLength(s: RuleSetting, rule: ResolvedRule, runs: readonly GradeRun[]): CheckResult[] {
  const { units } = s.setting.context;
  const base = ruleBase(s, rule, "grade", rule.id, rule.title);
  const findings = runs
    .filter((run) => run.rule?.id === rule.id)
    .map((run): Finding => {
      const working: Trace = [];
      const length = fine(run.length_m);
      recordLength(working, `Length at this grade, from ${run.parts[0]} to ${run.parts.at(-1)}`, length);
      const limits = against(s, rule, length, working);
      return {
        kind: "judged",
        parts: run.parts,
        verdict: { unit: "m", ...limits, governs: `at most ${inWords(run.grade)}`, working },
        carries: `${showQuantity(length, "m", units)} at ${inWords(run.grade)}; the rule: ${ruleText(s, rule)}.`,
        change: `Would pass with a rest after each ${showQuantity(rule.value, "m", units)}, or at a gentler grade.`,
      };
    });
  return shareResults(base, findings);
}

function steepShare(s: RuleSetting, rule: ResolvedRule, steps: readonly GradeStep[]): CheckResult[] {
  const { units } = s.setting.context;
  const limit = rule.steeper_than ?? 0;
  const whole = steps.reduce((sum, step) => sum + step.length_m, 0);
  const steep = steeperLength(steps, limit);
  const working: Trace = [];
  recordLength(working, "Length of the walkway", fine(whole));
  recordLength(working, `Of it steeper than ${inWords(limit)}`, fine(steep));
  const limits = against(s, rule, fine(steep / whole), working);
  return shareResults(ruleBase(s, rule, "grade", "share", rule.title), [
    {
      kind: "judged",
      parts: steps.map((step) => step.part),
      verdict: { unit: "1", ...limits, governs: "the whole walkway", working },
      carries: `${showQuantity(steep, "m", units)} of ${showQuantity(whole, "m", units)} are steeper than ${inWords(limit)}.`,
      change: `Would pass with ${showQuantity(Math.max(0, steep - rule.value * whole), "m", units)} less at such a grade.`,
    },
  ]);
}

function rests(s: RuleSetting, rule: ResolvedRule, runs: readonly GradeRun[]): CheckResult[] {
  const { units } = s.setting.context;
  const findings = runs
    .filter((run) => run.kind === "band" || run.kind === "over")
    .map((run): Finding => {
      const working: Trace = [];
      recordValue(working, {
        id: "rules.missing-rests",
        title: `Ends of the ramp ${run.parts[0]} to ${run.parts.at(-1)} without a rest`,
        symbol: "n",
        value: run.missing_rests,
        unit: "1",
        source: SUM,
        how: "counted; the walkway's own ends count as a rest",
      });
      return {
        kind: "judged",
        parts: run.parts,
        verdict: {
          unit: "1",
          demand: qty(run.missing_rests, "1"),
          capacity: qty(0, "1"),
          governs: `ramp at ${inWords(run.grade)}`,
          working,
        },
        carries:
          run.missing_rests === 0
            ? "A rest at each end."
            : `${run.missing_rests} of its ends without a rest.`,
        change: `Would pass with a level part of at least ${showQuantity(rule.value, "m", units)} there.`,
      };
    });
  return shareResults(ruleBase(s, rule, "grade", "rests", "Rest at each end of a ramp"), findings);
}

/** Consecutive parts steeper than where a ramp begins, whatever their band. */
function rampRises(
  s: RuleSetting,
  rule: ResolvedRule,
  branches: readonly (readonly GradeStep[])[],
  id: "rise" | "handrail",
): CheckResult[] {
  const { units } = s.setting.context;
  const from = ruleOn(s, "ramp-start");
  const only = from ? [from] : [];
  const ramps = branches.flatMap((b) => gradeRuns(b, only).runs).filter((run) => run.kind === "over");
  const findings = ramps.map((run): Finding => {
    const working: Trace = [];
    const rise = fine(run.rise_m);
    recordLength(working, `Rise of the ramp ${run.parts[0]} to ${run.parts.at(-1)}`, rise);
    const most = showQuantity(rule.value, "m", units);
    return {
      kind: "judged",
      parts: run.parts,
      verdict: {
        unit: "m",
        ...against(s, rule, rise, working),
        governs: `ramp at ${inWords(run.grade)}`,
        working,
      },
      carries: `Rises ${showQuantity(rise, "m", units)} in one run; the rule: ${ruleText(s, rule)}.`,
      change:
        id === "rise"
          ? `Would pass with a landing after each ${most} of rise.`
          : `Needs handrails on both sides, which this kit does not have, or ramps that rise at most ${most}.`,
    };
  });
  const title = id === "rise" ? "Rise of one ramp run" : "Ramp without handrails";
  return shareResults(ruleBase(s, rule, "grade", id, title), findings);
}

function crossSlope(s: RuleSetting, rule: ResolvedRule, steps: readonly GradeStep[]): CheckResult[] {
  return shareResults(ruleBase(s, rule, "grade", "cross-slope", rule.title), [
    {
      kind: "not-applicable",
      parts: steps.map((step) => step.part),
      because: `sills are planned level across; hold a level over each part when it is laid: ${ruleText(s, rule)}`,
    },
  ]);
}
