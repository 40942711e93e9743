import type { Price } from "@causey/engine/materials";

/** What is to become of a list's rows, by their place. */
export interface PriceDraft {
  readonly prices: ReadonlyMap<number, number>;
  /** Rows that are no longer stocked. */
  readonly gone: ReadonlySet<number>;
}

/** The list with some prices changed, each with the day and the source that they were told on and by; less what is gone. */
export const withPrices = (
  prices: readonly Price[],
  draft: PriceDraft,
  { date, source }: Pick<Price, "date" | "source">,
): readonly Price[] =>
  prices.flatMap((price, i) => {
    if (draft.gone.has(i)) return [];
    return isChanged(price, draft.prices.get(i))
      ? [{ ...price, price: draft.prices.get(i)!, date, source }]
      : [price];
  });

/** How many prices a draft really changes; those of rows that are gone do not count. */
export const changedCount = (prices: readonly Price[], draft: PriceDraft): number =>
  prices.filter((price, i) => !draft.gone.has(i) && isChanged(price, draft.prices.get(i))).length;

const isChanged = (price: Price, told: number | undefined): boolean =>
  told !== undefined && told !== price.price;

/** The list said to be in another currency. The numbers stay: nothing is converted. */
export const inCurrency = (prices: readonly Price[], currency: string): readonly Price[] =>
  prices.map((price) => ({ ...price, currency }));
