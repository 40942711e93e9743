// Applications Manual for the Revised NIOSH Lifting Equation, NIOSH 94-110 (revised 2021), Example 4.
import { expect, test } from "vitest";
import {
  distanceMultiplier,
  horizontalMultiplier,
  loadConstant,
  recommendedWeightLimit,
  verticalMultiplier,
} from "../../src/checks/index.ts";
import { KG_PER_LB, inches, qty } from "../../src/units/index.ts";

/** Limit in pounds; `rest` is the product of the frequency, asymmetry and coupling multipliers. */
const limit = (h: number, v: number, d: number, rest: number): number =>
  recommendedWeightLimit({
    LC: loadConstant({}),
    HM: horizontalMultiplier({ H: inches(h) }),
    VM: verticalMultiplier({ V: inches(v) }),
    DM: distanceMultiplier({ D: inches(d) }),
    CM: qty(rest, "1"),
  }) / KG_PER_LB;

test("NIOSH 94-110 (rev. 9/2021), Example 4, origin: 34.9 lb on the sheet, 34.8 in full precision", () => {
  expect(Math.abs(limit(10, 22, 37, 0.88 * 0.95) - 34.8)).toBeLessThanOrEqual(0.05);
});

test("NIOSH 94-110 (rev. 9/2021), Example 4, destination: 15.2 lb on the sheet, 15.3 in full precision", () => {
  expect(Math.abs(limit(20, 59, 37, 0.88) - 15.3)).toBeLessThanOrEqual(0.05);
});

test("NIOSH 94-110 (rev. 9/2021): vertical multiplier 0.925 at 20 in (the table prints .93)", () => {
  expect(verticalMultiplier({ V: inches(20) })).toBeCloseTo(0.925, 12);
});

test.each([
  [22, 0.4545],
  [23, 0.4348],
] as const)("NIOSH 94-110 (rev. 9/2021): horizontal multiplier at %i in is %d by the formula", (h, hm) => {
  expect(horizontalMultiplier({ H: inches(h) })).toBeCloseTo(hm, 4);
});

test("NIOSH 94-110: distances under 10 in count as 10 in", () => {
  expect(horizontalMultiplier({ H: inches(6) })).toBe(1);
  expect(distanceMultiplier({ D: inches(4) })).toBeCloseTo(1, 12);
});
