import { contains, sides } from "./shapes.ts";
import type { AuditTerrain, Outline, Spot } from "./types.ts";

/** Spacing of the points at which ground under a foot is read [m]. */
const STEP_M = 0.05;

/**
 * Height between the four nearest cell centres, each weighted by the opposite rectangle [m on the site datum].
 * NaN outside the centres, and where a centre that has weight is without data.
 */
export function heightAt(t: AuditTerrain, x: number, y: number): number {
  const [u, v] = [(x - t.x0) / t.dx, (y - t.y0) / t.dy];
  if (!(u >= 0 && u <= t.cols - 1 && v >= 0 && v <= t.rows - 1)) return NaN;
  const [west, south] = [Math.floor(u), Math.floor(v)];
  const [east, north] = [u - west, v - south];
  let height = 0;
  for (const [column, share] of [
    [west, 1 - east],
    [west + 1, east],
  ] as const)
    for (const [row, part] of [
      [south, 1 - north],
      [south + 1, north],
    ] as const)
      if (share * part > 0) height += share * part * (t.values[row * t.cols + column] ?? NaN);
  return height;
}

export interface LowestGround {
  readonly z: number;
  /** Highest ground under the outline. */
  readonly high: number;
  readonly at: Spot;
  /** How many points were read. */
  readonly read: number;
}

/**
 * Lowest ground under an outline, read along its edge and across its inside every 5 cm and at every cell centre
 * inside. A surface blended from cell centres has no dip between these. `z` is NaN when any point is unknown.
 */
export function lowestUnder(t: AuditTerrain, ring: Outline): LowestGround {
  const spots = [...alongEdge(ring), ...gridInside(ring, STEP_M, STEP_M, 0, 0)];
  spots.push(...gridInside(ring, t.dx, t.dy, t.x0, t.y0));
  let [z, at]: [number, Spot] = [Infinity, spots[0]!];
  let high = -Infinity;
  for (const spot of spots) {
    const here = heightAt(t, spot[0], spot[1]);
    if (here < z || Number.isNaN(here)) [z, at] = [here, spot];
    if (Number.isNaN(here)) break;
    high = Math.max(high, here);
  }
  return { z, high, at, read: spots.length };
}

function alongEdge(ring: Outline): Spot[] {
  return sides(ring).flatMap(([a, b]) => {
    const parts = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP_M));
    return Array.from({ length: parts }, (_, i): Spot => {
      const k = i / parts;
      return [a[0] + (b[0] - a[0]) * k, a[1] + (b[1] - a[1]) * k];
    });
  });
}

/** Points of the lattice through (x0, y0) that lie inside the ring. */
function gridInside(ring: Outline, dx: number, dy: number, x0: number, y0: number): Spot[] {
  const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
  const found: Spot[] = [];
  for (let i = Math.ceil((Math.min(...xs) - x0) / dx); x0 + i * dx <= Math.max(...xs); i++)
    for (let j = Math.ceil((Math.min(...ys) - y0) / dy); y0 + j * dy <= Math.max(...ys); j++) {
      const spot: Spot = [x0 + i * dx, y0 + j * dy];
      if (contains([[ring]], spot)) found.push(spot);
    }
  return found;
}
