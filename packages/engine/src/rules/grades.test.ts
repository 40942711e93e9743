import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gradeRuns, steeperLength, type GradeStep, type Rule } from "./index.ts";

const rule = (id: string, topic: Rule["topic"], value: number, band: Partial<Rule> = {}): Rule => ({
  id,
  title: id,
  topic,
  unit: "m",
  value,
  direction: "at-most",
  when: "",
  source: "s",
  at: "",
  status: "seen",
  ...band,
});
const rules = [
  rule("gentle", "ramp-start", 0.05),
  rule("long", "grade-run", 60, { steeper_than: 0.05, up_to: 0.08 }),
  rule("short", "grade-run", 9, { steeper_than: 0.08, up_to: 0.1 }),
  rule("rest", "rest-length", 1.5),
  rule("flat", "rest-grade", 0.02),
];
const steps = (...rows: readonly (readonly [length: number, grade: number])[]): GradeStep[] =>
  rows.map(([length_m, grade], i) => ({ part: `m${i}`, length_m, rise_m: grade * length_m }));

describe("runs of grade", () => {
  test("neighbours of one band join, whether up or down; another band begins a new run", () => {
    const { runs } = gradeRuns(steps([3, 0.06], [3, -0.07], [3, 0.09], [3, 0]), rules);
    expect(runs.map((r) => [r.kind, r.rule?.id ?? null, r.parts.join(" ")])).toEqual([
      ["band", "long", "m0 m1"],
      ["band", "short", "m2"],
      ["rest", null, "m3"],
    ]);
    expect(runs[0]!.length_m).toBeCloseTo(6, 12);
  });

  test("a rest is missing between two bands; the walkway's own ends and a level part count", () => {
    const { runs } = gradeRuns(steps([3, 0.06], [3, 0.09], [3, 0.01], [3, 0.06]), rules);
    expect(runs.map((r) => r.missing_rests)).toEqual([1, 1, 0, 0]);
  });

  test("a level part that is too short, or a gentle slope, is no rest", () => {
    expect(gradeRuns(steps([3, 0.06], [1, 0], [3, 0.06]), rules).runs.map((r) => r.missing_rests)).toEqual([
      1, 0, 1,
    ]);
    expect(gradeRuns(steps([3, 0.06], [3, 0.04]), rules).runs[0]!.missing_rests).toBe(1);
  });

  test("steeper than every band is over", () =>
    expect(gradeRuns(steps([3, 0.2]), rules).runs[0]!.kind).toBe("over"));
});

test("runs hold every part once, in order, and their lengths add up", () => {
  const step = fc.tuple(
    fc.double({ min: 0.3, max: 4, noNaN: true }),
    fc.double({ min: -0.2, max: 0.2, noNaN: true }),
  );
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 30 }), (rows) => {
      const all = steps(...rows);
      const report = gradeRuns(all, rules);
      expect(report.runs.flatMap((r) => r.parts)).toEqual(all.map((s) => s.part));
      expect(report.runs.reduce((sum, r) => sum + r.length_m, 0)).toBeCloseTo(report.length_m, 9);
      expect(steeperLength(all, 0.1)).toBeLessThanOrEqual(steeperLength(all, 0.05));
    }),
  );
});
