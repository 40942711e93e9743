import { DomainError } from "../units/index.ts";
import { continuedFraction } from "./continued-fraction.ts";
import { logBeta } from "./gamma.ts";

const logOf = (x: number, rest: number): number => (x > 0.5 ? Math.log1p(-rest) : Math.log(x));

/**
 * Regularised incomplete beta function: share of the beta distribution (a, b) below x.
 *
 * a, b  > 0
 * x     0..1; `rest` is 1 - x, given apart where the caller knows it more sharply than the subtraction does
 *
 * Lentz's continued fraction (Abramowitz and Stegun 26.5.8, from memory); small values keep their relative accuracy.
 */
export function incompleteBeta(a: number, b: number, x: number, rest: number = 1 - x): number {
  if (!(a > 0 && b > 0 && x >= 0 && rest >= 0 && x <= 1))
    throw new DomainError("incomplete-beta", { a, b, x });
  if (x === 0) return 0;
  if (rest === 0) return 1;
  return x <= (a + 1) / (a + b + 2) ? lowerShare(a, b, x, rest) : 1 - lowerShare(b, a, rest, x);
}

function lowerShare(a: number, b: number, x: number, rest: number): number {
  const front = Math.exp(a * logOf(x, rest) + b * logOf(rest, x) - logBeta(a, b)) / a;
  const fraction = continuedFraction(1, (i) => {
    const m = Math.floor(i / 2);
    const top =
      i % 2 === 0
        ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
        : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    return [top, 1];
  });
  return front / fraction;
}
