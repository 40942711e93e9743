import type { Areas, Outline, Spot } from "./types.ts";

/** Pairs of neighbouring corners; a repeated closing corner gives a pair of no length and is left out. */
export function sides(ring: Outline): (readonly [Spot, Spot])[] {
  const pairs: (readonly [Spot, Spot])[] = [];
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
    if (a[0] !== b[0] || a[1] !== b[1]) pairs.push([a, b]);
  }
  return pairs;
}

/** Twice the signed area of the triangle a, b, p: positive when p lies to the left of a to b. */
const turn = (a: Spot, b: Spot, p: Spot): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** Winding number of the ring around the point; zero is outside. */
function winding(ring: Outline, p: Spot): number {
  let turns = 0;
  for (const [a, b] of sides(ring)) {
    if (a[1] <= p[1] && b[1] > p[1] && turn(a, b, p) > 0) turns++;
    else if (a[1] > p[1] && b[1] <= p[1] && turn(a, b, p) < 0) turns--;
  }
  return turns;
}

/** Whether the point lies in any polygon and in none of its holes. */
export const contains = (areas: Areas, p: Spot): boolean =>
  areas.some(
    ([outer, ...holes]) =>
      outer !== undefined && winding(outer, p) !== 0 && holes.every((hole) => winding(hole, p) === 0),
  );

const between = (a: number, b: number, v: number): boolean => v >= Math.min(a, b) && v <= Math.max(a, b);

/** Whether two segments share a point; touching at an end or along a line counts. */
export function segmentsMeet(a: Spot, b: Spot, c: Spot, d: Spot): boolean {
  const [c1, d1, a2, b2] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (c1 > 0 !== d1 > 0 && c1 !== 0 && d1 !== 0 && a2 > 0 !== b2 > 0 && a2 !== 0 && b2 !== 0) return true;
  const on = (p: Spot, q: Spot, r: Spot, t: number): boolean =>
    t === 0 && between(p[0], q[0], r[0]) && between(p[1], q[1], r[1]);
  return on(a, b, c, c1) || on(a, b, d, d1) || on(c, d, a, a2) || on(c, d, b, b2);
}

/** West, south, east, north of a ring. */
function box(ring: Outline): readonly [number, number, number, number] {
  let [w, s, e, n] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of ring) [w, s, e, n] = [Math.min(w, x), Math.min(s, y), Math.max(e, x), Math.max(n, y)];
  return [w, s, e, n];
}

function boxesMeet(a: Outline, b: Outline): boolean {
  const [w, s, e, n] = box(a);
  const [west, south, east, north] = box(b);
  return w <= east && west <= e && s <= north && south <= n;
}

/** Whether a ring and an area share any point: crossing or touching edges, one inside the other, holes respected. */
export function touches(ring: Outline, areas: Areas): boolean {
  const near = areas.filter(([outer]) => outer !== undefined && boxesMeet(ring, outer));
  if (near.length === 0) return false;
  const own = sides(ring);
  for (const other of near.flat())
    for (const [c, d] of sides(other)) {
      if (!boxesMeet(ring, [c, d])) continue;
      if (winding(ring, c) !== 0 || own.some(([a, b]) => segmentsMeet(a, b, c, d))) return true;
    }
  return ring.some((p) => contains(near, p));
}

/** Middle of the corners, the closing one counted once. */
export function middle(ring: Outline): Spot {
  const corners = sides(ring).map(([a]) => a);
  const sum = (k: 0 | 1): number => corners.reduce((t, p) => t + p[k], 0);
  return [sum(0) / corners.length, sum(1) / corners.length];
}

export function area(ring: Outline): number {
  return Math.abs(sides(ring).reduce((t, [a, b]) => t + a[0] * b[1] - b[0] * a[1], 0)) / 2;
}

/** A convex ring drawn in towards its middle until its sides have moved by about `by` [m]; may shrink to a point. */
export function drawnIn(ring: Outline, by: number): Outline {
  const m = middle(ring);
  const inner = Math.min(...sides(ring).map(([a, b]) => distanceToSegment(m, a, b)));
  const keep = Math.max(0, 1 - by / inner);
  return ring.map((p) => [m[0] + (p[0] - m[0]) * keep, m[1] + (p[1] - m[1]) * keep]);
}

export function distanceToSegment(p: Spot, a: Spot, b: Spot): number {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const length2 = ux * ux + uy * uy;
  const t = length2 > 0 ? ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / length2 : 0;
  const k = t < 0 ? 0 : t > 1 ? 1 : t;
  return Math.hypot(p[0] - a[0] - k * ux, p[1] - a[1] - k * uy);
}

/** Distance from a point to a filled ring; zero inside [m]. */
export const distanceToRing = (p: Spot, ring: Outline): number =>
  winding(ring, p) !== 0 ? 0 : Math.min(...sides(ring).map(([a, b]) => distanceToSegment(p, a, b)));

/** Distance between the edges of two rings that do not cross [m]. */
export function edgesApart(a: Outline, b: Outline): number {
  const near = (points: Outline, ring: Outline): number =>
    Math.min(...points.flatMap((p) => sides(ring).map(([c, d]) => distanceToSegment(p, c, d))));
  return Math.min(near(a, b), near(b, a));
}

/** How far a ring reaches along a direction (a unit vector): least and greatest. */
export function reachAlong(ring: Outline, ux: number, uy: number): readonly [number, number] {
  const values = ring.map((p) => p[0] * ux + p[1] * uy);
  return [Math.min(...values), Math.max(...values)];
}

/** How deep two convex rings run into each other: the least shift that would part them; zero or less when apart [m]. */
export function overlapDepth(a: Outline, b: Outline): number {
  let least = Infinity;
  for (const [p, q] of [...sides(a), ...sides(b)]) {
    const norm = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const [ux, uy] = [(q[1] - p[1]) / norm, (p[0] - q[0]) / norm];
    const [a0, a1] = reachAlong(a, ux, uy);
    const [b0, b1] = reachAlong(b, ux, uy);
    least = Math.min(least, Math.min(a1 - b0, b1 - a0));
    if (least <= 0) return least;
  }
  return least;
}

/** The part of a convex ring inside another convex ring; empty when they are apart. */
export function clipped(ring: Outline, by: Outline): Outline {
  const m = middle(by);
  let rest: Spot[] = [...ring];
  for (const [a, b] of sides(by)) {
    const sign = turn(a, b, m) >= 0 ? 1 : -1;
    rest = cutBy(rest, (p) => sign * turn(a, b, p));
  }
  return rest;
}

function cutBy(ring: readonly Spot[], inside: (p: Spot) => number): Spot[] {
  const kept: Spot[] = [];
  for (let i = 0; i < ring.length; i++) {
    const [p, q] = [ring[i]!, ring[(i + 1) % ring.length]!];
    const [u, v] = [inside(p), inside(q)];
    if (u >= 0) kept.push(p);
    if (u > 0 !== v > 0 && u !== v) {
      const t = u / (u - v);
      if (t > 0 && t < 1) kept.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
    }
  }
  return kept;
}

/**
 * Stretches of the segment a to b that lie in the areas, as shares of its length, from a.
 * Stretches that reach an end of the segment begin at 0 or end at 1.
 */
export function stretchesInside(a: Spot, b: Spot, areas: Areas): (readonly [number, number])[] {
  const cuts = [0, 1];
  for (const rings of areas)
    for (const ring of rings)
      for (const [c, d] of sides(ring)) {
        const [u, v] = [turn(a, b, c), turn(a, b, d)];
        const [p, q] = [turn(c, d, a), turn(c, d, b)];
        if (u > 0 !== v > 0 && p !== q && p / (p - q) > 0 && p / (p - q) < 1) cuts.push(p / (p - q));
      }
  cuts.sort((s, t) => s - t);
  const found: [number, number][] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [s, t] = [cuts[i]!, cuts[i + 1]!];
    const half: Spot = [a[0] + ((b[0] - a[0]) * (s + t)) / 2, a[1] + ((b[1] - a[1]) * (s + t)) / 2];
    if (t <= s || !contains(areas, half)) continue;
    const last = found.at(-1);
    if (last && last[1] === s) last[1] = t;
    else found.push([s, t]);
  }
  return found;
}
