import type { OrderLine, Price } from "../materials/index.ts";
import type { OldPrice } from "./budget-types.ts";
import { daysBetween } from "./day-count.ts";

/**
 * Items with a price that is older than `most` days on a day, oldest first; an item is named once, by its oldest price,
 * with the number of order lines that rest on an old price of it: one item is often bought in several lengths.
 *
 * on     ISO day; a price dated after it is not old
 * order  the order's lines; none when nothing is ordered
 */
export function oldPrices(
  prices: readonly Price[],
  on: string,
  most: number,
  order: readonly OrderLine[] = [],
): readonly OldPrice[] {
  const oldest = new Map<string, OldPrice>();
  for (const { item, date } of prices) {
    const age_days = daysBetween(date, on);
    if (age_days <= most || age_days <= (oldest.get(item)?.age_days ?? -Infinity)) continue;
    const order_lines = order.filter((l) => l.item === item && daysBetween(l.price_date, on) > most).length;
    oldest.set(item, { item, date, age_days, order_lines });
  }
  return [...oldest.values()].toSorted((a, b) => b.age_days - a.age_days || (a.item < b.item ? -1 : 1));
}
