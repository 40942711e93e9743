import { expect, test } from "vitest";
import { pointsOf, profileDrawing } from "./profile-scale.ts";

type Row = Parameters<typeof profileDrawing>[0][number];
const station = (
  id: string,
  along_m: number,
  ground_m: number,
  probe_m: number | null,
  water_m: number | null,
): Row => ({
  id,
  x: along_m,
  y: 0,
  ground_m,
  probe_m,
  water_m,
  date: null,
  along_m,
  firm_m: probe_m === null ? null : ground_m - probe_m,
  water_over_m: water_m === null ? null : water_m - ground_m,
});
const rows = [
  station("T1", 0, 2, 1, 1.9),
  station("T2", 10, 2.2, null, 1.9),
  station("T3", 12, 2, 0.5, null),
  station("T4", 40, 2.1, 2.1, 2.3),
];

test("every station stands in its order; highest and lowest reading touch the margins", () => {
  const d = profileDrawing(rows, 400, 200);
  expect(d.marks.map((m) => m.id)).toEqual(["T1", "T2", "T3", "T4"]);
  expect([d.marks[0]!.x, d.marks[3]!.x]).toEqual([14, 386]);
  expect([d.top_m, d.bottom_m]).toEqual([2.3, 0]);
  expect(d.marks[3]!.water).toBeCloseTo(14, 9);
  expect(d.marks[3]!.firm).toBeCloseTo(174, 9);
  expect(d.exaggeration).toBeCloseTo(160 / 2.3 / (372 / 40), 9);
});

test("firm ground is drawn only between stations that were both probed, water likewise", () => {
  const d = profileDrawing(rows, 400, 200);
  expect(d.firm.map((run) => run.length)).toEqual([1, 2]);
  expect(d.soft[1]).toHaveLength(4);
  expect(d.water.map((run) => run.length)).toEqual([2, 1]);
  expect(d.ground).toHaveLength(4);
});

test("names that would lie over one another are left out, the marks stay", () => {
  expect(profileDrawing(rows, 400, 200).marks.map((m) => m.named)).toEqual([true, true, false, true]);
});

test("one station, or several on one spot and height, still have a finite picture", () => {
  for (const some of [[rows[0]!], [station("A", 0, 2, null, null), station("B", 0, 2, null, null)]]) {
    const d = profileDrawing(some, 300, 150);
    for (const m of d.marks) expect(Number.isFinite(m.x) && Number.isFinite(m.ground)).toBe(true);
    expect(pointsOf(d.ground)).not.toMatch(/NaN|Infinity/);
  }
});
