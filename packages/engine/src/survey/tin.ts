import Delaunator from "delaunator";
import { DomainError } from "../units/index.ts";

/** Positions and heights of points, one array for each [m]. */
export interface PointCloud {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly z: ArrayLike<number>;
}

/**
 * Triangles between points (a triangulated irregular network), no other point inside their circumcircles.
 *
 * origin     subtracted from every position, so that large eastings cost no digits [m]
 * xy         x and y of each corner in turn, from the origin [m], sorted by x, then y
 * z          height of each corner [m]
 * triangles  three corners each; empty when fewer than three points or all on one line
 * halfedges  edge -> the same edge of the neighbour, -1 at the border
 * corner_of  corner of each point given
 * merged     points left out because another lies on the same spot; the corner has the mean of their heights
 */
export interface Tin {
  readonly origin: readonly [number, number];
  readonly xy: Float64Array;
  readonly z: Float64Array;
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
  readonly corner_of: Uint32Array;
  readonly merged: number;
}

/**
 * Delaunay triangulation. The order of the points makes no difference to the surface, also where four of them lie on
 * one circle and either diagonal would do.
 *
 * Throws `DomainError` for a coordinate or height that is not finite, or lists of unlike length. Grows as n log n;
 * about 150 bytes a point while it runs.
 */
export function triangulate(points: PointCloud): Tin {
  const n = points.z.length;
  if (points.x.length !== n || points.y.length !== n)
    throw new DomainError("points-of-unlike-length", { x: points.x.length, y: points.y.length, z: n });
  for (let i = 0; i < n; i++)
    if (!Number.isFinite(points.x[i]! + points.y[i]! + points.z[i]!))
      throw new DomainError("point-not-finite", { point: i });
  const order = sortedOrder(points);
  const origin: readonly [number, number] = n === 0 ? [0, 0] : middleOf(points);
  const { xy, z, corner_of } = mergeTwins(points, order, origin);
  const mesh = new Delaunator(xy);
  const { triangles, halfedges } = mesh;
  return { origin, xy, z, triangles, halfedges, corner_of, merged: n - z.length };
}

const sortedOrder = ({ x, y, z }: PointCloud): Uint32Array =>
  Uint32Array.from({ length: z.length }, (_, i) => i).sort(
    (a, b) => x[a]! - x[b]! || y[a]! - y[b]! || z[a]! - z[b]!,
  );

/** A whole number of metres, so that taking it off and adding it again is exact for coordinates in decimals. */
function middleOf({ x, y }: PointCloud): readonly [number, number] {
  const middle = (v: ArrayLike<number>): number => {
    let low = Infinity;
    let high = -Infinity;
    for (let i = 0; i < v.length; i++) {
      low = Math.min(low, v[i]!);
      high = Math.max(high, v[i]!);
    }
    return Math.round((low + high) / 2);
  };
  return [middle(x), middle(y)];
}

function mergeTwins(
  { x, y, z }: PointCloud,
  order: Uint32Array,
  [x0, y0]: readonly [number, number],
): Pick<Tin, "xy" | "z" | "corner_of"> {
  const xy = new Float64Array(2 * order.length);
  const heights = new Float64Array(order.length);
  const corner_of = new Uint32Array(order.length);
  let corners = 0;
  for (let from = 0; from < order.length;) {
    const first = order[from]!;
    let to = from;
    let sum = 0;
    for (; to < order.length && x[order[to]!] === x[first] && y[order[to]!] === y[first]; to++)
      [corner_of[order[to]!], sum] = [corners, sum + z[order[to]!]!];
    xy[2 * corners] = x[first]! - x0;
    xy[2 * corners + 1] = y[first]! - y0;
    heights[corners] = to - from === 1 ? z[first]! : sum / (to - from);
    corners += 1;
    from = to;
  }
  return { xy: xy.slice(0, 2 * corners), z: heights.slice(0, corners), corner_of };
}

/** Longest of a triangle's three edges [m]. t counts triangles. */
export function longestEdge({ xy, triangles }: Tin, t: number): number {
  let most = 0;
  for (let k = 0; k < 3; k++) {
    const a = 2 * triangles[3 * t + k]!;
    const b = 2 * triangles[3 * t + ((k + 1) % 3)]!;
    most = Math.max(most, Math.hypot(xy[a]! - xy[b]!, xy[a + 1]! - xy[b + 1]!));
  }
  return most;
}
