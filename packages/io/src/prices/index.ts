export { PRICE_HEADS } from "./price-line.ts";
export { readPrices, type PricesRead } from "./read-prices.ts";
export { writePrices } from "./write-prices.ts";
