export { knownItems } from "./known-items.ts";
export { itemGuesser } from "./match-item.ts";
export { mergeFaults, mergePrices, packNotes, type MergedPrices, type MergeWay } from "./merge-prices.ts";
export { guessQuote, openQuote, withColumn } from "./open-quote.ts";
export { LENGTH_UNITS, PRICE_HEADS, type LengthUnit } from "./price-line.ts";
export type {
  ItemGuess,
  KnownItem,
  QuoteChoice,
  QuoteKey,
  QuoteRead,
  QuoteRow,
  QuoteTable,
} from "./quote-types.ts";
export { quoteRows, readQuote, stillMissing } from "./read-quote.ts";
export { readPrices, type PricesRead } from "./read-prices.ts";
export { writePrices } from "./write-prices.ts";
