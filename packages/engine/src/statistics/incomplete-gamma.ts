import { DomainError } from "../units/index.ts";
import { continuedFraction } from "./continued-fraction.ts";
import { logGamma } from "./gamma.ts";

/** Shares of the gamma distribution below and above a value: they add up to 1, and the smaller keeps its digits. */
export interface GammaShares {
  readonly below: number;
  readonly above: number;
}

/** Regularised incomplete gamma functions of shape a > 0 at x >= 0: series below a + 1, Lentz's fraction above. */
export function incompleteGamma(a: number, x: number): GammaShares {
  if (!(a > 0 && a < Infinity && x >= 0)) throw new DomainError("incomplete-gamma", { a, x });
  if (x === 0) return { below: 0, above: 1 };
  if (x === Infinity) return { below: 1, above: 0 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    const below = front * series(a, x);
    return { below, above: 1 - below };
  }
  const above = front / continuedFraction(x + 1 - a, (i) => [i * (a - i), x + 2 * i + 1 - a]);
  return { below: 1 - above, above };
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}
