import type { Plan } from "@causey/engine/plan";
import type { Raster } from "@causey/engine/site";
import { readTerrain } from "@causey/io/terrain";

/** The one place where the map's worker meets the reader of terrain files. */
export async function readRaster(plan: Plan, bytes: Uint8Array): Promise<Raster> {
  const { file, unit } = plan.terrain;
  return (await readTerrain(file, bytes, { unit })).raster;
}
