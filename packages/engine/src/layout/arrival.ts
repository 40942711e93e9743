import type { Plot } from "../site/index.ts";
import { latticeOf, placeOf, type Lattice } from "./lattice.ts";

/**
 * Whether a plot counts as reached from a place: outside its keep-off line, within reach beyond it, and on the side
 * from which it must be reached. A side is the quarter of the compass around it: north runs from north-west to
 * north-east, both included.
 */
export function isArrival(plot: Plot, x: number, y: number): boolean {
  const [east, north] = [x - plot.x, y - plot.y];
  const d = Math.hypot(east, north);
  if (d < plot.keep_off_m || d > plot.keep_off_m + plot.reach_m) return false;
  const { arrive_from: side } = plot;
  if (side === undefined) return true;
  const isLengthwise = side === "north" || side === "south";
  const out = isLengthwise ? north : east;
  return (side === "north" || side === "east" ? out : -out) >= Math.abs(isLengthwise ? east : north);
}

/** Lattice points from which a plot counts as reached. */
export function arrivalPoints(l: Lattice, plot: Plot): Set<number> {
  const [pi, pj] = latticeOf(l, plot.x, plot.y);
  const outer = (plot.keep_off_m + plot.reach_m) / l.step;
  const points = new Set<number>();
  for (let j = Math.max(0, Math.ceil(pj - outer)); j <= Math.min(l.ny - 1, Math.floor(pj + outer)); j++)
    for (let i = Math.max(0, Math.ceil(pi - outer)); i <= Math.min(l.nx - 1, Math.floor(pi + outer)); i++)
      if (isArrival(plot, ...placeOf(l, i, j))) points.add(j * l.nx + i);
  return points;
}
