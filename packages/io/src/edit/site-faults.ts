import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Edit, Plan } from "@causey/engine/plan";
import type { Raster } from "@causey/engine/site";
import { crsOf } from "../crs/index.ts";
import { checkInZones, checkOnTerrain } from "../plan/place-checks.ts";
import { PLACES_FILE, ZONES_FILE } from "../plan/read-plan.ts";
import { groundFile } from "../ground/index.ts";
import { Findings } from "../problem/index.ts";
import { readZones, writeZones } from "../vector/index.ts";

/**
 * What an edit of a place or a zone puts wrong on the site, found by the same checks as when the plan folder is read:
 * a place off the terrain, in a shut zone or in the water, and a new zone that could not be read back.
 *
 * plan     the document after the edit
 * terrain  the plan's terrain, already read
 * Returns errors only, each by its file and place; empty for an edit that moves nothing.
 */
export async function siteFaults(plan: Plan, edit: Edit, terrain: Raster): Promise<readonly Problem[]> {
  if (!movesSomething(edit)) return [];
  const found = new Findings(PLACES_FILE);
  checkOnTerrain(found, plan, terrain, groundFile(plan.terrain) ?? "plan.json");
  checkInZones(found, plan, plan.zones, plan.laying);
  const zone = edit.type === "add-zone" ? await zoneFaults(plan, edit) : [];
  return [...found.all, ...zone].filter((problem) => problem.severity === "error");
}

export const movesSomething = (edit: Edit): boolean =>
  edit.type === "move-plot" || edit.type === "move-start" || edit.type === "add-zone";

/** The new zone alone, written as it would be given out and read again. */
async function zoneFaults(
  plan: Plan,
  { zone }: Extract<Edit, { readonly type: "add-zone" }>,
): Promise<readonly Problem[]> {
  try {
    readZones(ZONES_FILE, writeZones([zone], plan.crs), await crsOf(plan.crs));
    return [];
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
}
