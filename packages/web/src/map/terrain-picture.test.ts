import type { Raster } from "@causey/engine/site";
import { expect, test } from "vitest";
import { coarser, contourPaths, contourStep, heightRange, shade, smoother } from "./terrain-picture.ts";

const raster = (cols: number, rows: number, height: (i: number, j: number) => number): Raster => ({
  cols,
  rows,
  x0: 1000,
  y0: 2000,
  dx: 2,
  dy: 2,
  values: Float32Array.from({ length: cols * rows }, (_, k) => height(k % cols, Math.floor(k / cols))),
});

test("coarser cells are the mean of known cells and stand in the middle of their block", () => {
  const coarse = coarser(
    raster(4, 4, (i, j) => (i === 0 && j === 0 ? NaN : i)),
    2,
  );
  expect([coarse.cols, coarse.rows, coarse.dx, coarse.x0, coarse.y0]).toEqual([2, 2, 4, 1001, 2001]);
  expect([...coarse.values]).toEqual([Math.fround(2 / 3), 2.5, 0.5, 2.5]);
});

test("smoothing keeps a plane a plane away from the edge and guesses no unknown cell", () => {
  const smooth = smoother(
    raster(7, 7, (i, j) => (i === 5 && j === 5 ? NaN : i + 2 * j)),
    1,
  );
  expect(smooth.values[3 * 7 + 3]).toBeCloseTo(9, 6);
  expect(smooth.values[5 * 7 + 5]).toBeNaN();
});

test("the step between lines is round in feet or in metres, and at most fourteen lines are drawn", () => {
  const range = heightRange(raster(3, 3, (i) => i * 1.5));
  expect(range).toEqual({ low: 0, high: 3 });
  expect(contourStep(range, "metric")).toBe(0.5);
  expect(contourStep(range, "us") / 0.3048).toBeCloseTo(1, 9);
});

test("the picture runs from north to south, clear where nothing is known, lighter towards the north-west", () => {
  const pixels = shade(
    raster(3, 3, (_i, j) => (j === 2 ? NaN : 1)),
    "light",
  );
  const alpha = (row: number): number => pixels[row * 3 * 4 + 3]!;
  expect([alpha(0), alpha(1), alpha(2)]).toEqual([0, 255, 255]);
  const slope = (rise: number): number =>
    shade(
      raster(3, 3, (i) => i * rise),
      "light",
    )[4 * 4]!;
  expect(slope(0.2)).toBeGreaterThan(slope(-0.2));
});

test("every fifth line of equal height is drawn stronger, in metres from the picture's origin", () => {
  const paths = contourPaths(
    raster(8, 3, (i) => i * 0.5 - 1),
    0.5,
    [1000, 2000],
  );
  expect(paths.filter((p) => p.strong).map((p) => p.z_m)).toEqual([0, 2.5]);
  expect(paths.find((p) => p.z_m === 1)!.path).toMatch(/^M8\.00 /);
});
