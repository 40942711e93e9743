import { EndType, FillRule, JoinType, inflatePathsD, unionD, type PathD, type PathsD } from "clipper2-ts";
import { isInside, ringArea } from "./geometry.ts";
import type { Polygons, Ring, Zone } from "./types.ts";

/** Coordinates keep four decimals of a metre while they are widened. */
const DECIMALS = 4;
/** The chords of a rounded corner stay this near its arc [m]; the buffer is widened by as much, so nothing is cut short. */
const ARC = 0.002;

const kept = new WeakMap<Zone, Polygons>();

/**
 * Where a zone's rule holds: the zone and its buffer around it, on every side.
 *
 * Returns the zone's own polygons when it has no buffer. A buffered outline lies nowhere nearer to the zone than
 * `buffer_m`, and at most 3 mm beyond it; holes narrower than twice the buffer close. Corners are rounded.
 */
export function ruledArea(zone: Zone): Polygons {
  const buffer = zone.buffer_m ?? 0;
  if (!(buffer > 0)) return zone.polygons;
  const known = kept.get(zone);
  if (known) return known;
  const paths = unionD(toPaths(zone.polygons), [], FillRule.EvenOdd, DECIMALS);
  const wide = inflatePathsD(paths, buffer + ARC, JoinType.Round, EndType.Polygon, 2, DECIMALS, ARC);
  const area = toPolygons(unionD(wide, [], FillRule.NonZero, DECIMALS));
  kept.set(zone, area);
  return area;
}

const toPaths = (polygons: Polygons): PathsD =>
  polygons.flatMap((rings) => rings.map((ring) => ring.map(([x, y]) => ({ x, y }))));

const toRing = (path: PathD): Ring => path.map(({ x, y }) => [x, y] as const);

/** Outer rings run counter-clockwise, holes the other way; each hole goes to the smallest outer ring around it. */
function toPolygons(paths: PathsD): Polygons {
  const rings = paths.map(toRing);
  const outer = rings.filter((r) => ringArea(r) > 0).sort((a, b) => ringArea(a) - ringArea(b));
  const polygons = outer.map((r) => [r]);
  for (const hole of rings.filter((r) => ringArea(r) < 0)) {
    const [x, y] = hole[0]!;
    polygons.find(([ring]) => isInside([[ring!]], x, y))?.push(hole);
  }
  return polygons;
}
