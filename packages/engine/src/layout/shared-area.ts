import { FillRule, intersectD, type PathsD } from "clipper2-ts";
import type { Polygons } from "../site/index.ts";

/** Clipping keeps four decimals of a metre. */
export const DECIMALS = 4;

export const toPaths = (polygons: Polygons): PathsD =>
  polygons.flatMap((rings) => rings.map((ring) => ring.map(([x, y]) => ({ x, y }))));

/** Area that shapes, taken together, share with an area [m2]. */
export const overlapArea = (shapes: readonly Polygons[], area: Polygons): number =>
  sharedArea(shapes, toPaths(area));

/** Area that shapes, taken together, share with clipped paths [m2]. */
export const sharedArea = (shapes: readonly Polygons[], paths: PathsD): number =>
  Math.abs(signedArea(intersectD(shapes.flatMap(toPaths), paths, FillRule.NonZero, DECIMALS)));

function signedArea(paths: PathsD): number {
  let twice = 0;
  for (const path of paths)
    path.forEach((p, i) => {
      const q = path[(i + 1) % path.length]!;
      twice += p.x * q.y - q.x * p.y;
    });
  return twice / 2;
}
