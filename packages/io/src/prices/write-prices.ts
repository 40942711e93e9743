import type { Price } from "@causey/engine/materials";
import { csvBytes } from "../csv/index.ts";

/** `prices.csv` with lengths in millimetres and formula cells defused; `readPrices` gives the same prices back. */
export const writePrices = (prices: readonly Price[]): Uint8Array =>
  csvBytes(
    ["item", "description", "length_mm", "pack", "price", "currency", "date", "source"],
    prices.map((p) => [p.item, p.description, p.length_mm, p.pack, p.price, p.currency, p.date, p.source]),
  );
