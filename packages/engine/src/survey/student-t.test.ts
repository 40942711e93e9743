import { expect, test } from "vitest";
import { studentHalfWidth, studentWithin } from "./student-t.ts";

/** Two-sided 95 % points as printed in every table of Student's t (three decimals). */
const printed: readonly (readonly [df: number, t: number])[] = [
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [9, 2.262],
  [10, 2.228],
  [20, 2.086],
  [30, 2.042],
  [60, 2.0],
  [120, 1.98],
];

test.each(printed)(
  "Student's t, printed table (Fisher and Yates, from memory): 95 %%, %i degrees of freedom: %d",
  (df, t) => {
    expect(studentHalfWidth(0.95, df)).toBeCloseTo(t, 3 - 0.5);
    expect(Math.abs(studentHalfWidth(0.95, df) - t)).toBeLessThanOrEqual(0.0005);
  },
);

test("for many degrees of freedom it is the normal 1.95996", () => {
  expect(studentHalfWidth(0.95, 1_000_000)).toBeCloseTo(1.959964, 5);
});

test("one degree of freedom is the Cauchy distribution, two have a closed form", () => {
  for (const t of [0, 0.3, 1, 5, 40]) {
    expect(studentWithin(t, 1)).toBeCloseTo((2 / Math.PI) * Math.atan(t), 12);
    expect(studentWithin(t, 2)).toBeCloseTo(t / Math.sqrt(2 + t * t), 12);
  }
});

test("a share of 0 or 1 and broken degrees of freedom are refused", () => {
  expect(() => studentHalfWidth(1, 4)).toThrow("student-t-share");
  expect(() => studentWithin(1, 2.5)).toThrow("student-t");
});
