import fc from "fast-check";
import Qty from "js-quantities";
import { expect, test } from "vitest";
import {
  DomainError,
  KG_PER_LB,
  M_PER_FT,
  M_PER_IN,
  M_PER_MI,
  M_PER_YD,
  N_PER_LBF,
  PA_PER_PSF,
  PA_PER_PSI,
  feet,
  feetInches,
  inches,
  qty,
  showQuantity,
  showShareOfLimit,
} from "./index.ts";

test("1 yd = 3 ft, 1 mi = 1,760 yd = 5,280 ft, 1 ft = 12 in, by every path (international yard and pound, 1959)", () => {
  expect(M_PER_YD).toBeCloseTo(0.9144, 15);
  expect(3 * feet(1)).toBe(M_PER_YD);
  expect(M_PER_MI).toBeCloseTo(5280 * M_PER_FT, 9);
  expect(12 * inches(1)).toBeCloseTo(feet(1), 15);
});

test.each([
  ["in", "m", M_PER_IN],
  ["lb", "kg", KG_PER_LB],
  ["lbf", "N", N_PER_LBF],
  ["psi", "Pa", PA_PER_PSI],
  ["lbf/ft2", "Pa", PA_PER_PSF],
] as const)("1 %s agrees with the general unit library js-quantities", (from, to, factor) => {
  expect(Qty(`1 ${from}`).to(to).scalar / factor).toBeCloseTo(1, 6);
});

test("a number that is not finite has no unit", () => {
  for (const v of [NaN, Infinity, -Infinity]) expect(() => qty(v, "m")).toThrow(DomainError);
});

test("feet and inches read as on a tape", () => {
  const said = [
    feet(12),
    inches(143.5),
    inches(3.5),
    feet(4.5),
    0,
    inches(-7.25),
    inches(0.0625),
    feet(1056),
  ].map((v) => feetInches(v));
  expect(said).toEqual([
    "12 ft",
    "11 ft 11 1/2 in",
    "3 1/2 in",
    "4 ft 6 in",
    "0 in",
    "-7 1/4 in",
    "1/16 in",
    "1,056 ft",
  ]);
});

test("property: feet and inches say a length to half a sixteenth of an inch", () => {
  fc.assert(
    fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (v) => {
      const [, sign, ft, inch, top, bottom] =
        /^(-?)(?:([\d,]+) ft)? ?(?:(\d+)(?= in| \d))? ?(?:(\d+)\/(\d+))?(?: in)?$/.exec(feetInches(v))!;
      const read =
        Number((ft ?? "0").replaceAll(",", "")) * 12 +
        Number(inch ?? 0) +
        (top ? Number(top) / Number(bottom) : 0);
      expect(Math.abs((sign ? -read : read) * M_PER_IN - v)).toBeLessThanOrEqual(M_PER_IN / 32 + 1e-9);
    }),
  );
});

test("a pressure reads in psf below 50 kPa and in psi above, with thousands grouped", () => {
  expect(showQuantity(60 * PA_PER_PSF, "Pa", "us")).toBe("60 psf");
  expect(showQuantity(3.048, "m/s", "us")).toBe("10.0 ft/s");
  // The section modulus of a 2x8 on edge: 1.5 in x (7.25 in)^2 / 6.
  expect(showQuantity((1.5 * 7.25 ** 2 * 0.0254 ** 3) / 6, "m3", "us")).toBe("13.14 in³");
  expect(showQuantity(215e-6, "m3", "metric")).toBe("215,000 mm³");
  expect(showQuantity(0.5, "m/s", "metric")).toBe("0.50 m/s");
  expect(showQuantity(1_308 * PA_PER_PSI, "Pa", "us")).toBe("1,308 psi");
});

test("a share of a limit never hides on which side of it it lies", () => {
  const said = [0.424, 0.996, 1, 1.0004, 1.126, 2].map(showShareOfLimit);
  expect(said).toEqual(["0.42", "0.99", "1.00", "1.01", "1.13", "2.00"]);
});
