import { contourLines, type Raster } from "@causey/engine/site";
import { M_PER_FT, type UnitSystem } from "@causey/engine/units";
import type { WaterLevel } from "@causey/engine/water";
import { averageGround } from "./average-ground.ts";
import type { GroundLine } from "./ground-lines.ts";
import type { Extent } from "./view.ts";

/** Where the plan is seen, and how much line it bears. */
export interface SeenGround {
  readonly extent: Extent;
  readonly m_per_mm: number;
}

/** The line of one level, and what was left out of it; empty when nothing was. */
export interface ClearWater {
  readonly lines: readonly GroundLine[];
  readonly note: string;
}

/** On average a level's line keeps at least this far from itself on the sheet: nearer, it hides what lies under it [mm]. */
const APART_MM = 10;
/** Pieces shorter than these are dropped, then the ground is averaged over these reaches, until the line is clear [m]. */
const LEAST_M = [0, 5, 10, 25, 50];
const REACH_M = [5, 10, 20];

/**
 * Where a level meets the ground. On nearly flat ground that line is a tangle of loops: short pieces are dropped, then
 * the ground is averaged, and a level that lies within the unevenness everywhere is not drawn. The note says which.
 */
export function clearWater(
  raster: Raster,
  level: WaterLevel,
  seen: SeenGround,
  units: UnitSystem,
): ClearWater {
  const [w, s, e, n] = seen.extent;
  const most_m = ((e - w) * (n - s)) / (APART_MM * seen.m_per_mm);
  const say = (m: number): string => (units === "us" ? `${Math.round(m / M_PER_FT)} ft` : `${m} m`);
  const lines = linesAt(raster, level);
  for (const least of LEAST_M) {
    const kept = lines.filter((l) => lengthOf(l) >= least);
    if (lengthWithin(kept, seen.extent) <= most_m)
      return {
        lines: kept,
        note: least === 0 ? "" : `nearly flat ground: pieces under ${say(least)} left out`,
      };
  }
  const least = LEAST_M.at(-1)!;
  for (const reach of REACH_M) {
    const kept = linesAt(averageGround(raster, reach), level).filter((l) => lengthOf(l) >= least);
    if (kept.length > 0 && lengthWithin(kept, seen.extent) <= most_m)
      return {
        lines: kept,
        note: `nearly flat ground: averaged over ${say(2 * reach)}, pieces under ${say(least)} left out`,
      };
  }
  return { lines: [], note: "not drawn: the ground is flat about this level, its line would be everywhere" };
}

const linesAt = (raster: Raster, level: WaterLevel): GroundLine[] =>
  contourLines(raster, [level.z_m]).map(({ points }) => ({
    z_m: level.z_m,
    label: level.name,
    kind: "water",
    points,
  }));

const lengthOf = ({ points }: GroundLine): number => steps(points, () => true);

/** Length of lines whose steps begin inside a rectangle [m]. */
const lengthWithin = (lines: readonly GroundLine[], [w, s, e, n]: Extent): number =>
  lines.reduce((sum, { points }) => sum + steps(points, ([x, y]) => x >= w && x <= e && y >= s && y <= n), 0);

function steps(points: GroundLine["points"], counts: (p: readonly [number, number]) => boolean): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    if (counts(a)) sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}
