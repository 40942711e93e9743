import type { Raster } from "../site/index.ts";
import { DomainError } from "../units/index.ts";
import { heightOf, sharesIn } from "./surface-at.ts";
import { longestEdge, type Tin } from "./tin.ts";

/** Most cells of a raster that a survey is turned into: the same bound as for terrain files. */
export const MAX_SURVEY_CELLS = 25_000_000;

/** The lattice that covers places, cell centres on whole multiples of the cell, at least 2 x 2 cells. */
export interface Lattice {
  readonly cols: number;
  readonly rows: number;
  readonly x0: number;
  readonly y0: number;
}

/**
 * Cells that cover a rectangle, their centres on whole multiples of the cell size.
 *
 * Throws `DomainError` for a cell size that is not above zero and for more than 25 million cells.
 */
export function latticeOver(
  west: number,
  south: number,
  east: number,
  north: number,
  cell_m: number,
): Lattice {
  if (!(Number.isFinite(cell_m) && cell_m > 0)) throw new DomainError("cell-size", { cell_m });
  const [i0, j0] = [Math.floor(west / cell_m), Math.floor(south / cell_m)];
  const cols = Math.max(2, Math.ceil(east / cell_m) - i0 + 1);
  const rows = Math.max(2, Math.ceil(north / cell_m) - j0 + 1);
  if (!(cols * rows <= MAX_SURVEY_CELLS)) throw new DomainError("too-many-cells", { cols, rows });
  return { cols, rows, x0: i0 * cell_m, y0: j0 * cell_m };
}

/** The lattice that covers every corner of a network. Throws as `latticeOver` and for a network without points. */
export function tinLattice({ xy, origin }: Tin, cell_m: number): Lattice {
  if (xy.length === 0) throw new DomainError("no-points");
  let [w, s, e, n] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < xy.length; i += 2) {
    w = Math.min(w, xy[i]!);
    e = Math.max(e, xy[i]!);
    s = Math.min(s, xy[i + 1]!);
    n = Math.max(n, xy[i + 1]!);
  }
  return latticeOver(w + origin[0], s + origin[1], e + origin[0], n + origin[1], cell_m);
}

/**
 * Heights at cell centres, linear in each triangle.
 *
 * cell_m          cell size, both ways [m] > 0
 * longest_edge_m  triangles with a longer edge are left out: nothing is known between points so far apart [m]
 * Cells outside the outline of the points, and in triangles left out, are NaN. A cell centre that is a point has that
 * point's height. Throws `DomainError` for no points and for more than 25 million cells.
 */
export function surfaceRaster(tin: Tin, cell_m: number, longest_edge_m: number): Raster {
  const lattice = tinLattice(tin, cell_m);
  const raster: Raster = {
    ...lattice,
    dx: cell_m,
    dy: cell_m,
    values: new Float32Array(lattice.cols * lattice.rows).fill(NaN),
  };
  for (let t = 0; t < tin.triangles.length / 3; t++)
    if (longestEdge(tin, t) <= longest_edge_m) fillTriangle(tin, t, raster, () => true);
  return raster;
}

/** Writes the heights of one triangle into the cells whose centres lie in it and that `wants` them. */
export function fillTriangle(tin: Tin, t: number, r: Raster, wants: (cell: number) => boolean): void {
  const { xy, z, triangles, origin } = tin;
  const xs = [0, 1, 2].map((k) => xy[2 * triangles[3 * t + k]!]!);
  const ys = [0, 1, 2].map((k) => xy[2 * triangles[3 * t + k]! + 1]!);
  const first = (low: number, zero: number, d: number): number =>
    Math.max(0, Math.ceil((low - zero) / d - 1e-6));
  const last = (high: number, zero: number, d: number, count: number): number =>
    Math.min(count - 1, Math.floor((high - zero) / d + 1e-6));
  const [x0, y0] = [r.x0 - origin[0], r.y0 - origin[1]];
  const top = last(Math.max(...ys), y0, r.dy, r.rows);
  for (let j = first(Math.min(...ys), y0, r.dy); j <= top; j++) {
    const y = y0 + j * r.dy;
    const [low, high] = spanAt(xs, ys, y);
    const end = last(high, x0, r.dx, r.cols);
    for (let i = first(low, x0, r.dx); i <= end; i++) {
      const cell = j * r.cols + i;
      if (!wants(cell)) continue;
      const shares = sharesIn(tin, t, x0 + i * r.dx, y);
      if (shares !== null) r.values[cell] = heightOf(z, shares);
    }
  }
}

/** West and east end of a triangle on a line of equal y; the whole width where rounding finds no crossing. */
function spanAt(xs: readonly number[], ys: readonly number[], y: number): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let k = 0; k < 3; k++) {
    const [xa, ya, xb, yb] = [xs[k]!, ys[k]!, xs[(k + 1) % 3]!, ys[(k + 1) % 3]!];
    if (Math.min(ya, yb) > y || Math.max(ya, yb) < y) continue;
    const at = ya === yb ? [xa, xb] : [xa + ((xb - xa) * (y - ya)) / (yb - ya)];
    low = Math.min(low, ...at);
    high = Math.max(high, ...at);
  }
  return low <= high ? [low, high] : [Math.min(...xs), Math.max(...xs)];
}
