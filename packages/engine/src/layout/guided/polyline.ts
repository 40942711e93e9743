import type { Spot } from "./guide.ts";

export interface Near {
  readonly distance_m: number;
  readonly along_m: number;
  readonly at: Spot;
}

export const between = (a: Spot, b: Spot): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

export const lengthOf = (points: readonly Spot[]): number =>
  points.reduce((sum, p, n) => sum + (n === 0 ? 0 : between(points[n - 1]!, p)), 0);

/** The place on a polyline nearest to a point, the first of equals; a polyline of one point is that point. */
export function nearestOn(points: readonly Spot[], [x, y]: Spot): Near {
  let best: Near = { distance_m: between(points[0]!, [x, y]), along_m: 0, at: points[0]! };
  let along = 0;
  for (let n = 1; n < points.length; n++) {
    const [a, b] = [points[n - 1]!, points[n]!];
    const long = between(a, b);
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const t = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * ex + (y - a[1]) * ey) / long ** 2));
    const at: Spot = [a[0] + t * ex, a[1] + t * ey];
    const distance_m = between(at, [x, y]);
    if (distance_m < best.distance_m - 1e-12) best = { distance_m, along_m: along + t * long, at };
    along += long;
  }
  return best;
}

/** Points along a polyline, not more than `spacing_m` apart, with the way to each; both ends are among them. */
export function readAlong(points: readonly Spot[], spacing_m: number): { at: Spot; along_m: number }[] {
  const read: { at: Spot; along_m: number }[] = [{ at: points[0]!, along_m: 0 }];
  for (let n = 1; n < points.length; n++) {
    const [a, b] = [points[n - 1]!, points[n]!];
    const long = between(a, b);
    const before = read.at(-1)!.along_m;
    const pieces = Math.max(1, Math.ceil(long / spacing_m));
    for (let k = 1; k <= pieces; k++)
      read.push({
        at: [a[0] + ((b[0] - a[0]) * k) / pieces, a[1] + ((b[1] - a[1]) * k) / pieces],
        along_m: before + (long * k) / pieces,
      });
  }
  return read;
}

/** The polyline without its points that repeat the one before. */
export const withoutRepeats = (points: readonly Spot[]): Spot[] =>
  points.filter((p, n) => n === 0 || between(points[n - 1]!, p) > 1e-9);

/** The polyline up to where it last enters a circle around its end; all of it when its end lies outside. */
export function endOutside(points: readonly Spot[], [cx, cy]: Spot, radius: number): Spot[] {
  const isIn = ([x, y]: Spot): boolean => Math.hypot(x - cx, y - cy) < radius;
  if (!isIn(points.at(-1)!)) return [...points];
  let last = points.length - 1;
  while (last > 0 && isIn(points[last - 1]!)) last--;
  if (last === 0) return [points[0]!];
  const [a, b] = [points[last - 1]!, points[last]!];
  let [out, into] = [0, 1];
  for (let k = 0; k < 50; k++) {
    const t = (out + into) / 2;
    if (isIn([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])) into = t;
    else out = t;
  }
  return [...points.slice(0, last), [a[0] + out * (b[0] - a[0]), a[1] + out * (b[1] - a[1])]];
}
