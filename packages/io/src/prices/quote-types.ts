import type { Problem } from "@causey/engine/formula";
import type { Price } from "@causey/engine/materials";
import type { CsvRow } from "../csv/index.ts";
import type { DateOrder, DecimalSign } from "../points/index.ts";
import type { LengthUnit } from "./price-line.ts";

/** What a column of a yard's quote can mean. */
export type QuoteKey =
  "item" | "length" | "length_ft" | "price" | "currency" | "date" | "source" | "pack" | "description";

/** A quote as its file stands there: heads in lower case, cells as text. */
export interface QuoteTable {
  readonly file: string;
  readonly delimiter: string;
  readonly heads: readonly string[];
  readonly rows: readonly CsvRow[];
}

/** How a quote is to be read. What a column gives counts before what was typed for the whole file. */
export interface QuoteChoice {
  /** The head of each column; null where the file has none. `length_ft` is a second column of lengths, in feet. */
  readonly columns: Readonly<Record<QuoteKey, string | null>>;
  /** Unit of the column `length`, unless a cell names its own; null = not known. */
  readonly length_unit: LengthUnit | null;
  readonly decimal: DecimalSign;
  /** Null = the days read in more than one way. */
  readonly date_order: DateOrder | null;
  /** For a file without a column of it: three letters, an ISO day, and who gave the prices. Empty = not given. */
  readonly currency: string;
  readonly date: string;
  readonly source: string;
}

/** Something that can be bought, by its id in the price list, and the words by which it is known. */
export interface KnownItem {
  readonly item: string;
  readonly names: readonly string[];
  /** Lumber is priced by its stock length, everything else by the piece. */
  readonly is_lumber: boolean;
}

/** What a row's words were taken for. */
export interface ItemGuess {
  /** Null = not recognised. */
  readonly item: string | null;
  /** An item that the words seem to mean, though some of them are not understood; null = none. */
  readonly perhaps: string | null;
  /** Words beside the item's name that make no difference to it: "treated". */
  readonly unheeded: readonly string[];
  /** Words that are not understood: "hanger". */
  readonly strange: readonly string[];
}

/** A row as it is shown for choosing. */
export interface QuoteRow {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly words: string;
  /** Length, price and day as they stand in the file. */
  readonly cells: readonly string[];
  readonly guess: ItemGuess;
}

/** The prices of the rows that are taken, with everything to be said about them. */
export interface QuoteRead {
  readonly prices: readonly Price[];
  /** Errors and warnings; with an error nothing can be taken over. */
  readonly problems: readonly Problem[];
  readonly notes: readonly string[];
}
