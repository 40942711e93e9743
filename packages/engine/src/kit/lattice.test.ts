import { expect, test } from "vitest";
import { commonPracticeKit } from "../../test/support/common-practice-kit.ts";
import { betweenTenths, commonStep, latticeStep, shortenedByGap } from "./lattice.ts";

test("the step is the greatest common divisor in whole tenths of a millimetre", () => {
  expect(commonStep([3657.6, 2438.4, 1219.2, 914.4])).toBe(304.8);
  expect(commonStep([3000, 2000, 900])).toBe(100);
  expect(commonStep([1000.1, 500])).toBe(0.1);
  expect(commonStep([])).toBe(0);
});

test("a joint gap on whole-foot bodies leaves a step no search can use; sawing the gap off brings it back", () => {
  const gapped = { ...commonPracticeKit, joint_gap_mm: 12.7 };
  expect(latticeStep(gapped)).toBeLessThan(50);
  expect(latticeStep(shortenedByGap(gapped))).toBe(304.8);
  expect(shortenedByGap(gapped).lengths_mm).toEqual([3644.9, 2425.7, 1206.5]);
});

test("lengths between two tenths of a millimetre are named", () => {
  expect(betweenTenths([1219.2, 920.75, 304.8])).toEqual([920.75]);
});
