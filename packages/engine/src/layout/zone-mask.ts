import type { Polygons } from "../site/index.ts";
import { latticeOf, type Lattice } from "./lattice.ts";

export const INSIDE = 1;
export const NEAR = 2;

/**
 * Marks every lattice point that lies inside the polygons (bit 1) or within `radius` of an edge (bit 2).
 * The near mark errs to the wide side by up to a quarter of a step: it is used to refuse or to look closer, never to allow.
 */
export function markZone(l: Lattice, polygons: Polygons, radius: number, mask: Uint8Array): void {
  const rings = polygons.flat().map((ring) => ring.map(([x, y]) => latticeOf(l, x, y)));
  markInside(l, rings, mask);
  const reach = radius / l.step + 0.25;
  for (const ring of rings)
    for (let a = ring.length - 1, b = 0; b < ring.length; a = b++)
      markEdge(l, ring[a]!, ring[b]!, reach, mask);
}

/** Even-odd filling, row by row. */
function markInside(
  l: Lattice,
  rings: readonly (readonly (readonly [number, number])[])[],
  mask: Uint8Array,
): void {
  const crossings: number[][] = Array.from({ length: l.ny }, () => []);
  for (const ring of rings)
    for (let a = ring.length - 1, b = 0; b < ring.length; a = b++) {
      const [xa, ya] = ring[a]!;
      const [xb, yb] = ring[b]!;
      const from = Math.max(0, Math.ceil(Math.min(ya, yb)));
      const to = Math.min(l.ny - 1, Math.ceil(Math.max(ya, yb)) - 1);
      for (let j = from; j <= to; j++) crossings[j]!.push(xa + ((j - ya) / (yb - ya)) * (xb - xa));
    }
  crossings.forEach((row, j) => {
    row.sort((p, q) => p - q);
    for (let k = 0; k + 1 < row.length; k += 2) {
      const from = Math.max(0, Math.ceil(row[k]!));
      const to = Math.min(l.nx - 1, Math.floor(row[k + 1]!));
      for (let i = from; i <= to; i++) mask[j * l.nx + i]! |= INSIDE;
    }
  });
}

/** Marks discs along an edge, close enough together to leave nothing out. */
function markEdge(
  l: Lattice,
  a: readonly [number, number],
  b: readonly [number, number],
  reach: number,
  mask: Uint8Array,
): void {
  const pieces = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 0.5));
  for (let k = 0; k <= pieces; k++) {
    const x = a[0] + ((b[0] - a[0]) * k) / pieces;
    const y = a[1] + ((b[1] - a[1]) * k) / pieces;
    for (let j = Math.max(0, Math.ceil(y - reach)); j <= Math.min(l.ny - 1, Math.floor(y + reach)); j++) {
      const half = Math.sqrt(Math.max(0, reach * reach - (j - y) ** 2));
      const from = Math.max(0, Math.ceil(x - half));
      const to = Math.min(l.nx - 1, Math.floor(x + half));
      for (let i = from; i <= to; i++) mask[j * l.nx + i]! |= NEAR;
    }
  }
}
