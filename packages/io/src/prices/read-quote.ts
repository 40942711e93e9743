import type { Price } from "@causey/engine/materials";
import type { CsvRow } from "../csv/index.ts";
import { readDate } from "../points/index.ts";
import { Findings } from "../problem/index.ts";
import { readsTwoWays, type DecimalSign } from "./decimal.ts";
import { itemGuesser } from "./match-item.ts";
import { columnCells } from "./open-quote.ts";
import { LENGTH_UNITS, PriceLine, type Head, type LengthUnit } from "./price-line.ts";
import { quoteNotes } from "./quote-notes.ts";
import type { KnownItem, QuoteChoice, QuoteKey, QuoteRead, QuoteRow, QuoteTable } from "./quote-types.ts";
import { checkOneCurrency, checkTwins } from "./read-prices.ts";

type Cells = (row: CsvRow, key: QuoteKey) => string;

const cellsOf = ({ heads }: QuoteTable, { columns }: QuoteChoice): Cells => {
  const places = new Map(Object.entries(columns).map(([key, head]) => [key, heads.indexOf(head ?? "")]));
  return (row, key) => row.cells[places.get(key) ?? -1] ?? "";
};

/** Every row of the file with what its words were taken for; none is left away. */
export function quoteRows(
  table: QuoteTable,
  choice: QuoteChoice,
  known: readonly KnownItem[],
): readonly QuoteRow[] {
  const cell = cellsOf(table, choice);
  const guessItem = itemGuesser(known);
  const guesses = new Map<string, QuoteRow["guess"]>();
  return table.rows.map((row) => {
    const words = cell(row, "item");
    const guess = guesses.get(words) ?? guessItem(words);
    guesses.set(words, guess);
    const length = cell(row, "length") || cell(row, "length_ft");
    return { line: row.line, words, cells: [length, cell(row, "price"), cell(row, "date")], guess };
  });
}

/** What keeps the file from being read, in words; null when nothing does. */
export function stillMissing({ columns, length_unit, date_order, ...typed }: QuoteChoice): string | null {
  const lacking = [
    ...(columns.item === null ? ["which column names the item"] : []),
    ...(columns.price === null ? ["which column holds the price"] : []),
    ...(columns.length !== null && length_unit === null ? ["the unit of the lengths"] : []),
    ...(columns.currency === null && typed.currency === "" ? ["the currency"] : []),
    ...(columns.date === null && typed.date === "" ? ["the day of the prices"] : []),
    ...(columns.date !== null && date_order === null ? ["how its days are written"] : []),
    ...(columns.source === null && typed.source.trim() === "" ? ["who gave the prices"] : []),
  ];
  return lacking.length === 0 ? null : `Still to be said: ${lacking.join(", ")}.`;
}

/**
 * The prices of the rows that are taken, with every fault of theirs at once. Nothing is thrown.
 *
 * items  line of the file -> item that the row prices; a row that is not in it is left out. An item that is not known
 *        is a new one, with the length that the row gives
 */
export function readQuote(
  table: QuoteTable,
  choice: QuoteChoice,
  items: ReadonlyMap<number, string>,
  known: readonly KnownItem[],
): QuoteRead {
  const found = new Findings(table.file);
  const rows = table.rows.filter((row) => items.has(row.line));
  const reader = new RowReader(table, choice, items, known);
  const prices = rows.flatMap((row) => reader.read(found, row) ?? []);
  checkOneCurrency(found, prices);
  checkTwins(found, prices, rows);
  const taken = quoteRows({ ...table, rows }, choice, known);
  return { prices, problems: found.all, notes: quoteNotes(taken, items, known) };
}

/** Turns the cells of a row, as they were chosen, into those of a price list of the project's own. */
class RowReader {
  readonly #choice: QuoteChoice;
  readonly #items: ReadonlyMap<number, string>;
  readonly #lumber: ReadonlySet<string>;
  readonly #counted: ReadonlySet<string>;
  readonly #cell: Cells;
  readonly #sign: DecimalSign;
  readonly #readsTwoWays: (text: string) => boolean;

  constructor(
    table: QuoteTable,
    choice: QuoteChoice,
    items: ReadonlyMap<number, string>,
    known: readonly KnownItem[],
  ) {
    this.#choice = choice;
    this.#items = items;
    this.#lumber = new Set(known.filter((k) => k.is_lumber).map((k) => k.item));
    this.#counted = new Set(known.filter((k) => !k.is_lumber).map((k) => k.item));
    this.#cell = cellsOf(table, choice);
    this.#sign = choice.decimal === "comma" ? "," : ".";
    const { price, length, length_ft, pack } = choice.columns;
    const numbers = [price, length, length_ft, pack]
      .flatMap((head) => columnCells(table, head))
      .map((n) => bare(n));
    this.#readsTwoWays = (text) => this.#sign === "." && readsTwoWays(text, numbers, table.delimiter);
  }

  read(found: Findings, row: CsvRow): Price | null {
    const cell = (r: CsvRow, head: Head): string => this.#cellOf(r, head);
    const line = new PriceLine(found, row, cell, this.#sign, this.#readsTwoWays, (head) =>
      this.#nameOf(head),
    );
    const price = line.read();
    if (price === null || price.length_mm !== null || !this.#lumber.has(price.item)) return price;
    found.error({
      code: "price-length",
      place: `line ${row.line}, column ${this.#choice.columns.length ?? "(none)"}`,
      value: this.#cell(row, "length"),
      message: `The row has no length, and ${price.item} is sold by its length.`,
      mend: "Choose the column of the lengths, give the length in the file, or leave the row out.",
    });
    return null;
  }

  #cellOf(row: CsvRow, head: Head): string {
    switch (head) {
      case "item":
        return this.#items.get(row.line) ?? "";
      case "description":
        return this.#cell(row, "description") || this.#cell(row, "item");
      case "price":
        return bare(this.#cell(row, "price"), this.#currencyOf(row));
      case "currency":
        return this.#currencyOf(row);
      case "date":
        return this.#dateOf(row);
      case "source":
        return this.#choice.columns.source === null ? this.#choice.source.trim() : this.#cell(row, "source");
      case "pack":
        return this.#cell(row, "pack");
      default:
        return this.#lengthIn(row, head.slice("length_".length) as LengthUnit);
    }
  }

  #currencyOf(row: CsvRow): string {
    return this.#choice.columns.currency === null ? this.#choice.currency : this.#cell(row, "currency");
  }

  #dateOf(row: CsvRow): string {
    const { columns, date, date_order } = this.#choice;
    if (columns.date === null) return date;
    const text = this.#cell(row, "date");
    return (date_order === null ? null : readDate(text, date_order)?.iso) ?? text;
  }

  /** The length, where the row gives it in this unit; a unit in the cell counts before the column's. */
  #lengthIn(row: CsvRow, unit: LengthUnit): string {
    if (this.#counted.has(this.#items.get(row.line) ?? "")) return "";
    const feet = this.#cell(row, "length_ft");
    if (unit === "ft" && feet !== "") return feet;
    const [number, own] = splitLength(this.#cell(row, "length"));
    return (own ?? this.#choice.length_unit) === unit ? number : "";
  }

  #nameOf(head: Head): string {
    if (head === "length_ft" && this.#choice.columns.length_ft !== null)
      return this.#choice.columns.length_ft;
    const column = head.startsWith("length_") ? "length" : (head as Exclude<Head, `length_${LengthUnit}`>);
    return this.#choice.columns[column] ?? head;
  }
}

/** A number without the sign or code of its currency: "£ 9.80", "9.80 GBP". */
function bare(text: string, currency = ""): string {
  const plain = text.replaceAll(/^[£€$]\s*|\s*[£€$]$/g, "").trim();
  const code = currency.toLowerCase();
  if (code === "") return plain;
  const low = plain.toLowerCase();
  if (low.startsWith(code)) return plain.slice(code.length).trim();
  return low.endsWith(code) ? plain.slice(0, -code.length).trim() : plain;
}

const SIGNS: Readonly<Record<string, LengthUnit>> = {
  "'": "ft",
  "′": "ft",
  '"': "in",
  "″": "in",
  feet: "ft",
  foot: "ft",
};

/** "8 ft" is 8 in feet; a bare number has no unit of its own. */
function splitLength(text: string): readonly [number: string, unit: LengthUnit | null] {
  const match = /^([-+]?[\d.,\s]*\d)\s*([a-z]+|['′"″])$/i.exec(text.trim());
  const word = match?.[2]!.toLowerCase() ?? "";
  const unit = LENGTH_UNITS.find((u) => u === word) ?? SIGNS[word] ?? null;
  return match && unit !== null ? [match[1]!, unit] : [text.trim(), null];
}
