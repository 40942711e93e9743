// Golden values: SciPy 1.17.1 (scipy.stats norm, t and chi2), printed with all digits; the t tails agree with mpmath 1.3.0 at 40 digits.
import { describe, expect, test } from "vitest";
import {
  chiSquareQuantile,
  chiSquareShares,
  incompleteBeta,
  logBeta,
  normalBelow,
  normalQuantile,
  studentBelow,
  studentDensity,
  studentQuantile,
} from "./index.ts";

const expectRelative = (got: number, golden: number, share = 1e-12): void =>
  expect(Math.abs(got - golden)).toBeLessThanOrEqual(share * Math.abs(golden));

describe("golden values of SciPy 1.17.1, to 1e-12 of themselves, tails too", () => {
  test.each([
    [-37, 5.7255712225239266e-300],
    [-20, 2.7536241186061556e-89],
    [-9, 1.1285884059538324e-19],
    [-5, 2.866515718791933e-7],
    [-2.3, 0.010724110021675809],
    [-1, 0.15865525393145707],
    [-0.1, 0.460172162722971],
    [0, 0.5],
    [0.5, 0.6914624612740131],
    [1.6448536269514722, 0.95],
    [3, 0.9986501019683699],
    [6, 0.9999999990134123],
  ])("norm.cdf(%d) = %d", (z, golden) => expectRelative(normalBelow(z), golden));

  test.each([
    [1e-300, -37.0470962993612],
    [1e-50, -14.933337534788487],
    [1e-12, -7.034483825301131],
    [1e-5, -4.264890793922825],
    [0.01, -2.3263478740408408],
    [0.05, -1.6448536269514729],
    [0.3, -0.5244005127080409],
    [0.5, 0.0],
    [0.75, 0.6744897501960817],
    [0.95, 1.6448536269514722],
    [0.999, 3.090232306167813],
  ])("norm.ppf(%d) = %d", (p, golden) => expectRelative(normalQuantile(p), golden));

  test.each([
    [-9, 3, 0.0014479060809320734],
    [-40, 5, 9.205981085886477e-8],
    [-200, 12.5, 1.3671034835981484e-23],
    [-9, 200, 8.854691461632415e-17],
    [-1, 0.5, 0.30112161084132205],
    [-2.5, 1, 0.12111894159084341],
    [0.3, 2, 0.6037571695799112],
    [1.7, 7.3, 0.9344173158234566],
    [3, 30, 0.9973050179671741],
    [-30, 40, 2.4254538302951023e-29],
    [-8, 100000, 6.286959938128173e-16],
    [2, 100000.0, 0.9772485182712467],
    [-12, 1000, 2.1620286933872145e-31],
  ])("t.cdf(%d, %d) = %d", (t, df, golden) => expectRelative(studentBelow(t, df), golden));

  test.each([
    [0.95, 1, 6.313751514675037],
    [0.95, 2, 2.9199855803537242],
    [0.95, 4, 2.1318467863266495],
    [0.95, 7.3, 1.8829300179564308],
    [0.05, 30, -1.6972608865939574],
    [0.975, 120, 1.9799304050824402],
    [1e-10, 3, -2225.769284683093],
    [1e-12, 50, -9.260139683684146],
    [0.6, 0.7, 0.35603136523468015],
    [0.999, 100000.0, 3.0903138094272378],
  ])("t.ppf(%d, %d) = %d", (p, df, golden) => expectRelative(studentQuantile(p, df), golden));

  test.each([
    [0.01, 1, 0.07965567455405799, 0.920344325445942],
    [0.5, 2, 0.22119921692859512, 0.7788007830714049],
    [3.84, 1, 0.9499564787512949, 0.05004352124870519],
    [10, 4.5, 0.9439279147584024, 0.05607208524159754],
    [100, 120, 0.09226505195893298, 0.907734948041067],
    [1e-5, 3, 8.410416508787017e-9, 0.9999999915895835],
    [50, 3, 0.9999999999201082, 7.989179244951495e-11],
  ])("chi2.cdf and chi2.sf(%d, %d) = %d, %d", (x, df, below, above) => {
    const got = chiSquareShares(x, df);
    expectRelative(got.below, below);
    expectRelative(got.above, above);
  });
});

test("one degree of freedom is the Cauchy distribution, two have a closed form", () => {
  for (const t of [-400, -3, -0.2, 0, 0.7, 5]) {
    expect(studentBelow(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 14);
    expect(studentBelow(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 14);
  }
});

test("a quantile and its share are each other's inverse, and the density is the slope of the share", () => {
  for (const df of [0.8, 2, 5.5, 40]) {
    for (const p of [1e-9, 0.004, 0.2, 0.5, 0.81, 0.997])
      expectRelative(studentBelow(studentQuantile(p, df), df), p, 1e-11);
    for (const t of [-3, -0.4, 1.1]) {
      const slope = (studentBelow(t + 1e-5, df) - studentBelow(t - 1e-5, df)) / 2e-5;
      expectRelative(studentDensity(t, df), slope, 1e-8);
    }
  }
  for (const df of [0.6, 3, 80])
    for (const p of [1e-6, 0.1, 0.5, 0.95]) {
      const shares = chiSquareShares(chiSquareQuantile(p, df), df);
      expectRelative(shares.below, p, 1e-11);
    }
});

test("the beta function keeps its digits where its gammas cancel (whole numbers, closed form)", () => {
  expectRelative(Math.exp(logBeta(3, 4)), 1 / 60);
  expectRelative(logBeta(1, 12_345), -Math.log(12_345));
  expectRelative(logBeta(2, 1e6), -Math.log(1e6) - Math.log1p(1e6));
  expectRelative(incompleteBeta(1, 7, 0.2), 1 - 0.8 ** 7);
});

test("what no distribution knows is refused", () => {
  expect(() => studentBelow(NaN, 3)).toThrow("student");
  expect(() => studentBelow(1, 0)).toThrow("student");
  expect(() => normalQuantile(0)).toThrow("normal-share");
  expect(() => normalQuantile(1)).toThrow("normal-share");
  expect(() => studentQuantile(1.2, 3)).toThrow("student-share");
  expect(() => chiSquareQuantile(0.5, -1)).toThrow("chi-square-share");
});
