import { isCalendarDay } from "../dates/index.ts";
import type { DateOrder } from "./types.ts";

const PLACES: Readonly<Record<DateOrder, readonly [year: number, month: number, day: number]>> = {
  ymd: [0, 1, 2],
  dmy: [2, 1, 0],
  mdy: [2, 0, 1],
};
export const orderWords: Readonly<Record<DateOrder, string>> = {
  ymd: "year-month-day",
  dmy: "day-month-year",
  mdy: "month-day-year",
};

/** Three numbers parted by one and the same sign; a time of day after them is left unread. */
const DATE = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})(?:[T ,].*)?$/;

/** A date in the given order as ISO text, with the sign between its parts; null when it cannot be one. */
export function readDate(
  text: string,
  order: DateOrder,
): { readonly iso: string; readonly sign: string } | null {
  const match = DATE.exec(text.trim());
  if (!match) return null;
  const parts = [match[1]!, match[3]!, match[4]!];
  const [year, month, day] = PLACES[order].map((place) => parts[place]!) as [string, string, string];
  if (year.length !== 4 || month.length > 2 || day.length > 2) return null;
  const iso = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  return isCalendarDay(iso) ? { iso, sign: match[2]! } : null;
}

/** Orders other than the given one in which the text is a date. */
export const otherOrders = (text: string, order: DateOrder): readonly DateOrder[] =>
  (["ymd", "dmy", "mdy"] as const).filter((o) => o !== order && readDate(text, o) !== null);

/** Days since 1970-01-01 of an ISO date. */
export const dayNumber = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / 86_400_000;
