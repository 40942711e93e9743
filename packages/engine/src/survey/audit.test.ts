import { describe, expect, test } from "vitest";
import {
  auditPoints,
  benchmarkClosure,
  datumProblem,
  looksLikeEllipsoidHeights,
  shearSummary,
  surveyCalculations,
} from "./index.ts";

/** A gently sloping survey of 15 x 15 points with one centimetre of noise, positions shaken. */
function slope(): { x: number[]; y: number[]; z: number[] } {
  let state = 11;
  const even = (): number => (state = (state * 48271) % 2147483647) / 2147483647;
  const normal = (): number => Array.from({ length: 12 }, even).reduce((a, b) => a + b, 0) - 6;
  const [x, y, z]: [number[], number[], number[]] = [[], [], []];
  for (let i = 0; i < 225; i++) {
    x.push((i % 15) * 4 + even());
    y.push(Math.floor(i / 15) * 4 + even());
    z.push(1 + 0.01 * x[i]! - 0.02 * y[i]! + 0.01 * normal());
  }
  return { x, y, z };
}

describe("audit of points", () => {
  test("a point six deviations off is listed first, its neighbours are not; the spread is found", () => {
    const points = slope();
    points.z[112] = points.z[112]! + 0.06;
    const audit = auditPoints(points);
    expect(audit.outliers[0]!.point).toBe(112);
    expect(audit.outliers[0]!.residual_m).toBeGreaterThan(0.03);
    expect(audit.outliers.length).toBeLessThanOrEqual(4);
    expect(audit.sigma_m!).toBeGreaterThan(0.007);
    expect(audit.sigma_m!).toBeLessThan(0.013);
  });

  test("several wild points, some side by side, are all listed", () => {
    const points = slope();
    const wild = [16, 50, 51, 130, 200];
    for (const i of wild) points.z[i] = points.z[i]! + (i % 2 === 0 ? 0.4 : -0.4);
    const found = auditPoints(points).outliers.map((o) => o.point);
    expect(found).toEqual(expect.arrayContaining(wild));
    expect(found.length).toBeLessThanOrEqual(wild.length + 4);
  });

  test("a clean plane has no outlier", () => {
    const { x, y } = slope();
    const z = x.map((v, i) => 2 + 0.03 * v + 0.01 * y[i]!);
    expect(auditPoints({ x, y, z })).toMatchObject({ outliers: [], not_judged: 0, n: 225 });
  });

  test("points on one line cannot be judged, and it says so", () => {
    const z = [1, 1.1, 9, 1.3, 1.4];
    expect(auditPoints({ x: [0, 1, 2, 3, 4], y: [0, 1, 2, 3, 4], z })).toMatchObject({
      sigma_m: null,
      not_judged: 5,
      outliers: [],
    });
  });

  test("accuracy and dates are summed up", () => {
    const audit = auditPoints({
      x: [0, 1, 0],
      y: [0, 0, 1],
      z: [1, 1, 1],
      accuracy_m: [0.02, NaN, 0.05],
      days: [20_000, 20_010, NaN],
    });
    expect(audit.accuracy).toEqual({ stated: 2, median_m: 0.035, worst_m: 0.05 });
    expect(audit.dates).toEqual({ stated: 2, first: "2024-10-04", last: "2024-10-14" });
  });
});

describe("marks and datums", () => {
  const mark = { id: "B1", name: "Gate bolt", x: 10, y: 10, z_m: 2, datum: "NAVD88", source: "county" };
  const shot = { id: "C1", x: 10.2, y: 10.1, z_m: 2.05, accuracy_m: 0.02, date: null };

  test("a shot on a mark gives the closure; a mark that nobody visited is named", () => {
    const other = { ...mark, id: "B2", x: 90 };
    const closure = benchmarkClosure([mark, other], [shot, { ...shot, id: "C2", x: 50 }], "NAVD88");
    expect(closure.closures).toHaveLength(1);
    expect(closure.closures[0]).toMatchObject({ benchmark: "B1", shot: "C1", closes: false });
    expect(closure.rms_m).toBeCloseTo(0.05, 12);
    expect(closure.not_visited).toEqual(["B2"]);
  });

  test("a mark on another datum is refused naming both", () => {
    const closure = benchmarkClosure([{ ...mark, datum: "NGVD29" }], [shot], "NAVD88");
    expect(closure.closures).toEqual([]);
    expect(closure.problems[0]!.message).toMatch(/NGVD29.*NAVD88/);
    expect(datumProblem("It", "f", "p", "NAVD88", "NAVD88")).toBeNull();
  });
});

describe("ellipsoid heights", () => {
  test("far below zero without a known height; far from every known height with one", () => {
    expect(looksLikeEllipsoidHeights([-26.5, -26.1, -25.8], [])!.looksIt).toBe(true);
    expect(looksLikeEllipsoidHeights([0.4, 0.7, 1.1], [])!.looksIt).toBe(false);
    expect(looksLikeEllipsoidHeights([47.1, 47.5, 48], [1.4, 0.2])!.looksIt).toBe(true);
    expect(looksLikeEllipsoidHeights([-26.5, -26.1, -25.8], [-25])!.looksIt).toBe(false);
    expect(looksLikeEllipsoidHeights([-140, -139], [])!.looksIt).toBe(false);
    expect(looksLikeEllipsoidHeights([], [1])).toBeNull();
  });
});

test("vane readings: strength and sensitivity by station, weakest first in mind", () => {
  const reading = (x: number, depth_m: number, su_kpa: number, remoulded_kpa?: number) => ({
    x,
    y: 5,
    depth_m,
    su_kpa,
    source: "vane",
    ...(remoulded_kpa === undefined ? {} : { remoulded_kpa, vane_mm: "55 x 110" }),
  });
  const [a, b] = shearSummary([reading(1, 1, 6, 1.5), reading(9, 0.5, 12), reading(1, 0.5, 14, 7)]);
  expect(a!.readings.map((r) => [r.depth_m, r.sensitivity])).toEqual([
    [0.5, 2],
    [1, 4],
  ]);
  expect(a).toMatchObject({ least_su_kpa: 6, sensitivity: 4 });
  expect(b).toMatchObject({ least_su_kpa: 12, sensitivity: null });
  expect(shearSummary([reading(1, 1, 6, 0)])[0]!.sensitivity).toBeNull();
});

describe("registered calculations", () => {
  const run = (id: string, input: object) =>
    surveyCalculations.find((c) => c.id === id)!.run(input as never, null);

  test("terrain bias, with its working", () => {
    const shots = [0.1, 0.12, 0.17].map((r) => ({ terrain_m: 2 + r, z_m: 2, accuracy_m: 0.02 }));
    const answer = run("survey.terrain-bias", { shots });
    expect(answer.ok && answer.outputs["median_m"]).toBeCloseTo(0.12, 12);
    expect(answer.ok && answer.working.map((s) => s.id)).toContain("survey.height-band");
    const bad = run("survey.terrain-bias", { shots: [{ terrain_m: "x", z_m: 1 }, 7] });
    expect(!bad.ok && bad.problems.map((p) => p.place)).toEqual([
      "shots[0].terrain_m",
      "shots[1].terrain_m",
      "shots[1].z_m",
    ]);
  });

  test("surface at a place, and null where nothing is known", () => {
    const points = [
      { x: 0, y: 0, z: 1 },
      { x: 4, y: 0, z: 3 },
      { x: 0, y: 4, z: 5 },
    ];
    const inside = run("survey.surface-at", { points, x: 1, y: 1 });
    expect(inside.ok && inside.outputs).toEqual({ z_m: 2.5, triangles: 1 });
    const outside = run("survey.surface-at", { points, x: 9, y: 9 });
    expect(outside.ok && outside.outputs["z_m"]).toBeNull();
  });

  test("audit of points", () => {
    const { x, y, z } = slope();
    z[112] = z[112]! + 1;
    const answer = run("survey.point-audit", { points: x.map((v, i) => ({ x: v, y: y[i], z: z[i] })) });
    expect(answer.ok && (answer.outputs["outliers"] as { point: number }[])[0]!.point).toBe(112);
  });
});
