import type { TerrainChoice } from "@causey/engine/plan";
import type { PlanCrs } from "../crs/index.ts";
import { Findings } from "../problem/index.ts";
import { readTerrain, type Terrain } from "../terrain/index.ts";

/** The file a choice of terrain reads from; null where the ground is typed into the plan itself. */
export const groundFile = (choice: TerrainChoice): string | null =>
  choice.kind === "stations" ? null : choice.file;

/**
 * The ground of a plan as a grid of heights, whatever it is known from.
 *
 * bytes  of `groundFile`, null where there is none
 * Throws `ProblemError` with everything found.
 */
export async function readGround(
  choice: TerrainChoice,
  bytes: Uint8Array | null,
  expectedCrs: PlanCrs | undefined,
): Promise<Terrain> {
  if (choice.kind === "grid")
    return readTerrain(choice.file, bytes!, {
      unit: choice.unit,
      ...(expectedCrs === undefined ? {} : { expectedCrs }),
    });
  return new Findings(groundFile(choice) ?? "plan.json").stop({
    code: "terrain-kind",
    place: "terrain.kind",
    value: choice.kind,
    message: "Ground of this kind is not read yet.",
    mend: "Give a grid.",
  });
}
