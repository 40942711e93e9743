import { Temporal } from "temporal-polyfill";

/** A time of a record: its instant, or why it has none. */
export type TimeRead =
  | { readonly ok: true; readonly t_s: number; readonly zoned: boolean }
  | { readonly ok: false; readonly why: string };

const SHAPE =
  /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})(?:[T ]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,3}))?)?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/i;
const OFFSET = /^([+-])(\d{2}):?(\d{2})$/;

/** Turns local times of one zone into instants; remembers what it worked out, for records have many rows a day. */
export interface Zone {
  readonly name: string;
  /** Seconds since 1970 of a wall-clock time, or why there is none: skipped or doubled at a clock change. */
  readonly instant: (wall: Wall) => number | string;
}
interface Wall {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

const utc = (w: Wall): number => Date.UTC(w.year, w.month - 1, w.day, w.hour, w.minute, w.second) / 1000;

/** A zone by its name: "UTC", an offset such as "-05:00", or an IANA name; null when it is none of them. */
export function zoneOf(name: string): Zone | null {
  const words = name.trim();
  if (/^(UTC|GMT|Z)$/i.test(words)) return { name: "UTC", instant: utc };
  const offset = OFFSET.exec(words);
  if (offset) {
    const seconds = offsetSeconds(offset);
    return { name: words, instant: (w) => utc(w) - seconds };
  }
  try {
    new Temporal.PlainDateTime(2000, 1, 1).toZonedDateTime(words);
  } catch {
    return null;
  }
  return { name: words, instant: (w) => inZone(w, words) };
}

const offsetSeconds = ([, sign, h, m]: RegExpExecArray): number =>
  (sign === "-" ? -1 : 1) * (Number(h) * 3600 + Number(m) * 60);

function inZone(w: Wall, zone: string): number | string {
  const plain = new Temporal.PlainDateTime(w.year, w.month, w.day, w.hour, w.minute, w.second);
  const [early, late] = (["earlier", "later"] as const).map((disambiguation) =>
    plain.toZonedDateTime(zone, { disambiguation }),
  );
  if (early!.epochMilliseconds === late!.epochMilliseconds) return early!.epochMilliseconds / 1000;
  return early!.toPlainDateTime().equals(plain)
    ? "stands twice when the clocks go back"
    : "does not exist: the clocks go forward over it";
}

/** Reads year, month, day and time of day; a zone written behind the time wins over the record's. */
export function readTime(text: string, zone: Zone): TimeRead {
  const found = SHAPE.exec(text.trim());
  if (!found) return { ok: false, why: "is not a time: write it as 2027-04-30 14:05" };
  const [year, month, day, hour, minute, second] = found.slice(1, 7).map((v) => Number(v ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const wall: Wall = { year, month, day, hour, minute, second };
  const plain = utc(wall);
  const isReal = new Date(plain * 1000).getUTCDate() === day && month <= 12 && hour < 24 && minute < 60;
  if (!isReal || second > 59) return { ok: false, why: "is no day or time of the calendar" };
  const own = found[8];
  if (own !== undefined) return { ok: true, t_s: ownZone(own, plain), zoned: true };
  const t = zone.instant(wall);
  return typeof t === "string" ? { ok: false, why: t } : { ok: true, t_s: t, zoned: false };
}

function ownZone(own: string, plain: number): number {
  const offset = OFFSET.exec(own);
  return offset ? plain - offsetSeconds(offset) : plain;
}
