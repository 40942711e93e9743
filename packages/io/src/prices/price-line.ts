import type { Price } from "@causey/engine/materials";
import { M_PER_FT, M_PER_IN } from "@causey/engine/units";
import type { CsvRow } from "../csv/index.ts";
import { isCalendarDay } from "../dates/index.ts";
import type { Findings } from "../problem/index.ts";
import { parseDecimal, type DecimalSign } from "./decimal.ts";

/** Columns of a price list. A length is given in one of its two columns, or left empty for counted things. */
export const PRICE_HEADS = [
  "item",
  "description",
  "length_mm",
  "length_ft",
  "pack",
  "price",
  "currency",
  "date",
  "source",
] as const;
/** Units in which a yard gives lengths, with their millimetres: exact by definition. */
export const MM_PER = { mm: 1, cm: 10, m: 1000, ft: M_PER_FT * 1000, in: M_PER_IN * 1000 } as const;
export type LengthUnit = keyof typeof MM_PER;
export const LENGTH_UNITS = ["mm", "cm", "m", "ft", "in"] as const satisfies readonly LengthUnit[];

/** A list of the project's own has lengths in mm or ft alone; a yard's quote in any unit. */
export type Head = (typeof PRICE_HEADS)[number] | `length_${LengthUnit}`;

/** One row of the list; every fault names the line and the column. */
export class PriceLine {
  readonly #found: Findings;
  readonly #row: CsvRow;
  readonly #cell: (row: CsvRow, head: Head) => string;
  readonly #sign: DecimalSign;
  readonly #readsTwoWays: (text: string) => boolean;
  readonly #nameOf: (head: Head) => string;
  #isSound = true;

  constructor(
    found: Findings,
    row: CsvRow,
    cell: (row: CsvRow, head: Head) => string,
    sign: DecimalSign,
    readsTwoWays: (text: string) => boolean,
    nameOf: (head: Head) => string = (head) => head,
  ) {
    this.#found = found;
    this.#row = row;
    this.#cell = cell;
    this.#sign = sign;
    this.#readsTwoWays = readsTwoWays;
    this.#nameOf = nameOf;
  }

  read(): Price | null {
    const item = this.#text("item", "Name the thing, as the kit names it: a lumber size, a screw, a clip.");
    const price = {
      item,
      description: this.#of("description") || item,
      length_mm: this.#length(),
      pack: this.#pack(),
      price: this.#price(),
      currency: this.#currency(),
      date: this.#date(),
      source: this.#text("source", "Say which yard or catalogue the price is from."),
    };
    return this.#isSound ? price : null;
  }

  #of(head: Head): string {
    return this.#cell(this.#row, head);
  }

  #text(head: Head, mend: string): string {
    const text = this.#of(head);
    if (text === "") this.#fault("price-text", head, `The cell "${this.#nameOf(head)}" is empty`, mend);
    if (text.length > 500)
      this.#fault("price-text", head, `The cell "${this.#nameOf(head)}" is too long`, "Shorten it.");
    return text;
  }

  #number(head: Head): number | null {
    const text = this.#of(head);
    const value = this.#readsTwoWays(text) ? null : parseDecimal(text, this.#sign);
    if (value === null || !Number.isFinite(value)) {
      const mend = this.#readsTwoWays(text)
        ? "It could be a thousand or a fraction. Write it without a sign for thousands and with two decimals."
        : `Write a plain number with a decimal ${this.#sign === "," ? "comma, as elsewhere in this list" : "point"}.`;
      this.#fault(
        "price-number",
        head,
        `The cell "${this.#nameOf(head)}" is not a number that can be read in one way only`,
        mend,
      );
      return null;
    }
    return value;
  }

  #price(): number {
    if (this.#of("price") === "") {
      this.#fault("price-missing", "price", "The price is missing", "Give it, or take the line out.");
      return 0;
    }
    const price = this.#number("price") ?? 0;
    if (price < 0)
      this.#fault("price-negative", "price", "The price is below zero", "Give a price of zero or more.");
    return price;
  }

  #pack(): number {
    if (this.#of("pack") === "") return 1;
    const pack = this.#number("pack");
    if (pack === null || (Number.isInteger(pack) && pack >= 1)) return pack ?? 1;
    this.#fault(
      "price-pack",
      "pack",
      "A pack holds a whole number of pieces",
      "Give how many pieces one price buys.",
    );
    return 1;
  }

  /** Lumber is sold by length; what is not given in mm is rounded to a thousandth of a millimetre, no finer. */
  #length(): number | null {
    const [unit, other] = LENGTH_UNITS.filter((u) => this.#of(`length_${u}`) !== "");
    if (unit === undefined) return null;
    const head = `length_${other ?? unit}` as const;
    if (other !== undefined) {
      this.#fault("price-length", head, "The length is given twice", "Keep one length in this line.");
      return null;
    }
    const given = this.#number(head);
    if (given === null) return null;
    if (given <= 0)
      this.#fault("price-length", head, "The length is not above zero", "Give the stock length.");
    return unit === "mm" ? given : Math.round(given * MM_PER[unit] * 1e3) / 1e3;
  }

  #currency(): string {
    const text = this.#of("currency").toUpperCase();
    if (/^[A-Z]{3}$/.test(text)) return text;
    const mend = "Give the three letters of the currency, such as USD, GBP or EUR.";
    const what = text === "" ? "The price has no currency" : "This is not the code of a currency";
    this.#fault("price-currency", "currency", what, mend);
    return "";
  }

  #date(): string {
    const text = this.#of("date");
    if (!isCalendarDay(text))
      this.#fault(
        "price-date",
        "date",
        "The price has no date that can be read",
        "Write it as year-month-day: 2026-03-31.",
      );
    return text;
  }

  #fault(code: string, head: Head, message: string, mend: string): void {
    this.#isSound = false;
    const place = `line ${this.#row.line}, column ${this.#nameOf(head)}`;
    this.#found.error({ code, place, value: this.#of(head) || "(nothing)", message: `${message}.`, mend });
  }
}
