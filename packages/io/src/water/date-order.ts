/** Which of two numbers before the year is the day; null where a file writes years first, or shows neither. */
export type DateOrder = "dmy" | "mdy";

export interface OrderFound {
  readonly order: DateOrder | null;
  /** First row that can only be one order, by its place in the list; -1 when there is none. */
  readonly dmyAt: number;
  readonly mdyAt: number;
  /** Whether any row writes the year last. */
  readonly yearLast: boolean;
}

const YEAR_LAST = /^(\d{1,2})([/.-])(\d{1,2})\2(?:\d{4}|\d{2})(?!\d)/;

/**
 * Reads off all rows which number is the day: one above 12 tells, and points between them are the day-first way.
 * Nothing is guessed: a file that shows neither, or both, has no order.
 */
export function dateOrder(texts: Iterable<string>): OrderFound {
  let [dmyAt, mdyAt, i, yearLast] = [-1, -1, 0, false];
  for (const text of texts) {
    const found = YEAR_LAST.exec(text);
    if (found) {
      yearLast = true;
      const [first, second] = [Number(found[1]), Number(found[3])];
      if (dmyAt < 0 && (first > 12 || found[2] === ".")) dmyAt = i;
      if (mdyAt < 0 && second > 12) mdyAt = i;
    }
    i++;
  }
  const order = dmyAt >= 0 === mdyAt >= 0 ? null : dmyAt >= 0 ? "dmy" : "mdy";
  return { order, dmyAt, mdyAt, yearLast };
}
