import type { Plan } from "@causey/engine/plan";
import type { Raster } from "@causey/engine/site";
import { siteGround } from "@causey/io/ground";

/** The one place where the map's worker meets the reader of terrain files. */
export async function readRaster(plan: Plan, bytes: Uint8Array | null): Promise<Raster> {
  return (await siteGround(plan, bytes, undefined)).raster;
}
