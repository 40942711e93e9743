import { columnsOf, readCsv, undefuse } from "../csv/index.ts";
import { columnHeads, readDate, type DateOrder } from "../points/index.ts";
import { Findings } from "../problem/index.ts";
import { decimalSign } from "./decimal.ts";
import { currencyOfHead, guessQuoteColumns, unitOfHead } from "./quote-heads.ts";
import type { QuoteChoice, QuoteKey, QuoteTable } from "./quote-types.ts";
import { BYTE_LIMIT, ROW_LIMIT } from "./read-prices.ts";

/**
 * Opens a yard's quote or a price list: a CSV file of any columns with one line of heads. Throws `ProblemError` for
 * what is no such file, with every fault.
 */
export function openQuote(file: string, bytes: Uint8Array): QuoteTable {
  columnHeads(file, bytes, "item, length ft, price GBP, date");
  const found = new Findings(file);
  const { delimiter, heads, rows } = readCsv(found, bytes, BYTE_LIMIT, ROW_LIMIT);
  columnsOf(found, heads);
  found.throwIfErrors();
  return { file, delimiter, heads, rows: rows.map((r) => ({ ...r, cells: r.cells.map(undefuse) })) };
}

/** Cells of one column, from the first row to the last; empty for a column that is not there. */
export function columnCells({ heads, rows }: QuoteTable, head: string | null): readonly string[] {
  const at = head === null ? -1 : heads.indexOf(head);
  return at < 0 ? [] : rows.map((row) => row.cells[at] ?? "");
}

/** How the file is to be read, as far as its heads and cells tell: a place to start choosing from. */
export function guessQuote(table: QuoteTable): QuoteChoice {
  const columns = guessQuoteColumns(table.heads);
  const numbers = [columns.price, columns.length, columns.length_ft, columns.pack].flatMap((head) =>
    columnCells(table, head),
  );
  return {
    columns,
    length_unit: columns.length === null ? null : unitOfHead(columns.length),
    decimal: decimalSign(numbers) === "," ? "comma" : "point",
    date_order: guessDateOrder(columnCells(table, columns.date)),
    currency: (columns.price === null ? null : currencyOfHead(columns.price)) ?? "",
    date: "",
    source: "",
  };
}

/** The choice with another column; what the new head or its cells tell about unit, currency and days goes with it. */
export function withColumn(
  table: QuoteTable,
  choice: QuoteChoice,
  key: QuoteKey,
  head: string | null,
): QuoteChoice {
  const next = { ...choice, columns: { ...choice.columns, [key]: head } };
  if (head === null) return next;
  if (key === "length") return { ...next, length_unit: unitOfHead(head) ?? choice.length_unit };
  if (key === "price") return { ...next, currency: currencyOfHead(head) ?? choice.currency };
  if (key === "date") return { ...next, date_order: guessDateOrder(columnCells(table, head)) };
  return next;
}

/** The one order in which every cell is a day; year-month-day when no cell is one; null when two orders fit. */
function guessDateOrder(cells: readonly string[]): DateOrder | null {
  const days = cells.filter(
    (cell) => readDate(cell, "ymd") ?? readDate(cell, "dmy") ?? readDate(cell, "mdy"),
  );
  if (days.length === 0) return "ymd";
  const fitting = (["ymd", "dmy", "mdy"] as const).filter((order) =>
    days.every((cell) => readDate(cell, order) !== null),
  );
  return fitting.length === 1 ? fitting[0]! : null;
}
