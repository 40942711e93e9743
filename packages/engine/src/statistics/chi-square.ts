import { DomainError } from "../units/index.ts";
import { incompleteGamma, type GammaShares } from "./incomplete-gamma.ts";

/** Chances that chi-square with `df` > 0 degrees of freedom lies below and above x >= 0. */
export const chiSquareShares = (x: number, df: number): GammaShares => incompleteGamma(df / 2, x / 2);

/** Value below which chi-square lies with chance p, 0 < p < 1: bisection, to the last digit. */
export function chiSquareQuantile(p: number, df: number): number {
  if (!(p > 0 && p < 1 && df > 0)) throw new DomainError("chi-square-share", { p, df });
  const isShort = (x: number): boolean =>
    p <= 0.5 ? chiSquareShares(x, df).below < p : chiSquareShares(x, df).above > 1 - p;
  let low = 0;
  let high = Math.max(1, df);
  while (isShort(high)) [low, high] = [high, high * 2];
  for (let i = 0; i < 1100; i++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high || high - low <= 1e-15 * high) break;
    if (isShort(middle)) low = middle;
    else high = middle;
  }
  return high;
}
