import type { Raster } from "../site/index.ts";
import { DomainError } from "../units/index.ts";

/**
 * The kit's lattice on the site: square, one step wide, turned to a heading, with the start on one of its points.
 * Direction 0 runs along the heading, 1 to its right, 2 back, 3 to its left.
 */
export interface Lattice {
  readonly heading_deg: number;
  readonly step: number;
  readonly nx: number;
  readonly ny: number;
  /** Lattice indices of the start, and its place [m]. */
  readonly si: number;
  readonly sj: number;
  readonly x: number;
  readonly y: number;
  /** Unit vectors of direction 0 and direction 1. */
  readonly e0: readonly [number, number];
  readonly e1: readonly [number, number];
}

export const DX = [1, 0, -1, 0] as const;
export const DY = [0, 1, 0, -1] as const;
const MOST_POINTS = 40_000_000;

/** Lays the lattice over the whole terrain. Throws `DomainError` when it would hold more points than memory allows. */
export function layLattice(
  terrain: Raster,
  step: number,
  heading_deg: number,
  x: number,
  y: number,
): Lattice {
  const h = (heading_deg * Math.PI) / 180;
  const e0 = [Math.sin(h), Math.cos(h)] as const;
  const e1 = [Math.cos(h), -Math.sin(h)] as const;
  const right = terrain.x0 + (terrain.cols - 1) * terrain.dx;
  const top = terrain.y0 + (terrain.rows - 1) * terrain.dy;
  const corners = [
    [terrain.x0, terrain.y0],
    [right, terrain.y0],
    [terrain.x0, top],
    [right, top],
  ] as const;
  const u = corners.map(([cx, cy]) => ((cx - x) * e0[0] + (cy - y) * e0[1]) / step);
  const v = corners.map(([cx, cy]) => ((cx - x) * e1[0] + (cy - y) * e1[1]) / step);
  const si = Math.floor(-Math.min(0, ...u));
  const sj = Math.floor(-Math.min(0, ...v));
  const nx = Math.floor(Math.max(0, ...u)) + si + 1;
  const ny = Math.floor(Math.max(0, ...v)) + sj + 1;
  if (nx * ny > MOST_POINTS)
    throw new DomainError("site-too-large-for-lattice", { points: nx * ny, most: MOST_POINTS });
  return { heading_deg, step, nx, ny, si, sj, x, y, e0, e1 };
}

/** Place of a lattice point [m]; halves of a step are allowed. */
export function placeOf(l: Lattice, i: number, j: number): [number, number] {
  const a = (i - l.si) * l.step;
  const b = (j - l.sj) * l.step;
  return [l.x + a * l.e0[0] + b * l.e1[0], l.y + a * l.e0[1] + b * l.e1[1]];
}

/** Lattice coordinates of a place, not rounded. */
export function latticeOf(l: Lattice, x: number, y: number): [number, number] {
  const dx = x - l.x;
  const dy = y - l.y;
  return [(dx * l.e0[0] + dy * l.e0[1]) / l.step + l.si, (dx * l.e1[0] + dy * l.e1[1]) / l.step + l.sj];
}

/** Compass heading of a direction 0..3, in [0, 360). */
export const headingOf = (l: Lattice, direction: number): number => (l.heading_deg + 90 * direction) % 360;
