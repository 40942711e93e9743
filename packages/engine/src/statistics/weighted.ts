import { DomainError } from "../units/index.ts";

/** Mean and spread of weighted values, and how many equal readings the weights amount to. */
export interface WeightedSpread {
  readonly mean: number;
  /** Standard deviation of one value; null where the weights amount to a single one. */
  readonly sd: number | null;
  /** (sum w)^2 / sum w^2. */
  readonly effective: number;
}

/** How many equal weights the given ones amount to: (sum w)^2 / sum w^2. Weights >= 0, one of them over 0. */
export function effectiveNumber(weights: readonly number[]): number {
  // Scaled by the largest, so that far readings with tiny weights do not vanish in their squares.
  const most = Math.max(0, ...weights);
  if (!(most > 0 && most < Infinity)) throw new DomainError("no-weight", { weights: weights.length });
  const shares = weights.map((w) => w / most);
  const sum = shares.reduce((total, w) => total + w, 0);
  return sum ** 2 / shares.reduce((total, w) => total + w ** 2, 0);
}

/** Mean, standard deviation (divisor 1 - 1/effective on weights that sum to 1) and effective number. */
export function weightedSpread(values: readonly number[], weights: readonly number[]): WeightedSpread {
  const effective = effectiveNumber(weights);
  const most = Math.max(...weights);
  const shares = weights.map((w) => w / most);
  const sum = shares.reduce((total, w) => total + w, 0);
  const mean = values.reduce((total, v, i) => total + v * shares[i]!, 0) / sum;
  if (effective < 1 + 1e-9) return { mean, sd: null, effective };
  const squares = values.reduce((total, v, i) => total + shares[i]! * (v - mean) ** 2, 0) / sum;
  return { mean, sd: Math.sqrt(squares / (1 - 1 / effective)), effective };
}
