import { stretches, type Series } from "./series.ts";
import { trueTurns, type TurningPoint } from "./true-turns.ts";

export type { TurningPoint };

/** Readings closer than this are smoothed over about an hour before turning points are sought [s]. */
const FINE_STEP_S = 15 * 60;
const SMOOTH_S = 3600;

/**
 * High and low waters of a series of readings: never across a gap. Fine readings are smoothed over an hour; a hourly
 * extreme is placed on the parabola through its three readings. Then the smallest rises are taken out until every
 * neighbour differs by 0.03 m and lies two hours apart. A series of turning points gives them back.
 */
export function turningPoints(series: Series): TurningPoint[] {
  if (series.kind === "high-low") return givenPoints(series);
  const points: TurningPoint[] = [];
  for (const [first, last] of stretches(series)) {
    if (last - first < 2) continue;
    const levels = smoothed(series, first, last);
    for (const turn of trueTurns(rawPoints(series, levels, first))) points.push(turn);
  }
  return points;
}

/** A table's own rows; one that stands alone between two gaps is neither high nor low. */
function givenPoints(series: Series): TurningPoint[] {
  const { t_s, z_m } = series;
  const points: TurningPoint[] = [];
  for (const [first, last] of stretches(series)) {
    if (last === first) continue;
    for (let i = first; i <= last; i++) {
      const high = i > first ? z_m[i]! > z_m[i - 1]! : z_m[i]! > z_m[i + 1]!;
      points.push({ t_s: t_s[i]!, z_m: z_m[i]!, high });
    }
  }
  return points;
}

/** Levels of one stretch, as a centred mean over an hour where readings are finer than a quarter of an hour. */
function smoothed({ z_m, step_s }: Series, first: number, last: number): Float64Array {
  const levels = z_m.slice(first, last + 1);
  if (step_s === null || step_s >= FINE_STEP_S) return levels;
  const half = Math.max(1, Math.round(SMOOTH_S / step_s / 2));
  const sums = new Float64Array(levels.length + 1);
  levels.forEach((z, i) => (sums[i + 1] = sums[i]! + z));
  return levels.map((_, i) => {
    const reach = Math.min(half, i, levels.length - 1 - i);
    return (sums[i + reach + 1]! - sums[i - reach]!) / (2 * reach + 1);
  });
}

/** Every turn of the line; a flat top counts once, at its middle. */
function rawPoints({ t_s, step_s }: Series, z: Float64Array, first: number): TurningPoint[] {
  const points: TurningPoint[] = [];
  let from = 0;
  for (let i = 1; i < z.length; i++) {
    if (z[i] === z[i - 1]) continue;
    const before = from > 0 ? Math.sign(z[from]! - z[from - 1]!) : 0;
    if (before !== 0 && before !== Math.sign(z[i]! - z[i - 1]!))
      points.push(turn(t_s, z, first, from, i - 1, before > 0, step_s));
    from = i;
  }
  return points;
}

function turn(
  t_s: Float64Array,
  z: Float64Array,
  first: number,
  from: number,
  to: number,
  high: boolean,
  step_s: number | null,
): TurningPoint {
  if (from !== to) return { t_s: (t_s[first + from]! + t_s[first + to]!) / 2, z_m: z[from]!, high };
  const [a, b, c] = [z[from - 1]!, z[from]!, z[from + 1]!];
  const bend = a - 2 * b + c;
  const shift = bend === 0 ? 0 : (a - c) / (2 * bend);
  return {
    t_s: t_s[first + from]! + shift * (step_s ?? 0),
    z_m: b - ((a - c) * shift) / 4,
    high,
  };
}
