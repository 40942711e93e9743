import type { Polygons, Ring } from "./types.ts";

export type Point = readonly [number, number];

/** Signed area of a ring, positive when it runs counter-clockwise [m2]. */
export function ringArea(ring: Ring): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++)
    twice += ring[j]![0] * ring[i]![1] - ring[i]![0] * ring[j]![1];
  return twice / 2;
}

/** Area of polygons less their holes [m2]. */
export function polygonsArea(polygons: Polygons): number {
  let sum = 0;
  for (const rings of polygons)
    rings.forEach((ring, i) => (sum += (i === 0 ? 1 : -1) * Math.abs(ringArea(ring))));
  return sum;
}

/** Even-odd rule over all rings, so a hole is outside. */
export function isInside(polygons: Polygons, x: number, y: number): boolean {
  let inside = false;
  for (const rings of polygons)
    for (const ring of rings)
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        const [xi, yi] = ring[i]!;
        const [xj, yj] = ring[j]!;
        if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
      }
  return inside;
}

/** Where a line at height y enters and leaves the polygons, west to east: inside `isInside` between each pair [m]. */
export function rowCrossings(polygons: Polygons, y: number): number[] {
  const crossings: number[] = [];
  for (const rings of polygons)
    for (const ring of rings)
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        const [xi, yi] = ring[i]!;
        const [xj, yj] = ring[j]!;
        if (yi > y !== yj > y) crossings.push(((xj - xi) * (y - yi)) / (yj - yi) + xi);
      }
  return crossings.toSorted((a, b) => a - b);
}

/** Distance from a point to a segment [m]. */
export function segmentDistance(x: number, y: number, a: Point, b: Point): number {
  const ex = b[0] - a[0];
  const ey = b[1] - a[1];
  const length2 = ex * ex + ey * ey;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * ex + (y - a[1]) * ey) / length2));
  return Math.hypot(x - a[0] - t * ex, y - a[1] - t * ey);
}

/** Distance to the nearest edge of the polygons; negative inside [m]. Infinity for none. */
export function signedDistance(polygons: Polygons, x: number, y: number): number {
  let least = Infinity;
  for (const rings of polygons)
    for (const ring of rings)
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++)
        least = Math.min(least, segmentDistance(x, y, ring[j]!, ring[i]!));
  return isInside(polygons, x, y) ? -least : least;
}

/** West, south, east, north [m]; null for no polygon. */
export function bounds(polygons: Polygons): readonly [number, number, number, number] | null {
  let w = Infinity;
  let s = Infinity;
  let e = -Infinity;
  let n = -Infinity;
  for (const rings of polygons)
    for (const [x, y] of rings[0] ?? []) {
      w = Math.min(w, x);
      s = Math.min(s, y);
      e = Math.max(e, x);
      n = Math.max(n, y);
    }
  return w <= e ? [w, s, e, n] : null;
}

/**
 * A rectangle laid along a heading.
 *
 * x, y     centre [m]
 * heading  degrees clockwise from grid north
 * along    size along the heading, across: size across it [m]
 */
export function rectangle(x: number, y: number, heading: number, along: number, across: number): Ring {
  const h = (heading * Math.PI) / 180;
  const ax = (Math.sin(h) * along) / 2;
  const ay = (Math.cos(h) * along) / 2;
  const cx = (Math.cos(h) * across) / 2;
  const cy = (-Math.sin(h) * across) / 2;
  return [
    [x - ax - cx, y - ay - cy],
    [x - ax + cx, y - ay + cy],
    [x + ax + cx, y + ay + cy],
    [x + ax - cx, y + ay - cy],
  ];
}

/** True when two convex rings share more than `slack` of depth: separating axis test. */
export function convexOverlap(a: Ring, b: Ring, slack = 1e-6): boolean {
  for (const [p, q] of [
    [a, b],
    [b, a],
  ] as const)
    for (let i = 0, j = p.length - 1; i < p.length; j = i++) {
      const nx = p[i]![1] - p[j]![1];
      const ny = p[j]![0] - p[i]![0];
      const norm = Math.hypot(nx, ny);
      if (norm === 0) continue;
      const [aLow, aHigh] = span(p, nx / norm, ny / norm);
      const [bLow, bHigh] = span(q, nx / norm, ny / norm);
      if (Math.min(aHigh, bHigh) - Math.max(aLow, bLow) <= slack) return false;
    }
  return true;
}

function span(ring: Ring, nx: number, ny: number): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const [x, y] of ring) {
    const d = x * nx + y * ny;
    low = Math.min(low, d);
    high = Math.max(high, d);
  }
  return [low, high];
}
