import { quote, type Findings } from "../problem/index.ts";
import { dayNumber, orderWords, otherOrders, readDate } from "./read-date.ts";
import type { DateOrder } from "./types.ts";

/** The dates of one column: faults by line, and what is doubtful about them all. */
export class DateColumn {
  readonly #found: Findings;
  readonly #order: DateOrder;
  readonly #signs = new Map<string, number>();
  #either = 0;
  #sure = 0;
  #firstEither = "";

  constructor(found: Findings, order: DateOrder) {
    this.#found = found;
    this.#order = order;
  }

  /** ISO date of a cell; null for a blank one and for a fault, which is reported. */
  read(text: string, line: number): string | null {
    if (text === "") return null;
    const date = readDate(text, this.#order);
    const others = otherOrders(text, this.#order);
    if (date === null) return this.#fault(text, line, others);
    if (!this.#signs.has(date.sign)) this.#signs.set(date.sign, line);
    if (others.length === 0 || isTheSame(text, this.#order, others)) this.#sure += 1;
    else {
      if (this.#either === 0) this.#firstEither = `line ${line}, ${quote(text)}`;
      this.#either += 1;
    }
    return date.iso;
  }

  /** Days since 1970-01-01; NaN for none. */
  day(text: string, line: number): number {
    const iso = this.read(text, line);
    return iso === null ? NaN : dayNumber(iso);
  }

  #fault(text: string, line: number, others: readonly DateOrder[]): null {
    const fits = others.map((o) => orderWords[o]).join(" or ");
    this.#found.error({
      code: "date-order",
      place: `line ${line}`,
      value: text,
      message: `${quote(text)} cannot be a date in the order ${orderWords[this.#order]}${fits === "" ? "" : `; it reads as ${fits}`}.`,
      mend:
        fits === ""
          ? "Write dates in numbers with the year in four digits, as 2026-10-05."
          : `If the whole file is in ${fits}, choose that order; if orders are mixed, mend the file, for other rows may be read wrongly too.`,
    });
    return null;
  }

  /** Warns of dates that could be read either way. */
  finish(): void {
    if (this.#either > 0 && this.#signs.size > 1) {
      const where = [...this.#signs].map(([sign, line]) => `${quote(sign)} from line ${line}`).join(", ");
      this.#found.warn({
        code: "date-mix",
        place: this.#firstEither,
        value: `${this.#either} dates`,
        message: `Dates are written in several ways (${where}), and ${this.#either} of them read as day-month or month-day alike: two orders may be mixed.`,
        mend: `All were taken as ${orderWords[this.#order]}. Check the rows of each way of writing.`,
      });
    } else if (this.#either > 0 && this.#sure === 0)
      this.#found.warn({
        code: "date-either-way",
        place: this.#firstEither,
        value: `${this.#either} dates`,
        message: "Every date of the file reads as day-month or month-day alike.",
        mend: `They were taken as ${orderWords[this.#order]}: check one against the field book.`,
      });
  }
}

/** 5/5/2026 is one day in either order. */
const isTheSame = (text: string, order: DateOrder, others: readonly DateOrder[]): boolean =>
  others.every((o) => readDate(text, o)!.iso === readDate(text, order)!.iso);
