import type { Layout, Part } from "../layout/types.ts";
import type { Rule } from "./profile.ts";

/** One part as the slope feels it, in order of travel away from the start. */
export interface GradeStep {
  /** Tag of the part; of the joint for a ramp. */
  readonly part: string;
  /** On plan [m], > 0. */
  readonly length_m: number;
  /** Up is positive [m]. */
  readonly rise_m: number;
}

/** Consecutive parts of one band of grade. */
export interface GradeRun {
  readonly parts: readonly string[];
  readonly length_m: number;
  /** Sum of rises, up and down alike [m]. */
  readonly rise_m: number;
  /** Steepest of its parts, up or down. */
  readonly grade: number;
  /** rest: as level as a rest asks for; gentle: no ramp yet; band: held by `rule`; over: steeper than every band. */
  readonly kind: "rest" | "gentle" | "band" | "over";
  readonly rule: Rule | null;
  /** Ends that neither lie at a rest nor at the walkway's own end. */
  readonly missing_rests: number;
}

export interface GradeReport {
  readonly runs: readonly GradeRun[];
  readonly steepest: number;
  readonly length_m: number;
}

const SLACK = 1e-9;
const gradeOf = (s: GradeStep): number => Math.abs(s.rise_m) / s.length_m;

interface Limits {
  readonly bands: readonly Rule[];
  readonly ramp_start: number;
  readonly rest_grade: number | null;
  readonly rest_length: number;
}

function limitsOf(rules: readonly Rule[]): Limits {
  const bands = rules
    .filter((r) => r.topic === "grade-run")
    .toSorted((a, b) => (a.steeper_than ?? 0) - (b.steeper_than ?? 0));
  const valueOf = (topic: Rule["topic"]): number | undefined => rules.find((r) => r.topic === topic)?.value;
  return {
    bands,
    ramp_start: valueOf("ramp-start") ?? bands[0]?.steeper_than ?? Infinity,
    rest_grade: valueOf("rest-grade") ?? null,
    rest_length: valueOf("rest-length") ?? 0,
  };
}

function classOf(step: GradeStep, l: Limits): Pick<GradeRun, "kind" | "rule"> {
  const g = gradeOf(step);
  if (l.rest_grade !== null && g <= l.rest_grade + SLACK) return { kind: "rest", rule: null };
  if (g <= l.ramp_start + SLACK) return { kind: "gentle", rule: null };
  const rule = l.bands.find((b) => g > (b.steeper_than ?? 0) + SLACK && g <= (b.up_to ?? Infinity) + SLACK);
  return rule ? { kind: "band", rule } : { kind: "over", rule: null };
}

/** Whether a run may end here: at the walkway's own end, or at a rest that is long enough. */
const isRest = (run: GradeRun | undefined, l: Limits): boolean =>
  run === undefined || (run.kind === "rest" && run.length_m + SLACK >= l.rest_length);

/**
 * Splits one branch into runs of one band of grade, and counts the rests that are missing at their ends.
 *
 * steps  parts in order; the walkway's own ends count as a rest (firm ground, or the platform a branch leaves)
 * rules  the profile's rules: `grade-run` bands, `ramp-start`, `rest-grade`, `rest-length`; without `rest-grade` no
 *        rest is asked for
 */
export function gradeRuns(steps: readonly GradeStep[], rules: readonly Rule[]): GradeReport {
  const l = limitsOf(rules);
  const runs: GradeRun[] = [];
  for (const step of steps) {
    const own = classOf(step, l);
    const last = runs.at(-1);
    const joins = last !== undefined && last.kind === own.kind && last.rule === own.rule;
    const before = joins ? runs.pop()! : null;
    runs.push({
      ...own,
      parts: [...(before?.parts ?? []), step.part],
      length_m: (before?.length_m ?? 0) + step.length_m,
      rise_m: (before?.rise_m ?? 0) + Math.abs(step.rise_m),
      grade: Math.max(before?.grade ?? 0, gradeOf(step)),
      missing_rests: 0,
    });
  }
  const asksRest = l.rest_grade !== null;
  const held = runs.map((run, i) => {
    if (!asksRest || run.kind === "rest" || run.kind === "gentle") return run;
    const ends = [runs[i - 1], runs[i + 1]].filter((end) => !isRest(end, l));
    return { ...run, missing_rests: ends.length };
  });
  return {
    runs: held,
    steepest: steps.reduce((most, s) => Math.max(most, gradeOf(s)), 0),
    length_m: steps.reduce((sum, s) => sum + s.length_m, 0),
  };
}

/** Length of the parts steeper than a grade [m]. */
export const steeperLength = (steps: readonly GradeStep[], grade: number): number =>
  steps.reduce((sum, s) => sum + (gradeOf(s) > grade + SLACK ? s.length_m : 0), 0);

/** Parts of a layout as steps of grade, branch by branch, from joint to joint. */
export function layoutGrades(layout: Layout): GradeStep[][] {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const byBranch = new Map<string, GradeStep[]>();
  for (const part of layout.parts) {
    const a = joints.get(part.from);
    const b = joints.get(farEnd(part));
    if (!a || !b) continue;
    const length_m = Math.hypot(b.x - a.x, b.y - a.y);
    if (length_m <= 0) continue;
    const steps = byBranch.get(part.branch) ?? [];
    steps.push({ part: part.id, length_m, rise_m: b.deck_m - a.deck_m });
    byBranch.set(part.branch, steps);
  }
  return [...byBranch.values()];
}

const farEnd = (part: Part): string => (part.kind === "module" ? part.to : part.exits.ahead);
