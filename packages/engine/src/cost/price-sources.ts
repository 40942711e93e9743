import type { OrderLine } from "../materials/index.ts";
import type { PriceSource } from "./types.ts";

/** Words by which a source of prices says that nobody offered them. */
const EXAMPLE = /\b(?:examples?|invented|not a real|made.up|placeholder)\b/iu;

/** Sources and days of the order's prices, oldest day first, with the lines that rest on each. */
export function priceSources(order: readonly OrderLine[]): PriceSource[] {
  const found = new Map<string, PriceSource>();
  for (const { price_source: source, price_date: date } of order) {
    const key = JSON.stringify([date, source]);
    const lines = (found.get(key)?.lines ?? 0) + 1;
    found.set(key, { source, date, lines, is_example: EXAMPLE.test(source) });
  }
  const rank = ({ date, source }: PriceSource): string => `${date} ${source}`;
  return [...found.values()].toSorted((a, b) => (rank(a) < rank(b) ? -1 : 1));
}

/** "17 lines of 2026-01-01, source: Fennick Yard"; says so where the source is blank. */
export const priceSourceWords = ({ source, date, lines }: PriceSource): string =>
  `${lines} ${lines === 1 ? "line" : "lines"} of ${date}, source: ${source.trim() || "not told"}`;

/** How many lines and items rest on old prices; null when none does. */
export function oldPriceWords(
  old: readonly { readonly order_lines: number }[],
  order_lines: number,
  days: number,
): string | null {
  if (old.length === 0) return null;
  const lines = old.reduce((sum, o) => sum + o.order_lines, 0);
  return `${lines} of the order's ${order_lines} lines rest on prices older than ${days} days (items of the price list that old: ${old.length}): ask the yard again.`;
}
