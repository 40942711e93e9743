import type { Price } from "../materials/index.ts";
import { daysBetween } from "./day-count.ts";

/**
 * Prices that are older than `most` days on a day, oldest first; the same item is named once, by its oldest price.
 *
 * on    ISO day; a price dated after it is not old
 */
export function oldPrices(
  prices: readonly Price[],
  on: string,
  most: number,
): readonly { readonly item: string; readonly date: string; readonly age_days: number }[] {
  const oldest = new Map<string, { item: string; date: string; age_days: number }>();
  for (const { item, date } of prices) {
    const age_days = daysBetween(date, on);
    if (age_days > most && age_days > (oldest.get(item)?.age_days ?? -Infinity))
      oldest.set(item, { item, date, age_days });
  }
  return [...oldest.values()].toSorted((a, b) => b.age_days - a.age_days || (a.item < b.item ? -1 : 1));
}
