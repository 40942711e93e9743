import { longestStep, type Series } from "./series.ts";

export interface TurningPoint {
  readonly t_s: number;
  readonly z_m: number;
  readonly high: boolean;
}

/** Neighbours count as high and low only when they differ by this much [m], and lie this far apart [s] (CO-OPS practice, from memory). */
const LEAST_RISE_M = 0.03;
const LEAST_APART_S = 2 * 3600;
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
  for (const [first, last] of runs(series)) {
    const levels = smoothed(series, first, last);
    points.push(...cleaned(rawPoints(series, levels, first)));
  }
  return points;
}

function givenPoints({ t_s, z_m }: Series): TurningPoint[] {
  return Array.from(t_s, (t, i): TurningPoint => {
    const other = i > 0 ? z_m[i - 1]! : (z_m[1] ?? -Infinity);
    return { t_s: t, z_m: z_m[i]!, high: z_m[i]! > other };
  });
}

/** First and last index of each stretch without a gap. */
function runs(series: Series): [number, number][] {
  const most = longestStep(series);
  const found: [number, number][] = [];
  let first = 0;
  for (let i = 1; i <= series.t_s.length; i++)
    if (i === series.t_s.length || series.t_s[i]! - series.t_s[i - 1]! > most) {
      if (i - first >= 3) found.push([first, i - 1]);
      first = i;
    }
  return found;
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

/** Takes out the smallest rise until every neighbour is a real high or low. */
function cleaned(points: readonly TurningPoint[]): TurningPoint[] {
  const list = [...points];
  for (;;) {
    let worst = -1;
    let rise = Infinity;
    for (let i = 0; i + 1 < list.length; i++) {
      const [p, q] = [list[i]!, list[i + 1]!];
      const r = Math.abs(q.z_m - p.z_m);
      if ((r < LEAST_RISE_M || q.t_s - p.t_s < LEAST_APART_S) && r < rise) [worst, rise] = [i, r];
    }
    if (worst < 0) return list;
    drop(list, worst);
  }
}

/** A pair in the middle goes whole; at an end only the outer point, for the other may be a true turn. */
function drop(list: TurningPoint[], at: number): void {
  if (at === 0) list.splice(0, 1);
  else if (at + 2 === list.length) list.pop();
  else {
    list.splice(at, 2);
    const [p, q] = [list[at - 1]!, list[at]!];
    if (p.high === q.high) list.splice(at - 1, 2, p.high === p.z_m >= q.z_m ? p : q);
  }
}
