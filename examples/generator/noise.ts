import { between, type Random } from "./random.ts";

/** A smooth surface without trend, about within -1 and 1. */
export type Surface = (x: number, y: number) => number;

/** Rises from 0 at `low` to 1 at `high` without a kink; may run downwards when `low` is above `high`. */
export function smoothStep(low: number, high: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - low) / (high - low)));
  return t * t * (3 - 2 * t);
}

/**
 * Random heights on a square lattice, blended smoothly between.
 *
 * size   extent covered from the origin, both ways  [m]
 * step   lattice spacing: the width of a hummock    [m]
 */
export function hummocks(random: Random, size: number, step: number): Surface {
  const n = Math.ceil(size / step) + 2;
  const heights = Float64Array.from({ length: n * n }, () => between(random, -1, 1));
  return (x, y) => {
    const [u, v] = [Math.min(n - 2, Math.max(0, x / step)), Math.min(n - 2, Math.max(0, y / step))];
    const [i, j] = [Math.floor(u), Math.floor(v)];
    const [a, b] = [smoothStep(0, 1, u - i), smoothStep(0, 1, v - j)];
    const at = (p: number, q: number): number => heights[Math.min(n - 1, q) * n + Math.min(n - 1, p)]!;
    const south = at(i, j) + (at(i + 1, j) - at(i, j)) * a;
    const north = at(i, j + 1) + (at(i + 1, j + 1) - at(i, j + 1)) * a;
    return south + (north - south) * b;
  };
}

/** A smooth wandering value along one direction, about within -1 and 1. */
export function wander(random: Random, length: number, step: number): (at: number) => number {
  const surface = hummocks(random, length, step);
  return (at) => surface(at, 0);
}
