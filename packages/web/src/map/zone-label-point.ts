import { bounds, isInside, signedDistance, type Polygons } from "@causey/engine/site";
import type { Extent, XY } from "./view.ts";

const LATTICE = 11;
const MOST_CORNERS = 40;

/** A zone with few corners, and its extent: where its name stands need not be known to the metre. */
interface Outline {
  readonly polygons: Polygons;
  readonly extent: Extent | null;
}

const outlines = new WeakMap<Polygons, Outline>();

function outlineOf(polygons: Polygons): Outline {
  const known = outlines.get(polygons);
  if (known) return known;
  const few = polygons.map((rings) =>
    rings.map((ring) => {
      const step = Math.ceil(ring.length / MOST_CORNERS);
      return ring.filter((_, i) => i % step === 0);
    }),
  );
  const outline = { polygons: few, extent: bounds(few) };
  outlines.set(polygons, outline);
  return outline;
}

function covers({ polygons, extent }: Outline, x: number, y: number): boolean {
  if (!extent || x < extent[0] || y < extent[1] || x > extent[2] || y > extent[3]) return false;
  return isInside(polygons, x, y);
}

/**
 * A point well inside the part of a zone that is in view, for its name; null when none of it is.
 * A place that lies on a zone drawn above it is taken only when there is no other.
 *
 * half  half the name's width, in metres of the map
 */
export function labelPoint(
  polygons: Polygons,
  above: readonly Polygons[],
  inView: Extent,
  half: number,
): XY | null {
  const zone = outlineOf(polygons);
  const others = above.map(outlineOf);
  const box = overlap(zone.extent, inView);
  if (!box) return null;
  const [west, south, east, north] = box;
  const found: { readonly at: XY; readonly depth: number }[] = [];
  for (let j = 0; j < LATTICE; j++)
    for (let i = 0; i < LATTICE; i++) {
      const x = west + ((i + 0.5) / LATTICE) * (east - west);
      const y = south + ((j + 0.5) / LATTICE) * (north - south);
      if (!covers(zone, x, y)) continue;
      const edge = Math.min(x - inView[0], inView[2] - x, y - inView[1], inView[3] - y);
      found.push({ at: [x, y], depth: Math.min(-signedDistance(zone.polygons, x, y), edge) });
    }
  found.sort((a, b) => b.depth - a.depth);
  const isFree = ([x, y]: XY): boolean =>
    !others.some((other) => [-half, -half / 2, 0, half / 2, half].some((d) => covers(other, x + d, y)));
  return (found.find((f) => isFree(f.at)) ?? found[0])?.at ?? null;
}

function overlap(a: Extent | null, b: Extent): Extent | null {
  if (!a) return null;
  const box = [
    Math.max(a[0], b[0]),
    Math.max(a[1], b[1]),
    Math.min(a[2], b[2]),
    Math.min(a[3], b[3]),
  ] as const;
  return box[0] < box[2] && box[1] < box[3] ? box : null;
}
