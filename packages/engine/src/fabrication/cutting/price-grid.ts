/**
 * Prices as whole numbers, so that costs add up exactly and a bound may be rounded up to the next possible cost.
 *
 * units    per price, whole, never more than the price (a bound in units stays a bound in money)
 * toMoney  price units back to money
 * isExact  the units are the prices; else they are a little less
 */
export interface PriceGrid {
  readonly units: readonly number[];
  readonly toMoney: (units: number) => number;
  readonly isExact: boolean;
}

const MOST_DECIMALS = 6;
/** The noise of a product such as 3.658 * 2.61, not a difference in price. */
const NOISE = 1e-12;
const LARGEST_SUM = 2 ** 50;

/** Prices are finite and 0 or more; `sticks` is the most sticks any sensible plan uses (one per piece). */
export function priceGrid(prices: readonly number[], sticks: number): PriceGrid {
  return decimalGrid(prices, sticks) ?? onePriceGrid(prices) ?? binaryGrid(prices, sticks);
}

/** The coarsest of 1, 0.1, 0.01, ... that every price is a multiple of. */
function decimalGrid(prices: readonly number[], sticks: number): PriceGrid | null {
  for (let decimals = 0, scale = 1; decimals <= MOST_DECIMALS; decimals++, scale *= 10) {
    const units = prices.map((p) => Math.round(p * scale));
    if (Math.max(...units) * sticks > LARGEST_SUM) return null;
    if (units.every((u, i) => Math.abs(u / scale - prices[i]!) <= NOISE * prices[i]!))
      return { units, toMoney: (total) => total / scale, isExact: true };
  }
  return null;
}

/** All prices alike: the unit is one stick. */
function onePriceGrid(prices: readonly number[]): PriceGrid | null {
  const price = prices[0]!;
  if (prices.some((p) => p !== price)) return null;
  return { units: prices.map(() => 1), toMoney: (units) => units * price, isExact: true };
}

/** Prices with a long tail: rounded down to a power of two so small that nothing is lost in print. */
function binaryGrid(prices: readonly number[], sticks: number): PriceGrid {
  const unit = 2 ** Math.ceil(Math.log2((Math.max(...prices) * sticks) / LARGEST_SUM));
  return { units: prices.map((p) => Math.floor(p / unit)), toMoney: (units) => units * unit, isExact: false };
}

export function greatestCommonDivisor(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => {
    let [x, y] = [a, b];
    while (y > 0) [x, y] = [y, x % y];
    return x;
  }, 0);
}
