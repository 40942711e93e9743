import type { XY } from "./view.ts";

/** A press this near to a plot or a start means it: as wide as the mark itself, and a finger beside it [px]. */
export const SNAP_PX = 20;

/** The nearest mark within reach of a point, else the point itself; all in one plane and one unit. */
export function snapTo(marks: readonly XY[], at: XY, reach: number): XY {
  const far = (m: XY): number => Math.hypot(m[0] - at[0], m[1] - at[1]);
  const [nearest] = marks.toSorted((a, b) => far(a) - far(b));
  return nearest && far(nearest) <= reach ? nearest : at;
}
