import { DomainError } from "../units/index.ts";
import { timeOfLevel } from "./half-cosine.ts";
import { longestStep, type Series } from "./series.ts";

/** How long a height lies under water in a record. */
export interface WetTime {
  readonly wet_s: number;
  /** Time that the record covers, gaps left out. */
  readonly covered_s: number;
  /** wet over covered; null when nothing is covered. */
  readonly wet_share: number | null;
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

/**
 * The stretches in which a height is wet (water at or above it) and dry, in order.
 *
 * z_m  on the series' datum  [m]
 * Between readings the level runs straight; between turning points along half a cosine. A gap ends a stretch.
 */
export function* spells(series: Series, z_m: number): Generator<Spell, void> {
  if (!Number.isFinite(z_m)) throw new DomainError("height-not-finite", { z_m });
  const { t_s, z_m: z } = series;
  const most = longestStep(series);
  let from = 0;
  let wet = false;
  for (let i = 0; i + 1 < t_s.length; i++) {
    const [t0, t1, a, b] = [t_s[i]!, t_s[i + 1]!, z[i]!, z[i + 1]!];
    if (t1 - t0 > most) continue;
    if (i === 0 || t0 - t_s[i - 1]! > most) {
      from = t0;
      wet = a >= z_m;
    }
    if (b >= z_m !== wet) {
      const at = t0 + crossing(series.kind, a, b, z_m) * (t1 - t0);
      if (at > from) yield { wet, from_s: from, to_s: at };
      from = at;
      wet = b >= z_m;
    }
    const isLast = i + 2 >= t_s.length || t_s[i + 2]! - t1 > most;
    if (isLast && t1 > from) yield { wet, from_s: from, to_s: t1 };
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
  return { wet_s, covered_s, wet_share, longest_wet_s, longest_dry_s, floods };
}

/** Stretches of at least `least_s` in which a height stays dry. */
export const dryWindows = (series: Series, z_m: number, least_s: number): readonly Spell[] =>
  [...spells(series, z_m)].filter((s) => !s.wet && s.to_s - s.from_s >= least_s);
