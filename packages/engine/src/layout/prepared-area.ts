import type { Polygons, Ring } from "../site/index.ts";

/** Height of one band of edges [m]. */
const BAND = 2;
type Spot = readonly [number, number];

/**
 * Polygons with their edges sorted into bands from south to north, so that a point or a small ring is held against
 * the few edges at its own height. Even-odd rule over all rings.
 */
export class PreparedArea {
  private readonly bands = new Map<number, [Spot, Spot][]>();

  constructor(polygons: Polygons) {
    for (const ring of polygons.flat())
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        const [a, b] = [ring[j]!, ring[i]!];
        for (let k = band(Math.min(a[1], b[1])); k <= band(Math.max(a[1], b[1])); k++) {
          const list = this.bands.get(k);
          if (list) list.push([a, b]);
          else this.bands.set(k, [[a, b]]);
        }
      }
  }

  isInside(x: number, y: number): boolean {
    let inside = false;
    for (const [a, b] of this.bands.get(band(y)) ?? [])
      if (a[1] > y !== b[1] > y && x < ((a[0] - b[0]) * (y - b[1])) / (a[1] - b[1]) + b[0]) inside = !inside;
    return inside;
  }

  /** Whether a convex ring shares any point with the area. */
  touches(foot: Ring): boolean {
    const xs = foot.map((p) => p[0]);
    const ys = foot.map((p) => p[1]);
    const [w, e, s, n] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    for (let k = band(s); k <= band(n); k++)
      for (const [a, b] of this.bands.get(k) ?? []) {
        if (a[0] < w ? b[0] < w : a[0] > e && b[0] > e) continue;
        if (a[1] < s ? b[1] < s : a[1] > n && b[1] > n) continue;
        if (meets(foot, a, b)) return true;
      }
    return this.isInside(foot[0]![0], foot[0]![1]);
  }
}

const band = (y: number): number => Math.floor(y / BAND);

function meets(foot: Ring, a: Spot, b: Spot): boolean {
  return isWithin(foot, a) || foot.some((p, i) => crosses(p, foot[(i + 1) % foot.length]!, a, b));
}

const side = (a: Spot, b: Spot, p: Spot): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

const crosses = (p: Spot, q: Spot, a: Spot, b: Spot): boolean =>
  side(p, q, a) * side(p, q, b) <= 0 && side(a, b, p) * side(a, b, q) <= 0;

/** For a convex ring: the point lies on one side of every edge. */
function isWithin(ring: Ring, p: Spot): boolean {
  const sides = ring.map((a, i) => side(a, ring[(i + 1) % ring.length]!, p));
  return sides.every((v) => v >= 0) || sides.every((v) => v <= 0);
}
