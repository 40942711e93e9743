import { convexOverlap, type Polygons, type Ring } from "../site/index.ts";

/** Parts may touch to a millimetre: a joint gap of nothing is a joint, not an overlap. */
const SLACK = 1e-3;

/** Index pairs of convex outlines that overlap by more than a millimetre. */
export function overlappingPairs(outlines: readonly Polygons[]): [number, number][] {
  const rings: Ring[][] = outlines.map((o) => o.map((p) => p[0]!));
  const pairs: [number, number][] = [];
  for (let a = 0; a < rings.length; a++)
    for (let b = a + 1; b < rings.length; b++)
      if (rings[a]!.some((p) => rings[b]!.some((q) => isNear(p, q) && convexOverlap(p, q, SLACK))))
        pairs.push([a, b]);
  return pairs;
}

function isNear(p: Ring, q: Ring): boolean {
  const dx = p[0]![0] - q[0]![0];
  const dy = p[0]![1] - q[0]![1];
  return dx * dx + dy * dy < (size(p) + size(q)) ** 2;
}

const size = (r: Ring): number => Math.hypot(r[0]![0] - r[2]![0], r[0]![1] - r[2]![1]);
