import { Temporal } from "temporal-polyfill";

/** A time of day and a date as a file writes them. */
export interface Wall {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

/** Turns local times of one zone into instants; remembers what it worked out, for records have many rows a day. */
export interface Zone {
  readonly name: string;
  /** Seconds ahead of UTC all year; null for a place, whose clocks may change. */
  readonly offset_s: number | null;
  /** Seconds since 1970 of a wall-clock time, or why there is none: skipped or doubled at a clock change. */
  readonly instant: (wall: Wall) => number | ClockFault;
}

export type ClockFault = "doubled" | "skipped";

const DAY_S = 86_400;
const OFFSET = /^([+-])(\d{2}):?(\d{2})$/;

/**
 * Zones that are written behind a time, in hours ahead of UTC: US federal abbreviations and European ones. Those that
 * name two zones (BST, IST, CST in Asia) are left out, but for US Central.
 */
const WORDS: Readonly<Record<string, number>> = {
  UTC: 0,
  GMT: 0,
  Z: 0,
  EST: -5,
  EDT: -4,
  CST: -6,
  CDT: -5,
  MST: -7,
  MDT: -6,
  PST: -8,
  PDT: -7,
  AKST: -9,
  AKDT: -8,
  HST: -10,
  AST: -4,
  ADT: -3,
  WET: 0,
  WEST: 1,
  CET: 1,
  CEST: 2,
  EET: 2,
  EEST: 3,
};

/** Seconds since 1970 of a wall-clock time read as UTC; years below 100 are taken as written. */
export function wallSeconds(w: Wall): number {
  const date = new Date(0);
  date.setUTCFullYear(w.year, w.month - 1, w.day);
  return date.getTime() / 1000 + w.hour * 3600 + w.minute * 60 + w.second;
}

/** Seconds ahead of UTC of "UTC", "-05:00", "EST" and their like; null for anything else. */
export function fixedOffset(words: string): number | null {
  const hours = WORDS[words.toUpperCase()];
  if (hours !== undefined) return hours * 3600;
  const found = OFFSET.exec(words);
  if (!found) return null;
  const [h, m] = [Number(found[2]), Number(found[3])];
  return h > 14 || m > 59 ? null : (found[1] === "-" ? -1 : 1) * (h * 3600 + m * 60);
}

/** A zone by its name: "UTC", an offset such as "-05:00", or an IANA name; null when it is none of them. */
export function zoneOf(name: string): Zone | null {
  const words = name.trim();
  const offset_s = /^(UTC|GMT|Z)$/i.test(words) || OFFSET.test(words) ? fixedOffset(words) : null;
  if (offset_s !== null) return { name: words, offset_s, instant: (w) => wallSeconds(w) - offset_s };
  if (!/^[A-Za-z][\w+-]*(\/[\w+-]+)*$/.test(words)) return null;
  try {
    new Temporal.PlainDateTime(2000, 1, 1).toZonedDateTime(words);
  } catch {
    return null;
  }
  const days = new Map<number, number | null>();
  return { name: words, offset_s: null, instant: (w) => inPlace(w, words, days) };
}

/** Days on which the clocks stay have one offset, worked out once; on the others every time is asked for. */
function inPlace(w: Wall, zone: string, days: Map<number, number | null>): number | ClockFault {
  const plain = wallSeconds(w);
  const day = Math.floor(plain / DAY_S);
  const known = days.get(day);
  const offset = known === undefined ? offsetOfDay(day, zone) : known;
  days.set(day, offset);
  if (offset !== null) return plain - offset;
  const wall = new Temporal.PlainDateTime(w.year, w.month, w.day, w.hour, w.minute, w.second);
  const [early, late] = (["earlier", "later"] as const).map((disambiguation) =>
    wall.toZonedDateTime(zone, { disambiguation }),
  );
  if (early!.epochMilliseconds === late!.epochMilliseconds) return early!.epochMilliseconds / 1000;
  return early!.toPlainDateTime().equals(wall) ? "doubled" : "skipped";
}

/** Seconds ahead of UTC all through a local day, from an hour before it to an hour after; null when it changes. */
function offsetOfDay(day: number, zone: string): number | null {
  const at = (s: number): number =>
    Temporal.Instant.fromEpochMilliseconds(s * 1000).toZonedDateTimeISO(zone).offsetNanoseconds / 1e9;
  const middle = at(day * DAY_S + DAY_S / 2);
  const [from, to] = [day * DAY_S - middle - 3 * 3600, (day + 1) * DAY_S - middle + 3 * 3600];
  return at(from) === middle && at(to) === middle ? middle : null;
}
