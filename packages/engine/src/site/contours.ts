import { contours } from "d3-contour";
import { DomainError } from "../units/index.ts";
import type { Point } from "./geometry.ts";
import type { Raster } from "./types.ts";

/** One line of equal ground height. Closed when its first and last point are the same. */
export interface ContourLine {
  /** Height on the site datum [m]. */
  readonly z_m: number;
  /** In the site's horizontal system [m]; higher ground lies on one side of the line throughout. */
  readonly points: readonly Point[];
}

/**
 * Lines of equal height by marching squares with linear interpolation between neighbouring cell centres.
 *
 * raster  terrain; NaN = no data
 * levels  heights on the site datum [m], finite
 *
 * A line ends where the data ends: none is drawn along the raster's edge or around a hole in the data.
 * Exact on a plane; elsewhere as good as straight lines between centres. Throws `DomainError` on a level that
 * is not finite.
 * Source: d3js.org/d3-contour (marching squares; this file adds the interpolation and the ends).
 */
export function contourLines(raster: Raster, levels: readonly number[]): ContourLine[] {
  const cells = contours().size([raster.cols, raster.rows]).smooth(false);
  const values = raster.values as unknown as number[];
  return levels.flatMap((z) => {
    if (!Number.isFinite(z)) throw new DomainError("contour-level", { z: String(z) });
    const rings = cells.contour(values, z).coordinates.flat() as [number, number][][];
    return rings.flatMap((ring) => knownRuns(raster, ring, z)).map((points) => ({ z_m: z, points }));
  });
}

/**
 * Every multiple of `step` between the lowest and the highest known ground, both inclusive [m].
 * Empty when nothing is known. Throws `DomainError` unless `step` > 0.
 */
export function contourLevels(raster: Raster, step: number): number[] {
  if (!(step > 0)) throw new DomainError("contour-step", { step: String(step) });
  let low = Infinity;
  let high = -Infinity;
  for (const z of raster.values) {
    if (z < low) low = z;
    if (z > high) high = z;
  }
  const levels: number[] = [];
  for (let k = Math.ceil(low / step); k * step <= high; k++) levels.push(k * step);
  return levels;
}

/** Cuts a ring where it leaves known ground. A whole ring stays one closed run. */
function knownRuns(raster: Raster, ring: readonly (readonly [number, number])[], z: number): Point[][] {
  const placed = ring.slice(0, -1).map(([u, v]) => crossing(raster, u, v, z));
  const firstGap = placed.indexOf(null);
  if (firstGap < 0) return [[...(placed as Point[]), placed[0]!]];
  const runs: Point[][] = [[]];
  for (let i = 1; i <= placed.length; i++) {
    const point = placed[(firstGap + i) % placed.length];
    if (point) runs.at(-1)!.push(point);
    else if (runs.at(-1)!.length > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

/**
 * Where height `z` lies between the two centres that share the cell edge at (u, v); cell (i, j) has its centre at
 * (i + 0.5, j + 0.5), so on an edge just one of u, v is a whole number. Null when either centre is unknown.
 */
function crossing(r: Raster, u: number, v: number, z: number): Point | null {
  const across = Number.isInteger(u);
  const i = Math.floor(u);
  const j = Math.floor(v);
  const [a, b] = across ? [cell(r, i - 1, j), cell(r, i, j)] : [cell(r, i, j - 1), cell(r, i, j)];
  if (Number.isNaN(a) || Number.isNaN(b)) return null;
  const t = (z - a) / (b - a);
  const [ci, cj] = across ? [i - 1 + t, j] : [i, j - 1 + t];
  return [r.x0 + ci * r.dx, r.y0 + cj * r.dy];
}

const cell = (r: Raster, i: number, j: number): number =>
  i < 0 || j < 0 || i >= r.cols || j >= r.rows ? NaN : r.values[j * r.cols + i]!;
