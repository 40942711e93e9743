import { expect, test } from "vitest";
import { handCart, loadWords } from "./cart-words.ts";

test("the sum stands beside the parts, and preset masses are called so", () => {
  const words = loadWords(handCart, "metric");
  expect(words).toMatch(/^Loaded 75(\.0)? kg; with mud and water 80(\.0)? kg, which the checks count\./);
  expect(words).toContain("common practice, no source");
});

test("a weighed cart is summed alone, in pounds where the plan is in feet", () => {
  const words = loadWords({ ...handCart, empty_kg: 30, load_kg: 35, wet_kg: 0 }, "us");
  expect(words).toMatch(/^Loaded 143(\.\d)? lb/);
  expect(words).not.toContain("practice");
});
