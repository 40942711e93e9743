import { cuttingProblems, type Unpriced } from "./cutting-problems.ts";
import type { Price, TakeOff } from "./types.ts";

/**
 * What a price list cannot price of a take-off, before anything is cut: sizes and things that it lacks, pieces longer
 * than its longest stock. Empty when every item has a price.
 */
export const missingPrices = (off: TakeOff, prices: readonly Price[]): readonly Unpriced[] => [
  ...cuttingProblems(off, prices, 0).unpriced,
  ...off.counted
    .filter((line) => !prices.some((p) => p.item === line.item && p.length_mm === null))
    .map((line) => ({ item: line.item, needed: line.count })),
];
