import { expect, test } from "vitest";
import { count, printFormula, show, showGrade, showRound, showShare } from "./show.ts";

const us = { units: "us", currency: "USD" } as const;
const metric = { units: "metric", currency: "EUR" } as const;

test("money takes the price list's currency and the reader's way of writing", () => {
  expect(show(7900.5, "money", us)).toBe("$7,900.50");
  expect(show(7900.5, "money", metric)).toBe("€7,900.50");
});

test("every other unit goes through the engine's one place for display", () => {
  expect(show(3.6576, "m", us)).toBe("12 ft");
  expect(show(3.6576, "m", metric)).toBe("3.66 m");
  expect([show(1260, "1", us), show(0.85, "1", us)]).toEqual(["1,260", "0.85"]);
});

test("a share of the limit reads as in a draughtsman's cell", () => {
  expect([0.42, 1.12, 0, 1e9].map(showShare)).toEqual([".42", "1.12", ".00", ">10"]);
});

test("a round step stays round in its own unit", () => {
  expect(showRound(0.2 * 0.3048, "us")).toBe("0.2 ft");
  expect(showRound(0.5, "metric")).toBe("0.5 m");
});

test("formulas print with the signs of a page, counts with their plural", () => {
  expect(printFormula("w * L^2 / 8 + pi * d^3")).toBe("w · L² / 8 + π · d³");
  expect([count(1, "plot"), count(3, "plot"), count(2, "branch", "branches")]).toEqual([
    "1 plot",
    "3 plots",
    "2 branches",
  ]);
});

test.each([
  [1 / 12, "8.3 %, 1 in 12"],
  [0.05, "5 %, 1 in 20"],
  [0, "0 %"],
])("a grade of %d is said as %s", (grade, words) => {
  expect(showGrade(grade)).toBe(words);
});
