import type { Site, Start } from "../../site/index.ts";
import type { DrawnLine } from "../types.ts";
import type { Spot } from "./guide.ts";
import { between, endOutside, nearestOn, readAlong, withoutRepeats } from "./polyline.ts";

/** A line to be fitted: where it begins, and on which line. */
export interface LinePlan {
  readonly line: DrawnLine;
  /** The line as drawn, joined to where it begins, cut where it enters its plot's keep-off circle. */
  readonly points: readonly Spot[];
  /** The earlier line it branches off, and where on that line; null = it begins at the start. */
  readonly parent: { readonly line: number; readonly at: Spot } | null;
}

/**
 * Orders drawn lines for fitting. The first begins at the start nearest to its first point; each later one at the
 * place of an earlier line nearest to its own first point. Null when the site has no start or no line has a length.
 */
export function planLines(
  site: Site,
  lines: readonly DrawnLine[],
): { readonly start: Start; readonly plans: readonly LinePlan[] } | null {
  const drawn = lines.filter((line) => line.points.length > 0);
  const first = drawn[0]?.points[0];
  const start = first && nearestStart(site, first);
  if (!start) return null;
  const plans: LinePlan[] = [];
  for (const line of drawn) {
    const parent = plans.length === 0 ? null : nearestLine(plans, line.points[0]!);
    const begin: Spot = parent?.at ?? [start.x, start.y];
    const own = withoutRepeats(line.points);
    const points = withoutRepeats(
      between(begin, own[0]!) <= line.corridor_m ? [begin, ...own.slice(1)] : [begin, ...own],
    );
    const plot = site.plots.find((p) => p.id === line.plot);
    const whole = points.length === 1 ? [begin, own[0]!] : points;
    plans.push({ line, points: plot ? endOutside(whole, [plot.x, plot.y], plot.keep_off_m) : whole, parent });
  }
  return { start, plans };
}

const nearestStart = (site: Site, [x, y]: Spot): Start | undefined =>
  [...site.starts].sort((a, b) => between([a.x, a.y], [x, y]) - between([b.x, b.y], [x, y]))[0];

function nearestLine(plans: readonly LinePlan[], from: Spot): { line: number; at: Spot } {
  let best = { line: 0, ...nearestOn(plans[0]!.points, from) };
  plans.forEach((plan, line) => {
    const near = nearestOn(plan.points, from);
    if (near.distance_m < best.distance_m - 1e-9) best = { line, ...near };
  });
  return { line: best.line, at: best.at };
}

/** Every point the lattice must hold, with room around it. */
export const reachOf = (plans: readonly LinePlan[]): Spot[] =>
  plans.flatMap((p) => readAlong(p.points, 1000).map((r) => r.at));
