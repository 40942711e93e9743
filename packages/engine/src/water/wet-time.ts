import { DomainError } from "../units/index.ts";
import { timeOfLevel } from "./half-cosine.ts";
import { gapTime, stretches, type Series } from "./series.ts";

/** How long a height lies under water in a record. */
export interface WetTime {
  readonly wet_s: number;
  /** Time that the record covers, gaps left out. */
  readonly covered_s: number;
  readonly gap_s: number;
  /** wet over covered; null when nothing is covered. */
  readonly wet_share: number | null;
  /** The share as hours of a mean year; null when the record covers less than a year (see `coversYear`). */
  readonly hours_per_year: number | null;
  readonly longest_wet_s: number;
  readonly longest_dry_s: number;
  /** How often the water came over the height. */
  readonly floods: number;
}

/** One unbroken stretch of wet or dry. */
export interface Spell {
  readonly wet: boolean;
  readonly from_s: number;
  readonly to_s: number;
}

export const HOURS_PER_YEAR = 365.25 * 24;
/** A record speaks for a year when it runs over 364 days and no more than a twentieth of it is missing. */
const YEAR_S = 364 * 86_400;
const MOST_MISSING = 0.05;

/** Whether a record holds every season, so that its share may be told as hours of a year. */
export function coversYear(series: Series): boolean {
  const { t_s } = series;
  if (t_s.length < 2) return false;
  const span = t_s.at(-1)! - t_s[0]!;
  return span >= YEAR_S && gapTime(series) <= MOST_MISSING * span;
}

/**
 * The stretches in which a height is wet (water at or above it) and dry, in order.
 *
 * z_m  on the series' datum  [m]
 * Between readings the level runs straight; between turning points along half a cosine. A gap ends a stretch.
 */
export function* spells(series: Series, z_m: number): Generator<Spell, void> {
  if (!Number.isFinite(z_m)) throw new DomainError("height-not-finite", { z_m });
  const { t_s, z_m: z } = series;
  for (const [first, last] of stretches(series)) {
    let from = t_s[first]!;
    let wet = z[first]! >= z_m;
    for (let i = first; i < last; i++) {
      const [a, b] = [z[i]!, z[i + 1]!];
      if (b >= z_m === wet) continue;
      const at = t_s[i]! + crossing(series.kind, a, b, z_m) * (t_s[i + 1]! - t_s[i]!);
      if (at > from) yield { wet, from_s: from, to_s: at };
      from = at;
      wet = b >= z_m;
    }
    if (t_s[last]! > from) yield { wet, from_s: from, to_s: t_s[last]! };
  }
}

const crossing = (kind: Series["kind"], a: number, b: number, z: number): number =>
  kind === "readings" ? (z - a) / (b - a) : timeOfLevel(a, b, z);

/** Adds up how long a height lies under water, exactly for the line drawn between the series' points. */
export function wetTime(series: Series, z_m: number): WetTime {
  let [wet_s, covered_s, longest_wet_s, longest_dry_s, floods] = [0, 0, 0, 0, 0];
  let before: Spell | null = null;
  for (const spell of spells(series, z_m)) {
    const long = spell.to_s - spell.from_s;
    covered_s += long;
    if (spell.wet) {
      wet_s += long;
      longest_wet_s = Math.max(longest_wet_s, long);
      if (before !== null && !before.wet && before.to_s === spell.from_s) floods++;
    } else longest_dry_s = Math.max(longest_dry_s, long);
    before = spell;
  }
  const wet_share = covered_s > 0 ? wet_s / covered_s : null;
  const hours_per_year = wet_share !== null && coversYear(series) ? wet_share * HOURS_PER_YEAR : null;
  return {
    wet_s,
    covered_s,
    gap_s: gapTime(series),
    wet_share,
    hours_per_year,
    longest_wet_s,
    longest_dry_s,
    floods,
  };
}

/** Stretches of at least `least_s` in which a height stays dry. */
export const dryWindows = (series: Series, z_m: number, least_s: number): readonly Spell[] =>
  [...spells(series, z_m)].filter((s) => !s.wet && s.to_s - s.from_s >= least_s);
