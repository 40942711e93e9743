import { expect, test } from "vitest";
import { evaluateText } from "../support/evaluate-text.ts";

test("the evaluator follows the usual order of operations", () => {
  expect(evaluateText("1 + 2 * 3^2", {})).toBe(19);
  expect(evaluateText("-2^2", {})).toBe(-4);
  expect(evaluateText("2^-1 * 8", {})).toBe(4);
  expect(evaluateText("2^3^2", {})).toBe(512);
  expect(evaluateText("10 / 4 / 5 - 1", {})).toBe(-0.5);
  expect(evaluateText("max(1, min(a, 3), -(2 - 4))", { a: 9 })).toBe(3);
  expect(evaluateText("1.5e-3 * pi / pi", {})).toBe(0.0015);
  expect(evaluateText("rho_w * Fb'", { rho_w: 2, "Fb'": 3 })).toBe(6);
});

test("the evaluator refuses what it does not know", () => {
  for (const bad of ["1 +", "x", "2 3", "(1", "foo(1)", "1 $ 2", "constructor"])
    expect(() => evaluateText(bad, {}), bad).toThrow(SyntaxError);
});
