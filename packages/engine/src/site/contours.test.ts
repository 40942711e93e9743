import { expect, test } from "vitest";
import { contourLevels, contourLines } from "./contours.ts";
import type { Raster } from "./types.ts";

function raster(cols: number, rows: number, height: (x: number, y: number) => number): Raster {
  const [x0, y0, dx, dy] = [500_000, 4_600_000, 2, 1];
  const values = Float32Array.from({ length: cols * rows }, (_, k) =>
    height(x0 + (k % cols) * dx, y0 + Math.floor(k / cols) * dy),
  );
  return { cols, rows, x0, y0, dx, dy, values };
}

test("on a plane the line lies exactly at its height and ends at the edge of the data (elementary geometry)", () => {
  const lines = contourLines(
    raster(6, 4, (x) => x - 500_000),
    [3],
  );
  expect(lines).toHaveLength(1);
  expect(lines[0]!.points).toHaveLength(4);
  for (const [x, y] of lines[0]!.points) {
    expect(x).toBeCloseTo(500_003, 9);
    expect(y).toBeGreaterThanOrEqual(4_600_000);
    expect(y).toBeLessThanOrEqual(4_600_003);
  }
});

test("on a cone the line is a closed circle of the cone's radius at that height (elementary geometry)", () => {
  const [cx, cy] = [500_040, 4_600_040];
  const lines = contourLines(
    raster(41, 81, (x, y) => 10 - Math.hypot(x - cx, y - cy) / 4),
    [5],
  );
  expect(lines).toHaveLength(1);
  const points = lines[0]!.points;
  expect(points[0]).toEqual(points.at(-1));
  for (const [x, y] of points) expect(Math.hypot(x - cx, y - cy)).toBeCloseTo(20, 1);
});

test("a hole in the data cuts the line and draws none around itself", () => {
  const hole = (x: number, y: number): number =>
    Math.abs(x - 500_010) < 1 && Math.abs(y - 4_600_005) < 1 ? NaN : y - 4_600_000;
  const lines = contourLines(raster(11, 11, hole), [5.5]);
  expect(lines).toHaveLength(2);
  for (const line of lines) for (const [, y] of line.points) expect(y).toBeCloseTo(4_600_005.5, 6);
});

test("levels are the multiples of the step within the known heights; a bad level or step is refused", () => {
  const plane = raster(6, 4, (x) => (x - 500_000) / 10 - 0.25);
  expect(contourLevels(plane, 0.25)).toEqual([-0.25, 0, 0.25, 0.5, 0.75]);
  expect(
    contourLevels(
      raster(3, 3, () => NaN),
      1,
    ),
  ).toEqual([]);
  expect(() => contourLevels(plane, 0)).toThrow("contour-step");
  expect(() => contourLines(plane, [NaN])).toThrow("contour-level");
});
