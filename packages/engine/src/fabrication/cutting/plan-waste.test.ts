import { expect, test } from "vitest";
import { planWaste } from "./plan-waste.ts";

const plan = (cuts: number): Parameters<typeof planWaste>[0] => ({
  cost: 1,
  bound: 1,
  proven: true,
  stock_used: [{ length_mm: 3000, count: 2 }],
  patterns: [{ stock_mm: 3000, times: 2, cuts: [{ length_mm: 900, count: cuts }], offcut_mm: 291 }],
});

test("three pieces of 900 mm out of 3 m waste a tenth, by hand", () => {
  expect(planWaste(plan(3))).toBeCloseTo(0.1, 12);
});
test("a plan without sticks has no waste, and more cut than bought is a broken promise", () => {
  expect(planWaste({ ...plan(3), patterns: [] })).toBeNull();
  expect(() => planWaste(plan(4))).toThrow("more-cut-than-bought");
});
