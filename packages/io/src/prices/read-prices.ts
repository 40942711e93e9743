import type { Problem } from "@causey/engine/formula";
import type { Price } from "@causey/engine/materials";
import { columnsOf, readCsv, undefuse, type CsvRow } from "../csv/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { decimalSign, readsTwoWays } from "./decimal.ts";
import { PRICE_HEADS, PriceLine, type Head } from "./price-line.ts";

export const BYTE_LIMIT = 10_000_000;
export const ROW_LIMIT = 20_000;

const NEEDED: readonly Head[] = ["item", "price", "currency", "date", "source"];
const NUMBERS: readonly Head[] = ["length_mm", "length_ft", "pack", "price"];

export interface PricesRead {
  readonly prices: readonly Price[];
  /** The one currency of the list; null for an empty list. */
  readonly currency: string | null;
  readonly warnings: readonly Problem[];
}

/**
 * Reads `prices.csv`: heads item, description, length_mm or length_ft, pack, price, currency, date, source in any
 * order; columns with other heads are left unread. Delimiter and decimal sign are found out. An empty pack is one
 * piece, an empty length a counted thing. One currency for the whole list, every price dated and with its source.
 * Throws `ProblemError` with every fault, each with its line.
 */
export function readPrices(file: string, bytes: Uint8Array): PricesRead {
  const found = new Findings(file);
  const table = readCsv(found, bytes, BYTE_LIMIT, ROW_LIMIT);
  const columns = columnsOf(found, table.heads);
  checkHeads(found, columns);
  const known: ReadonlySet<string> = new Set(PRICE_HEADS);
  const cell = (row: CsvRow, head: Head): string =>
    known.has(head) ? undefuse(row.cells[columns.get(head) ?? -1] ?? "") : "";
  const numbers = table.rows.flatMap((row) => NUMBERS.map((head) => cell(row, head)));
  const sign = decimalSign(numbers);
  const prices = table.rows.flatMap((row) => {
    const line = new PriceLine(found, row, cell, sign, (t) => readsTwoWays(t, numbers, table.delimiter));
    return line.read() ?? [];
  });
  checkOneCurrency(found, prices);
  checkTwins(found, prices, table.rows);
  found.throwIfErrors();
  return { prices, currency: prices[0]?.currency ?? null, warnings: found.warnings };
}

function checkHeads(found: Findings, columns: ReadonlyMap<string, number>): void {
  const missing = NEEDED.filter((head) => !columns.has(head));
  if (missing.length === 0) return;
  const names = missing.map((m) => quote(m)).join(", ");
  found.stop({
    code: missing.includes("currency") && missing.length === 1 ? "price-currency" : "price-heads",
    place: "line 1",
    value: [...columns.keys()].join(", "),
    message: `The price list lacks the column${missing.length > 1 ? "s" : ""} ${names}.`,
    mend: missing.includes("currency")
      ? 'Add a column "currency" with the code of the currency in every row, such as USD, GBP or EUR.'
      : `Add ${names} to the heads in its first line. Known columns: ${PRICE_HEADS.join(", ")}.`,
  });
}

/** Prices in two currencies cannot be added. */
export function checkOneCurrency(found: Findings, prices: readonly Price[]): void {
  const currencies = [...new Set(prices.map((p) => p.currency))].sort();
  if (currencies.length > 1)
    found.error({
      code: "price-currencies",
      place: "column currency",
      value: currencies.join(", "),
      message: `The list holds prices in ${currencies.join(" and ")}: they cannot be added.`,
      mend: "Turn all prices into one currency, with the rate and its date in the source.",
    });
}

/** Warns of two prices of the same item, length and pack; `rows` are the prices' own, one for each. */
export function checkTwins(found: Findings, prices: readonly Price[], rows: readonly CsvRow[]): void {
  if (prices.length !== rows.length) return;
  const seen = new Map<string, number>();
  prices.forEach((p, i) => {
    const key = `${p.item} ${p.length_mm ?? ""} ${p.pack}`;
    const first = seen.get(key);
    if (first === undefined) seen.set(key, rows[i]!.line);
    else
      found.warn({
        code: "price-twins",
        place: `line ${rows[i]!.line}`,
        value: p.item,
        message: `Line ${first} already gives a price for the same item, length and pack.`,
        mend: "Keep one of them; otherwise the cheaper counts.",
      });
  });
}
