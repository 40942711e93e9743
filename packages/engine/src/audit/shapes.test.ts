import { expect, test } from "vitest";
import { heightAt, lowestUnder } from "./ground.ts";
import { area, clipped, contains, distanceToRing, overlapDepth, stretchesInside, touches } from "./shapes.ts";
import type { Outline } from "./types.ts";

const square = (x: number, y: number, side: number): Outline => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];

test("a hole is outside; a touching edge touches", () => {
  const frame = [[square(0, 0, 10), square(3, 3, 4)]];
  expect([contains(frame, [1, 1]), contains(frame, [5, 5]), contains(frame, [11, 5])]).toEqual([
    true,
    false,
    false,
  ]);
  expect(touches(square(4, 4, 1), frame)).toBe(false);
  expect(touches(square(10, 4, 1), frame)).toBe(true);
  expect(touches(square(10.001, 4, 1), frame)).toBe(false);
  expect(touches(square(-1, -1, 12), frame)).toBe(true);
});

test("depth of overlap is the least shift that parts two rings", () => {
  expect(overlapDepth(square(0, 0, 2), square(1.5, 1, 2))).toBeCloseTo(0.5, 12);
  expect(overlapDepth(square(0, 0, 2), square(2, 0, 2))).toBe(0);
  expect(overlapDepth(square(0, 0, 2), square(3, 0, 2))).toBeCloseTo(-1, 12);
  const diamond: Outline = [
    [2.5, 1.25],
    [3.5, 2.25],
    [2.5, 3.25],
    [1.5, 2.25],
  ];
  expect(overlapDepth(square(0, 0, 2), diamond)).toBeCloseTo(0.25 / Math.SQRT2, 12);
});

test("clipping, area and distance agree with hand values", () => {
  expect(area(clipped(square(0, 0, 2), square(1, 1, 2)))).toBeCloseTo(1, 12);
  expect(clipped(square(0, 0, 2), square(5, 5, 1))).toEqual([]);
  expect(distanceToRing([5, 6], square(0, 0, 2))).toBeCloseTo(5, 12);
  expect(distanceToRing([1, 1], square(0, 0, 2))).toBe(0);
});

test("stretches of a line inside areas", () => {
  const banks = [[square(2, -1, 2)], [square(7, -0.5, 1)]];
  expect(stretchesInside([0, 0], [10, 0], banks).map((s) => s.map((v) => +v.toFixed(9)))).toEqual([
    [0.2, 0.4],
    [0.7, 0.8],
  ]);
  expect(stretchesInside([3, 0], [3.5, 0], banks)).toEqual([[0, 1]]);
});

test("ground is blended between four centres, unknown only where an unknown centre has weight", () => {
  const values = Float32Array.from([0, 1, NaN, 2, 5, 4]);
  const t = { cols: 3, rows: 2, x0: 100, y0: 50, dx: 2, dy: 1, values };
  expect(heightAt(t, 101, 50.5)).toBe((0 + 1 + 2 + 5) / 4);
  expect(heightAt(t, 100.5, 50.25)).toBeCloseTo(
    0.75 * 0.75 * 0 + 0.25 * 0.75 * 1 + 0.75 * 0.25 * 2 + 0.0625 * 5,
    12,
  );
  expect(heightAt(t, 102, 50.5)).toBe(3);
  expect(heightAt(t, 103, 50.5)).toBeNaN();
  expect(heightAt(t, 104, 51)).toBe(4);
  expect(heightAt(t, 99.99, 50)).toBeNaN();
});

test("a pit of one cell under the middle of a foot is found", () => {
  const values = new Float32Array(49).fill(1);
  values[3 * 7 + 3] = 0.4;
  const t = { cols: 7, rows: 7, x0: 0, y0: 0, dx: 0.11, dy: 0.11, values };
  const { z, at } = lowestUnder(t, square(0.02, 0.02, 0.6));
  expect(z).toBeCloseTo(0.4, 6);
  expect(at[0]).toBeCloseTo(0.33, 12);
});
