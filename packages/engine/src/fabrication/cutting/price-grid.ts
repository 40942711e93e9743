/**
 * Prices as whole numbers, so that costs add up exactly and a bound may be rounded up to the next possible cost.
 *
 * units    per price, whole; a price that is no multiple of the unit is rounded DOWN (the bound stays a bound)
 * isExact  no price was rounded
 * toMoney  price units back to money
 */
export interface PriceGrid {
  readonly units: readonly number[];
  readonly isExact: boolean;
  readonly toMoney: (units: number) => number;
}

const MOST_DECIMALS = 6;
const LARGEST_SUM = 2 ** 50;

/** Prices are finite and 0 or more; `sticks` is the most sticks any sensible plan uses (one per piece). */
export function priceGrid(prices: readonly number[], sticks: number): PriceGrid {
  return onePriceGrid(prices) ?? decimalGrid(prices, sticks) ?? binaryGrid(prices, sticks);
}

/** All prices alike: the unit is one stick. */
function onePriceGrid(prices: readonly number[]): PriceGrid | null {
  const price = prices[0] ?? 0;
  if (price === 0 || prices.some((p) => p !== price)) return null;
  return { units: prices.map(() => 1), isExact: true, toMoney: (units) => units * price };
}

/** The coarsest of 1, 0.1, 0.01, ... that every price is a multiple of. */
function decimalGrid(prices: readonly number[], sticks: number): PriceGrid | null {
  for (let decimals = 0, scale = 1; decimals <= MOST_DECIMALS; decimals++, scale *= 10) {
    const units = prices.map((p) => Math.round(p * scale));
    if (Math.max(...units) * sticks > LARGEST_SUM) return null;
    if (units.every((u, i) => u / scale === prices[i]))
      return { units, isExact: true, toMoney: (total) => total / scale };
  }
  return null;
}

/** Prices with a long tail (a price per metre times a length): a power of two so small that nothing is lost in print. */
function binaryGrid(prices: readonly number[], sticks: number): PriceGrid {
  const unit = 2 ** Math.ceil(Math.log2((Math.max(...prices) * sticks) / LARGEST_SUM));
  return {
    units: prices.map((p) => Math.floor(p / unit)),
    isExact: false,
    toMoney: (units) => units * unit,
  };
}

export function greatestCommonDivisor(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => {
    let [x, y] = [a, b];
    while (y > 0) [x, y] = [y, x % y];
    return x;
  }, 0);
}
