import type { CuttingProblem } from "../fabrication/types.ts";
import type { Price, TakeOff, TimberLine } from "./types.ts";

/** Something the price list cannot price, and how many of it are needed. */
export interface Unpriced {
  readonly item: string;
  readonly needed: number;
}

export interface SizeCutting {
  readonly size: string;
  readonly problem: CuttingProblem;
}

/** A piece this close under or over a stock length is that stock, not cut at all [mm]. */
const WHOLE_STOCK_MM = 1;

/** Stock lengths in whole millimetres, rounded down: a yard never sells shorter than it says. */
export const stockLength = (length_mm: number): number => Math.floor(length_mm + 1e-6);

/** Lumber prices of one size, one for each whole-millimetre length: the cheapest where the list has several. */
export function stockPrices(prices: readonly Price[], size: string): Map<number, Price> {
  const found = new Map<number, Price>();
  for (const p of prices) {
    if (p.item !== size || p.length_mm === null) continue;
    const length = stockLength(p.length_mm);
    const other = found.get(length);
    if (!other || p.price / p.pack < other.price / other.pack) found.set(length, p);
  }
  return new Map([...found].sort(([a], [b]) => a - b));
}

/**
 * One cutting problem for each lumber size of a take-off, with the stock that the price list sells.
 *
 * kerf_mm   width of the saw cut  [mm], >= 0
 * returns   problems in whole millimetres, pieces rounded up and stock down; and what no stock can serve: sizes
 *           without a price, and pieces longer than the longest stock
 */
export function cuttingProblems(
  off: TakeOff,
  prices: readonly Price[],
  kerf_mm: number,
): { readonly problems: readonly SizeCutting[]; readonly unpriced: readonly Unpriced[] } {
  const problems: SizeCutting[] = [];
  const unpriced: Unpriced[] = [];
  for (const size of new Set(off.timber.map((line) => line.size))) {
    const stock = stockPrices(prices, size);
    const longest = Math.max(-Infinity, ...stock.keys());
    const lines = off.timber.filter((line) => line.size === size);
    const fits = lines.filter((line) => pieceLength(line.length_mm, stock) <= longest);
    for (const line of lines.filter((l) => !fits.includes(l))) unpriced.push(unpricedTimber(line));
    if (fits.length > 0) problems.push({ size, problem: cuttingProblem(fits, stock, kerf_mm) });
  }
  return { problems, unpriced };
}

export const unpricedTimber = (line: TimberLine): Unpriced => ({
  item: `${line.size}, ${line.length_mm} mm`,
  needed: line.count,
});

/** A piece in whole millimetres, rounded up; one that is a whole stick takes the stick's own length. */
function pieceLength(length_mm: number, stock: ReadonlyMap<number, Price>): number {
  const whole = [...stock.values()].find((p) => Math.abs(p.length_mm! - length_mm) < WHOLE_STOCK_MM);
  return whole ? stockLength(whole.length_mm!) : Math.ceil(length_mm - 1e-6);
}

function cuttingProblem(
  lines: readonly TimberLine[],
  stock: ReadonlyMap<number, Price>,
  kerf_mm: number,
): CuttingProblem {
  const counts = new Map<number, number>();
  for (const line of lines) {
    const length = pieceLength(line.length_mm, stock);
    counts.set(length, (counts.get(length) ?? 0) + line.count);
  }
  return {
    kerf_mm,
    stock: [...stock].map(([length_mm, p]) => ({ length_mm, price: p.price / p.pack })),
    pieces: [...counts].sort(([a], [b]) => b - a).map(([length_mm, count]) => ({ length_mm, count })),
  };
}
