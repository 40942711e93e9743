import { expect, test } from "vitest";
import { snapTo } from "./snap.ts";

const marks = [
  [0, 0],
  [10, 0],
] as const;

test("a press beside a mark takes the mark, one farther off stays where it is", () => {
  expect(snapTo(marks, [1.5, 1], 2)).toEqual([0, 0]);
  expect(snapTo(marks, [5, 1], 2)).toEqual([5, 1]);
  expect(snapTo([], [5, 1], 2)).toEqual([5, 1]);
});

test("between two marks the nearer is taken", () => {
  expect(snapTo(marks, [6, 0], 8)).toEqual([10, 0]);
});
