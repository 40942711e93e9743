import { expect, test } from "vitest";
import { frameFromJoint, pieceCorners, toSite } from "./placement.ts";

const near = (...v: number[]) => v.map((x) => expect.closeTo(x, 9));

test("heading north: along is north, left is west; heading east: along is east, left is north", () => {
  const north = frameFromJoint({ x: 10, y: 20, deck_m: 1 }, 0, 0, 0.2);
  expect(toSite(north, 2, 0.5, 0.2)).toEqual(near(9.5, 22, 1));
  const east = frameFromJoint({ x: 10, y: 20, deck_m: 1 }, 90, 0, 0.2);
  expect(toSite(east, 2, 0.5, 0.2)).toEqual(near(12, 20.5, 1));
});

test("the body begins half a gap beyond the joint, its deck level with the joint", () => {
  const frame = frameFromJoint({ x: 0, y: 0, deck_m: 1 }, 90, 0.02, 0.3);
  expect([frame.x, frame.y, frame.z]).toEqual(near(0.01, 0, 0.7));
});

test("a rising part keeps its lengths and right angles", () => {
  const frame = frameFromJoint({ x: 0, y: 0, deck_m: 0 }, 30, 0.01, 0.2, 1 / 12);
  const box = {
    role: "stringer",
    size: "2x6",
    length_mm: 3000,
    x0: 0,
    x1: 3,
    y0: -0.3,
    y1: 0.3,
    z0: 0,
    z1: 0.2,
  };
  const corners = pieceCorners(frame, box);
  const gap = (i: number, j: number): number =>
    Math.hypot(...[0, 1, 2].map((k) => corners[i]![k]! - corners[j]![k]!));
  expect(gap(0, 4)).toBeCloseTo(3, 9);
  expect(gap(0, 2)).toBeCloseTo(0.6, 9);
  expect(gap(0, 1)).toBeCloseTo(0.2, 9);
  expect(gap(0, 7)).toBeCloseTo(Math.hypot(3, 0.6, 0.2), 9);
  expect(
    (corners[4]![2] - corners[0]![2]) /
      Math.hypot(corners[4]![0] - corners[0]![0], corners[4]![1] - corners[0]![1]),
  ).toBeCloseTo(1 / 12, 9);
});
