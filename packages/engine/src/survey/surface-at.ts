import { longestEdge, type Tin } from "./tin.ts";

/** Shares of three corners at a place, and the corners; the shares sum to 1 and lie in 0..1. */
export interface TriangleShares {
  readonly corners: readonly [number, number, number];
  readonly shares: readonly [number, number, number];
}

/** Twice the signed area of a triangle of places [m2]. */
const cross = (ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

/** A place this far outside an edge still counts as on it [m]: rounding of large eastings must not open gaps. */
const ON_EDGE_M = 1e-6;

/** Shares of the corners of triangle `t` at a place in the network's own frame; null outside it or for no area. */
export function sharesIn({ xy, triangles }: Tin, t: number, x: number, y: number): TriangleShares | null {
  const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
  const [ax, ay, bx, by] = [xy[2 * a]!, xy[2 * a + 1]!, xy[2 * b]!, xy[2 * b + 1]!];
  const [cx, cy] = [xy[2 * c]!, xy[2 * c + 1]!];
  const area = cross(ax, ay, bx, by, cx, cy);
  if (area === 0) return null;
  const side = Math.sign(area);
  const u = side * cross(x, y, bx, by, cx, cy);
  const v = side * cross(ax, ay, x, y, cx, cy);
  const w = side * cross(ax, ay, bx, by, x, y);
  if (u < 0 && u < -ON_EDGE_M * Math.hypot(bx - cx, by - cy)) return null;
  if (v < 0 && v < -ON_EDGE_M * Math.hypot(cx - ax, cy - ay)) return null;
  if (w < 0 && w < -ON_EDGE_M * Math.hypot(ax - bx, ay - by)) return null;
  const [p, q, r] = [Math.max(0, u), Math.max(0, v), Math.max(0, w)];
  const sum = p + q + r;
  return sum > 0 ? { corners: [a, b, c], shares: [p / sum, q / sum, r / sum] } : null;
}

/** Height from shares [m]: a corner gives its own height to the last digit. */
export const heightOf = (z: ArrayLike<number>, { corners, shares }: TriangleShares): number => {
  const whole = shares.indexOf(1);
  if (whole >= 0) return z[corners[whole]!]!;
  return shares[0] * z[corners[0]]! + shares[1] * z[corners[1]]! + shares[2] * z[corners[2]]!;
};

/**
 * Height of the surface of triangles at a place [m]: linear in each triangle, exact at its corners.
 *
 * x, y            [m], in the system of the points
 * longest_edge_m  triangles with a longer edge hold no ground
 * NaN outside the outline of the points and in triangles that are left out. Looks at every triangle until one fits:
 * for single places; a grid of heights comes from `surfaceRaster`.
 */
export function surfaceAt(tin: Tin, x: number, y: number, longest_edge_m = Infinity): number {
  const [u, v] = [x - tin.origin[0], y - tin.origin[1]];
  for (let t = 0; t < tin.triangles.length / 3; t++) {
    const shares = sharesIn(tin, t, u, v);
    if (shares !== null && longestEdge(tin, t) <= longest_edge_m) return heightOf(tin.z, shares);
  }
  return NaN;
}
