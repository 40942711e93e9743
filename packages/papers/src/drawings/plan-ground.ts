import { workLimit } from "@causey/engine/layout";
import { M_PER_FT, type UnitSystem } from "@causey/engine/units";
import type { WaterLevel } from "@causey/engine/water";
import { stroked, type Point, type Shape, type Stroke } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { clipLine } from "./clip.ts";
import { clearWater, type SeenGround } from "./clear-water.ts";
import { contoursOf, contourStep, type GroundLine } from "./ground-lines.ts";
import type { LabelRoom } from "./label-room.ts";
import { levelText } from "./show.ts";
import { WORK_BESIDE_M } from "./site-plan-constants.ts";
import { toSheet, type SheetView } from "./view.ts";

/** What lies on the ground of every plan sheet, worked out once for all of them. */
export interface PlanGround {
  readonly lines: readonly GroundLine[];
  readonly step_m: number;
  /** By id of a level: what was left out of its line; levels drawn whole have none. */
  readonly water_notes: ReadonlyMap<string, string>;
  readonly limit: readonly (readonly (readonly [number, number])[])[];
}

export function planGround({ site, results, plan }: PaperContext, seen: SeenGround): PlanGround {
  const step_m = contourStep(site.terrain, plan.units);
  const water = plan.levels.map((level) => ({
    id: level.id,
    ...clearWater(site.terrain, level, seen, plan.units),
  }));
  return {
    lines: [...contoursOf(site.terrain, step_m), ...water.flatMap((w) => w.lines)],
    step_m,
    water_notes: new Map(water.flatMap((w) => (w.note === "" ? [] : [[w.id, w.note] as const]))),
    limit: workLimit(results.layout, WORK_BESIDE_M).flat(),
  };
}

/** Dashes of the water lines by number of the level, so that they are told apart without their words. */
const DASHES: readonly (readonly number[] | undefined)[] = [
  [3, 1],
  [3, 0.8, 0.5, 0.8],
  [1.2, 0.8],
  [5, 0.8, 0.5, 0.8, 0.5, 0.8],
];

/** How the line of one level is drawn; `n` counts the plan's levels. */
export const waterStroke = (n: number): Stroke => {
  const dash = DASHES[n % DASHES.length];
  return { ink: "water", width: 0.32, ...(dash ? { dash } : {}) };
};

const LOOKS = {
  contour: { ink: "rule", width: 0.14 },
  index: { ink: "earth", width: 0.22 },
} as const;

/** Contours and water lines inside the map; tiny closed loops are dropped, for at this scale they are noise. */
export function groundShapes(ground: PlanGround, view: SheetView, levels: readonly WaterLevel[]): Shape[] {
  return ground.lines.flatMap((line) =>
    runsOf(line, view).map((run) =>
      stroked(run, line.kind === "water" ? waterStroke(levelNumber(line, levels)) : LOOKS[line.kind]),
    ),
  );
}

export const limitShapes = (ground: PlanGround, view: SheetView): Shape[] =>
  ground.limit.flatMap((ring) =>
    clipLine(
      [...ring, ring[0]!].map((p) => toSheet(view, p)),
      view.box,
    ).map((run) => stroked(run, { ink: "warning", width: 0.25, dash: [1.6, 1] })),
  );

const levelNumber = (line: GroundLine, levels: readonly WaterLevel[]): number =>
  levels.findIndex((l) => l.name === line.label);

/** Lines shorter than this on the sheet are left out [mm]. */
const LEAST_MM = { contour: 8, index: 8, water: 5 } as const;

function runsOf(line: GroundLine, view: SheetView): Point[][] {
  const points = line.points.map((p) => toSheet(view, p));
  return clipLine(points, view.box).filter((run) => lengthOf(run) >= LEAST_MM[line.kind]);
}

const lengthOf = (run: readonly Point[]): number =>
  run.reduce(
    (sum, p, i) => (i === 0 ? 0 : sum + Math.hypot(p[0] - run[i - 1]![0], p[1] - run[i - 1]![1])),
    0,
  );

/** Heights of the water lines, each level at most `most` times on a sheet, the longest runs first. */
export function waterLabels(
  ground: PlanGround,
  view: SheetView,
  context: PaperContext,
  labels: LabelRoom,
  most = 2,
): Shape[] {
  return context.plan.levels.flatMap((level) => {
    const text = `${level.name} ${levelText(level.z_m, context.plan)}`;
    const lines = ground.lines.filter((l) => l.kind === "water" && l.label === level.name);
    return labelled(lines, view, text, labels, "water", most);
  });
}

/** Heights of the stronger contours. */
export function contourLabels(
  ground: PlanGround,
  view: SheetView,
  context: PaperContext,
  labels: LabelRoom,
): Shape[] {
  const heights = [...new Set(ground.lines.filter((l) => l.kind === "index").map((l) => l.z_m))];
  return heights.flatMap((z) => {
    const lines = ground.lines.filter((l) => l.kind === "index" && l.z_m === z);
    return labelled(lines, view, roundHeight(z, context.plan.units), labels, "earth", 2);
  });
}

/** Contours stand at round heights of the chosen unit: "0 ft", "2.5 ft", "1.2 m". */
const roundHeight = (z_m: number, units: UnitSystem): string => {
  const value = Number((z_m / (units === "us" ? M_PER_FT : 1)).toFixed(2));
  return `${value === 0 ? 0 : value} ${units === "us" ? "ft" : "m"}`;
};

/** Two labels of the same line stand at least this far apart [mm]. */
const APART_MM = 45;

function labelled(
  lines: readonly GroundLine[],
  view: SheetView,
  text: string,
  labels: LabelRoom,
  ink: "water" | "earth",
  most: number,
): Shape[] {
  const runs = lines.flatMap((l) => runsOf(l, view)).sort((a, b) => lengthOf(b) - lengthOf(a));
  const found: Shape[] = [];
  const used: Point[] = [];
  for (const run of runs) {
    if (found.length >= most) break;
    const spots = [0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6].map(
      (share) => run[Math.floor((run.length - 1) * share)]!,
    );
    const far = spots.filter((p) => used.every((u) => Math.hypot(p[0] - u[0], p[1] - u[1]) > APART_MM));
    const shapes = labels.label(text, far, { size: 2, ink });
    found.push(...shapes);
    used.push(...shapes.flatMap((s) => (s.kind === "text" ? [s.at] : [])));
  }
  return found;
}
