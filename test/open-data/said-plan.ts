import type { Problem } from "@causey/engine/formula";
import type { Plan, TerrainChoice } from "@causey/engine/plan";
import { readyKits } from "@causey/data/kits";
import { freshPlanFiles } from "@causey/io/fresh";
import { PLACES_FILE, PLAN_FILE, ZONES_FILE, readPlan, type ReadPlan } from "@causey/io/plan";
import { writePlaces, writeZones } from "@causey/io/vector";

export interface Ground {
  readonly crs: Plan["crs"];
  readonly datum: string;
  readonly terrain: TerrainChoice;
  /** Where the start and the only plot stand [m]. */
  readonly start: readonly [number, number];
  readonly plot: readonly [number, number];
  /** Files beside the plan, by name. */
  readonly files: Readonly<Record<string, Uint8Array>>;
  /** Keys of plan.json to take out, or put in the place of those that are written. */
  readonly document?: Readonly<Record<string, unknown>>;
}

/** A plan folder that is whole but for the ground under test. */
export function groundFolder({ crs, datum, terrain, start, plot, files, document = {} }: Ground) {
  const fresh = freshPlanFiles("Open data");
  const plan = JSON.parse(new TextDecoder().decode(fresh.get(PLAN_FILE))) as {
    levels: readonly object[];
  };
  const levels = plan.levels.map((level) => ({ ...level, datum }));
  const told = { ...plan, crs, vertical_datum: datum, terrain, levels, ...document };
  const [sx, sy] = start;
  const [px, py] = plot;
  return new Map([
    ...fresh,
    [PLAN_FILE, new TextEncoder().encode(JSON.stringify(told))],
    [
      PLACES_FILE,
      writePlaces(
        [{ id: "S1", name: "Gate", x: sx, y: sy }],
        [{ id: "P1", name: "Plot 1", x: px, y: py, keep_off_m: 1.5, reach_m: 2 }],
        crs,
      ),
    ],
    [ZONES_FILE, writeZones([], crs)],
    ...Object.entries(files),
  ]);
}

export interface PlanRead {
  readonly read: ReadPlan;
  readonly problems: readonly Problem[];
  /** Codes of the errors alone. */
  readonly errors: readonly string[];
}

export async function readGroundPlan(ground: Ground): Promise<PlanRead> {
  const read = await readPlan(groundFolder(ground), { readyKits });
  const problems = read.ok ? read.warnings : read.problems;
  return { read, problems, errors: problems.filter((p) => p.severity === "error").map((p) => p.code) };
}
