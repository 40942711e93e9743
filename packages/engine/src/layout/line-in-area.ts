import type { Point, Polygons } from "../site/index.ts";

/** A stretch of a line, by the distances at which it begins and ends [m], and the place half way along it. */
export interface Stretch {
  readonly from_m: number;
  readonly to_m: number;
  readonly middle: Point;
}

/** A line cut wherever it crosses an edge of any of some areas: each stretch lies wholly in or out of every area. */
export function cutAlong(a: Point, b: Point, areas: readonly Polygons[]): Stretch[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const cuts = [0, 1];
  for (const ring of areas.flat(2))
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const t = crossingOf(a, b, ring[j]!, ring[i]!);
      if (t !== null) cuts.push(t);
    }
  cuts.sort((s, t) => s - t);
  return cuts.slice(1).flatMap((to, i): Stretch[] => {
    const from = cuts[i]!;
    if (to - from < 1e-12) return [];
    const half = (from + to) / 2;
    const middle = [a[0] + (b[0] - a[0]) * half, a[1] + (b[1] - a[1]) * half] as const;
    return [{ from_m: from * length, to_m: to * length, middle }];
  });
}

/** Share of the way from a to b at which it crosses the edge from c to d; null when it does not. */
function crossingOf(a: Point, b: Point, c: Point, d: Point): number | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const [ex, ey] = [d[0] - c[0], d[1] - c[1]];
  const cross = dx * ey - dy * ex;
  if (cross === 0) return null;
  const t = ((c[0] - a[0]) * ey - (c[1] - a[1]) * ex) / cross;
  const s = ((c[0] - a[0]) * dy - (c[1] - a[1]) * dx) / cross;
  return t > 0 && t < 1 && s >= 0 && s < 1 ? t : null;
}
