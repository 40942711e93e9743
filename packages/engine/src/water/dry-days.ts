import { defineConstant } from "../formula/index.ts";
import { coveredTime, isoMinute, stretches, type Series } from "./series.ts";
import { turningPoints } from "./turning-points.ts";
import { spells, type Spell } from "./wet-time.ts";

/** How long before high water people must be back past the last creek. */
export const backBefore = defineConstant(
  "water.back-before",
  "To be back past the last creek before high water",
  "t_b",
  4 * 3600,
  "s",
  {
    id: "lifeboat-marsh",
    title:
      "Lifeboat officer on marshes of north Norfolk, as quoted by a broadcaster (honorok.com c7871lzn32lo)",
    at: "be back past the last creek four hours before high water",
    status: "seen",
  },
  "4 * 3600",
);

/** A stretch of one day in which the whole way to a station lies dry. ISO times in UTC. */
export interface DryWindow {
  readonly from: string;
  readonly to: string;
  /** What ends it: the water, the day while the ground stays dry, or the record (a gap, or its end). */
  readonly ends: "flood" | "midnight" | "record";
  /** Four hours before the high water that ends it, where that lies before its end; null = the window's end holds. */
  readonly back_by: string | null;
  /** From its begin to the time to be back; 0 = by the rule nobody sets out [h]. */
  readonly safe_h: number;
}

export interface StationDay {
  /** ISO day in UTC. */
  readonly day: string;
  /** Hours for which the station's own ground lies dry. */
  readonly dry_h: number;
  /** Hours of the day that the record covers. */
  readonly covered_h: number;
  readonly windows: readonly DryWindow[];
}

export interface StationDays {
  readonly station: string;
  readonly ground_m: number;
  /** Lowest ground on the way from the start to the station, its own included [m]. */
  readonly way_m: number;
  readonly days: readonly StationDay[];
}

export interface StationGround {
  readonly id: string;
  readonly ground_m: number;
  readonly way_m: number;
}

const DAY_S = 86_400;
/** Read before and after the days asked for, so that the next high water is known [s]. */
const AROUND_S = 2 * DAY_S;
/** A list of more days is read by nobody, and a station's days are as many as its windows twice over. */
export const MOST_DAYS = 31;

/**
 * Dry hours and safe windows of every station, day by day in UTC.
 *
 * from, to  ISO days, both inclusive; at most `MOST_DAYS` are told
 * Days of which the record covers nothing are left out. Water at the height of the ground counts as wet. A window
 * needs the lowest ground on the way dry, and ends `backBefore` before the next high water, or before the record ends,
 * whichever comes first.
 */
export function dryDays(
  series: Series,
  stations: readonly StationGround[],
  from: string,
  to: string,
): StationDays[] {
  const first = Date.parse(from) / 1000;
  const count = Math.min(MOST_DAYS, Math.round((Date.parse(to) / 1000 - first) / DAY_S) + 1);
  const part = cut(series, first - AROUND_S, first + count * DAY_S + AROUND_S);
  if (part === null || coveredTime(part) <= 0) return stations.map((s) => daysOf(s, []));
  const highs = turningPoints(part).filter((p) => p.high);
  const covers = [...stretches(part)].map(([a, b]) => [part.t_s[a]!, part.t_s[b]!] as const);
  const starts = Array.from({ length: count }, (_, i) => first + i * DAY_S);
  const known = starts
    .map((day_s) => ({ day_s, covered_h: within(covers, day_s) / 3600 }))
    .filter((d) => d.covered_h > 0);
  return stations.map((station) => {
    const dry = dryOf(part, station.ground_m);
    const open = station.way_m === station.ground_m ? dry : dryOf(part, station.way_m);
    return daysOf(
      station,
      known.map(({ day_s, covered_h }) => ({
        day: isoMinute(day_s).slice(0, 10),
        dry_h:
          within(
            dry.map((s) => [s.from_s, s.to_s] as const),
            day_s,
          ) / 3600,
        covered_h,
        windows: open.flatMap((s) => windowOf(s, day_s, highs, covers)),
      })),
    );
  });
}

const daysOf = ({ id, ground_m, way_m }: StationGround, days: readonly StationDay[]): StationDays => ({
  station: id,
  ground_m,
  way_m,
  days,
});

const dryOf = (series: Series, z_m: number): Spell[] => [...spells(series, z_m)].filter((s) => !s.wet);

/** Seconds of a day that spans cover. */
const within = (spans: readonly (readonly [number, number])[], day_s: number): number =>
  spans.reduce((sum, [a, b]) => sum + Math.max(0, Math.min(b, day_s + DAY_S) - Math.max(a, day_s)), 0);

function windowOf(
  spell: Spell,
  day_s: number,
  highs: readonly { readonly t_s: number }[],
  covers: readonly (readonly [number, number])[],
): DryWindow[] {
  const [from, to] = [Math.max(spell.from_s, day_s), Math.min(spell.to_s, day_s + DAY_S)];
  if (to <= from) return [];
  const isRecordsEnd = covers.some(([, b]) => b === spell.to_s);
  const known = covers.find(([a, b]) => a <= spell.to_s && spell.to_s < b)?.[1] ?? spell.to_s;
  const high = highs.find((p) => p.t_s >= spell.to_s && p.t_s <= known)?.t_s ?? spell.to_s;
  const cutoff = high - backBefore({});
  return [
    {
      from: isoMinute(from),
      to: isoMinute(to),
      ends: spell.to_s > day_s + DAY_S ? "midnight" : isRecordsEnd ? "record" : "flood",
      back_by: cutoff < to && cutoff > from ? isoMinute(cutoff) : null,
      safe_h: Math.max(0, Math.min(to, cutoff) - from) / 3600,
    },
  ];
}

/** The part of a series between two times, with the level before and after; null when it holds nothing there. */
function cut(series: Series, from_s: number, to_s: number): Series | null {
  const { t_s, z_m } = series;
  const first = t_s.findIndex((t) => t >= from_s);
  if (first < 0) return null;
  const after = t_s.findIndex((t) => t > to_s);
  const [a, b] = [Math.max(0, first - 1), after < 0 ? t_s.length : after + 1];
  const gaps = series.gaps.filter((g) => g.from_s >= t_s[a]! && g.to_s <= t_s[b - 1]!);
  return { ...series, t_s: t_s.subarray(a, b), z_m: z_m.subarray(a, b), gaps };
}
