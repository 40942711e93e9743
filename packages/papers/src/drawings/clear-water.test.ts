import { describe, expect, test } from "vitest";
import type { Raster } from "@causey/engine/site";
import type { WaterLevel } from "@causey/engine/water";
import { averageGround } from "./average-ground.ts";
import { clearWater } from "./clear-water.ts";

const level: WaterLevel = {
  id: "mhw",
  name: "Mean high water",
  role: "mhw",
  basis: "mean",
  z_m: 1,
  datum: "mark",
  source: "invented",
  epoch: "2002 to 2020",
};
const SIZE = 120;
const seen = { extent: [0, 0, SIZE, SIZE], m_per_mm: 1 } as const;

/** Unevenness of the surface from cell to cell, the same on every run [m]. */
const rough = (i: number, j: number): number => ((((i * 73) ^ (j * 151)) % 17) - 8) / 200;

const ground = (z: (x: number, y: number, uneven: number) => number): Raster => ({
  cols: SIZE,
  rows: SIZE,
  x0: 0.5,
  y0: 0.5,
  dx: 1,
  dy: 1,
  values: Float32Array.from({ length: SIZE * SIZE }, (_, k) => {
    const [i, j] = [k % SIZE, Math.floor(k / SIZE)];
    return z(i + 0.5, j + 0.5, rough(i, j));
  }),
});

describe("a level's line on the site plan", () => {
  test("on a slope it is one line, drawn whole without a note", () => {
    const { lines, note } = clearWater(
      ground((_, y) => y / 60),
      level,
      seen,
      "metric",
    );
    expect(lines).toHaveLength(1);
    expect(note).toBe("");
  });

  test("on a gentle uneven slope the ground is averaged, and the line stays where the slope passes the level", () => {
    const { lines, note } = clearWater(
      ground((_, y, uneven) => 1 + (y - 60) / 2000 + uneven),
      level,
      seen,
      "metric",
    );
    expect(note).toMatch(/^nearly flat ground: averaged over \d+ m, pieces under 50 m left out$/);
    const ys = lines.flatMap((l) => l.points.map((p) => p[1]));
    expect(ys.length).toBeGreaterThan(50);
    expect(ys.reduce((a, b) => a + b, 0) / ys.length).toBeGreaterThan(40);
    expect(ys.reduce((a, b) => a + b, 0) / ys.length).toBeLessThan(80);
  });

  test("a scatter of small hollows on dry ground is dropped, and the note says below which length", () => {
    const hollows = ground((x, y) => (Math.floor(x) % 4 === 2 && Math.floor(y) % 4 === 2 ? 0.5 : 1.5));
    const { lines, note } = clearWater(hollows, level, seen, "metric");
    expect(lines).toEqual([]);
    expect(note).toContain("pieces under 5 m left out");
  });
});

test("averaging: by hand, cut at the edge, unknown ground left out", () => {
  const row: Raster = {
    cols: 4,
    rows: 1,
    x0: 0,
    y0: 0,
    dx: 1,
    dy: 1,
    values: Float32Array.from([1, 3, Number.NaN, 8]),
  };
  expect([...averageGround(row, 1).values]).toEqual([2, 2, Number.NaN, 8]);
});
