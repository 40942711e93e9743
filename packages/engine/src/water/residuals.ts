import { halfCosine } from "./half-cosine.ts";
import { isoMinute, stretches, type Series } from "./series.ts";
import { metres, qty } from "../units/index.ts";

/** Recorded less predicted level, wherever both are known: what wind, rain, rivers and the gauge's place make of it. */
export interface Residuals {
  /** Times compared. */
  readonly n: number;
  /** ISO times in UTC, first and last compared. */
  readonly from: string;
  readonly to: string;
  readonly mean_m: number;
  /** About the mean, divisor n - 1. */
  readonly sd_m: number;
  /** 95 of 100 residuals lie between these two. */
  readonly low_m: number;
  readonly high_m: number;
  /** Largest rise over the prediction, and when. */
  readonly most_m: number;
  readonly most_at: string;
}

/** Fewer tell no spread. */
const LEAST_TIMES = 24;

/**
 * Residuals of a record against a prediction, at the times of the record; nothing is read across a gap of either.
 * Both on one datum [m]. Null when fewer than 24 times are common to both. Quantiles are those of the sorted
 * residuals, straight between neighbours.
 */
export function residualsOf(recorded: Series, predicted: Series): Residuals | null {
  const at = levelsAt(predicted);
  const t_s: number[] = [];
  const values: number[] = [];
  recorded.t_s.forEach((t, i) => {
    const z = at(t);
    if (z === null) return;
    t_s.push(t);
    values.push(recorded.z_m[i]! - z);
  });
  const n = values.length;
  if (n < LEAST_TIMES) return null;
  const mean = values.reduce((a, b) => a + b, 0) / n;
  const sorted = Float64Array.from(values).sort();
  const most = values.reduce((best, v, i) => (v > values[best]! ? i : best), 0);
  return {
    n,
    from: isoMinute(t_s[0]!),
    to: isoMinute(t_s.at(-1)!),
    mean_m: mean,
    sd_m: Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (n - 1)),
    low_m: quantile(sorted, 0.025),
    high_m: quantile(sorted, 0.975),
    most_m: values[most]!,
    most_at: isoMinute(t_s[most]!),
  };
}

function quantile(sorted: Float64Array, p: number): number {
  const place = p * (sorted.length - 1);
  const low = Math.floor(place);
  const next = sorted[Math.min(low + 1, sorted.length - 1)]!;
  return sorted[low]! + (next - sorted[low]!) * (place - low);
}

/** Level of a series at times that ascend from call to call; null before, after and in its gaps. */
function levelsAt(series: Series): (t_s: number) => number | null {
  const { t_s, z_m, kind } = series;
  const pieces = [...stretches(series)];
  let piece = 0;
  let i = 0;
  return (t) => {
    while (piece < pieces.length && t > t_s[pieces[piece]![1]]!) piece++;
    const [first, last] = pieces[piece] ?? [0, -1];
    if (last < 0 || t < t_s[first]!) return null;
    i = Math.max(i, first);
    while (i < last && t_s[i + 1]! < t) i++;
    if (t === t_s[i]) return z_m[i]!;
    const s = (t - t_s[i]!) / (t_s[i + 1]! - t_s[i]!);
    if (kind === "readings") return z_m[i]! + (z_m[i + 1]! - z_m[i]!) * s;
    return halfCosine({ a: metres(z_m[i]!), b: metres(z_m[i + 1]!), s: qty(s, "1") });
  };
}
