import { EndType, FillRule, JoinType, inflatePathsD, unionD, type PathsD } from "clipper2-ts";
import type { Polygons } from "../site/index.ts";
import type { Layout } from "./types.ts";

/** Clipping keeps three decimals of a metre. */
const DECIMALS = 3;

/**
 * The ground that the work may touch: all parts and supports, widened by a distance on every side.
 *
 * beyond_m  how far beside the walkway people may step  [m], >= 0
 * returns   rings of the area; holes run the other way round
 */
export function workLimit(layout: Layout, beyond_m: number): Polygons {
  const shapes: PathsD = [
    ...layout.parts.flatMap((p) => p.outline),
    ...layout.joints.flatMap((j) => j.feet),
  ].flatMap((rings) => rings.slice(0, 1).map((ring) => ring.map(([x, y]) => ({ x, y }))));
  if (shapes.length === 0) return [];
  const [ox, oy] = [shapes[0]![0]!.x, shapes[0]![0]!.y];
  const local = shapes.map((path) => path.map((p) => ({ x: p.x - ox, y: p.y - oy })));
  const whole = unionD(local, [], FillRule.NonZero, DECIMALS);
  const wide = inflatePathsD(whole, beyond_m, JoinType.Round, EndType.Polygon, 2, DECIMALS, 0.05);
  return [
    unionD(wide, [], FillRule.NonZero, DECIMALS).map((path) =>
      path.map((p) => [p.x + ox, p.y + oy] as const),
    ),
  ];
}
