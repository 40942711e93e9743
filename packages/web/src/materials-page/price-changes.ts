import type { Price } from "@causey/engine/materials";

/** New prices of a list, by the place of their row. */
export type PriceDraft = ReadonlyMap<number, number>;

/** The list with some prices changed, each with the day and the source that they were told on and by. */
export const withPrices = (
  prices: readonly Price[],
  draft: PriceDraft,
  { date, source }: Pick<Price, "date" | "source">,
): readonly Price[] =>
  prices.map((price, i) => {
    const told = draft.get(i);
    return told === undefined || told === price.price ? price : { ...price, price: told, date, source };
  });

/** How many prices a draft really changes. */
export const changedCount = (prices: readonly Price[], draft: PriceDraft): number =>
  prices.filter((price, i) => draft.has(i) && draft.get(i) !== price.price).length;

/** The list said to be in another currency. The numbers stay: nothing is converted. */
export const inCurrency = (prices: readonly Price[], currency: string): readonly Price[] =>
  prices.map((price) => ({ ...price, currency }));
