import { bounds, signedDistance, type Polygons } from "@causey/engine/site";
import type { Extent, XY } from "./view.ts";

const LATTICE = 11;

/** A point well inside the part of a zone that is in view, for its name; null when none of it is. */
export function labelPoint(polygons: Polygons, inView: Extent): XY | null {
  const whole = bounds(polygons);
  if (!whole) return null;
  const west = Math.max(whole[0], inView[0]);
  const south = Math.max(whole[1], inView[1]);
  const east = Math.min(whole[2], inView[2]);
  const north = Math.min(whole[3], inView[3]);
  if (west >= east || south >= north) return null;
  let best: XY | null = null;
  let deepest = 0;
  for (let j = 0; j < LATTICE; j++)
    for (let i = 0; i < LATTICE; i++) {
      const x = west + ((i + 0.5) / LATTICE) * (east - west);
      const y = south + ((j + 0.5) / LATTICE) * (north - south);
      const edge = Math.min(x - inView[0], inView[2] - x, y - inView[1], inView[3] - y);
      const depth = Math.min(-signedDistance(polygons, x, y), edge);
      if (depth > deepest) [best, deepest] = [[x, y], depth];
    }
  return best;
}
