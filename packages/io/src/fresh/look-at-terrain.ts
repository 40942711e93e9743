import { ProblemError } from "@causey/engine/formula";
import type { Raster } from "@causey/engine/site";
import type { EpsgInfo } from "../crs/index.ts";
import { readTerrain } from "../terrain/index.ts";

/** A terrain file as it is, before a plan says anything of it. */
export interface TerrainLook {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Unit of the heights, as the file says it; metres where it says nothing. */
  readonly unit: "m" | "ft";
  /** The systems that the file names; null where it names none. */
  readonly crs: EpsgInfo | null;
  readonly vertical: EpsgInfo | null;
  readonly raster: Raster;
}

/**
 * Reads a terrain file by itself, to learn from it what a plan must say: its system, the unit of its heights, where it
 * lies.
 *
 * unit  of the heights, where the user says it; a file that says another one is refused
 * Throws `ProblemError` with everything that is wrong with the file.
 */
export async function lookAtTerrain(
  name: string,
  bytes: Uint8Array,
  unit?: "m" | "ft",
): Promise<TerrainLook> {
  try {
    const read = await readTerrain(name, bytes, { unit: unit ?? "m" });
    return { name, bytes, unit: unit ?? "m", crs: read.crs, vertical: read.vertical, raster: read.raster };
  } catch (error) {
    if (unit === undefined && isInFeetOnly(error)) return lookAtTerrain(name, bytes, "ft");
    throw error;
  }
}

/** Nothing is wrong but that the file says its heights are in feet. */
const isInFeetOnly = (error: unknown): boolean =>
  error instanceof ProblemError &&
  error.problems.filter((p) => p.severity === "error").every((p) => p.code === "terrain-unit");
