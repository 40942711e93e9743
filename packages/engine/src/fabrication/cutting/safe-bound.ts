import type { Knapsack } from "./knapsack.ts";
import type { CuttingModel, Rest } from "./model.ts";

/**
 * Whole values per piece that stand for the dual prices, with the lower bound they prove.
 *
 * values  per kind, whole
 * rate    price units per unit of value, chosen so that the bound is as high as it can be
 * bound   no plan for the rest costs less, in price units; Infinity when the sticks cannot hold the rest
 */
export interface ProvenBound {
  readonly values: readonly number[];
  readonly rate: number;
  readonly bound: number;
}

/** Far more than the rounding of the few dozen operations below. */
const ROUNDING = 1e-12;
const VALUE_BITS = 36;
const SUM_BITS = 52;

/** Dual prices (in price units) as whole values whose sums stay exact. */
export function wholeValues(prices: readonly number[], model: CuttingModel, rest: Rest): number[] {
  const pieces = rest.demand.reduce((a, b) => a + b, 0);
  const largest = Math.max(...prices, 0);
  if (largest === 0) return prices.map(() => 0);
  const perStick = Math.max(...model.sticks.map((s) => s.capacity)) / Math.min(...model.widths);
  const scale =
    2 ** (Math.min(VALUE_BITS, SUM_BITS - Math.ceil(Math.log2(pieces + perStick + 1))) - 1) / largest;
  return prices.map((p) => Math.floor(Math.max(0, p) * scale));
}

/**
 * The Lagrangian bound of Farley's kind: price the pieces at `rate` each unit of value; no filling of stick s is
 * worth more than rate * best(s). Sticks without limit must not gain (rate * best <= cost); what a limited
 * stick gains is taken off once per stick to be had. The bound is concave in the rate with its corners at
 * cost / best, so the best corner is the best rate. Every sum before the last division is exact.
 */
export function proveBound(
  model: CuttingModel,
  rest: Rest,
  values: readonly number[],
  knapsack: Knapsack,
): ProvenBound {
  const total = values.reduce((sum, v, k) => sum + v * rest.demand[k]!, 0);
  const sticks = model.sticks
    .map((s, i) => ({ cost: s.cost, best: knapsack.best(s.capacity), limit: rest.limits[i]! }))
    .filter((s) => s.limit > 0 && s.best > 0);
  const free = sticks.filter((s) => s.limit === Infinity);
  const limited = sticks.filter((s) => s.limit < Infinity);
  const most = limited.reduce((sum, s) => sum + s.limit * s.best, 0);
  if (free.length === 0 && total * (1 - ROUNDING) > most) return { values, rate: 1, bound: Infinity };
  const highest = Math.min(...free.map((s) => s.cost / s.best));
  const at = (rate: number): number =>
    limited.reduce((sum, s) => sum - s.limit * Math.max(0, rate * s.best - s.cost), rate * total);
  const corners = [...new Set(sticks.map((s) => s.cost / s.best))].filter((rate) => rate <= highest);
  const rate = corners.reduce((best, r) => (at(r) > at(best) ? r : best), 0);
  return { values, rate, bound: Math.max(0, at(rate) - rate * (total + most) * ROUNDING) };
}
