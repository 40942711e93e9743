import type { DateOrder } from "./date-order.ts";
import { fixedOffset, wallSeconds, type ClockFault, type Wall, type Zone } from "./zone.ts";

/** A time of a record: its instant, or why it has none. */
export type TimeRead =
  | { readonly ok: true; readonly t_s: number; readonly zoned: boolean }
  | { readonly ok: false; readonly why: string; readonly clock: ClockFault | null };

const DATE = /^(?:(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2}))(?!\d)/;
const TIME = /^(?:T|\s+)(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?:\s*(AM|PM))?/i;

const CLOCK: Readonly<Record<ClockFault, string>> = {
  doubled: "stands twice when the clocks go back",
  skipped: "does not exist: the clocks go forward over it",
};

/**
 * Reads a date and a time of day: 2027-04-30 14:05, 30.04.2027 14:05:30, 04/30/2027 2:05 PM. A zone written behind it
 * (Z, -05:00, EST) wins over the record's.
 *
 * order  which number is the day where the year stands last; null = such dates are refused
 */
export function readTime(text: string, zone: Zone, order: DateOrder | null = null): TimeRead {
  const words = text.trim();
  const date = DATE.exec(words);
  if (!date) return no("is not a time: write it as 2027-04-30 14:05");
  if (date[4] !== undefined && order === null)
    return no("does not tell which number is the day: write the year first, as in 2027-04-30");
  const behind = words.slice(date[0].length);
  const time = TIME.exec(behind);
  const zoneWords = behind.slice(time?.[0].length ?? 0).trim();
  const own = zoneWords === "" ? null : fixedOffset(zoneWords);
  if (zoneWords !== "" && own === null)
    return no(`ends in "${zoneWords.slice(0, 20)}", which is no zone: write Z or an offset such as -05:00`);
  const wall = wallOf(date, time, order);
  if (wall === null) return no("is no day or time of the calendar");
  const fraction = Number(`0.${time?.[4] ?? 0}`);
  if (own !== null) return { ok: true, t_s: wallSeconds(wall) - own + fraction, zoned: true };
  const t = zone.instant(wall);
  return typeof t === "string"
    ? { ok: false, why: CLOCK[t], clock: t }
    : { ok: true, t_s: t + fraction, zoned: false };
}

const no = (why: string): TimeRead => ({ ok: false, why, clock: null });

function wallOf(date: RegExpExecArray, time: RegExpExecArray | null, order: DateOrder | null): Wall | null {
  const at = date[4] === undefined ? [1, 2, 3] : order === "dmy" ? [6, 5, 4] : [6, 4, 5];
  const [written, month, day] = at.map((i) => Number(date[i])) as [number, number, number];
  const year = date[at[0]!]!.length === 2 ? 2000 + written : written;
  const [given, minute, second] = [1, 2, 3].map((i) => Number(time?.[i] ?? 0)) as [number, number, number];
  const half = time?.[5]?.toUpperCase();
  if (half !== undefined && (given < 1 || given > 12)) return null;
  const hour = half === undefined ? given : (given % 12) + (half === "PM" ? 12 : 0);
  const wall = { year, month, day, hour, minute, second };
  const real = new Date(wallSeconds({ ...wall, hour: 0, minute: 0, second: 0 }) * 1000);
  const isDay =
    real.getUTCFullYear() === year && real.getUTCMonth() === month - 1 && real.getUTCDate() === day;
  return isDay && hour < 24 && minute < 60 && second < 60 ? wall : null;
}
