import type { Polygons, Ring } from "@causey/engine/site";
import type { XY } from "./view.ts";

/** SVG path of points in metres from `origin`, north up, to the millimetre. */
export const linePath = (points: readonly XY[], [x0, y0]: XY): string =>
  points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${(x - x0).toFixed(3)} ${(y - y0).toFixed(3)}`).join("");

export const ringPath = (ring: Ring, origin: XY): string => `${linePath(ring, origin)}Z`;

/** Polygons with their holes as one path. */
export const polygonsPath = (polygons: Polygons, origin: XY): string =>
  polygons.flatMap((rings) => rings.map((ring) => ringPath(ring, origin))).join("");
