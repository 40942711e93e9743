import type { TerrainChoice } from "@causey/engine/plan";
import { stationSurface, surfaceRaster, triangulate, type Survey, type Tin } from "@causey/engine/survey";
import type { Raster } from "@causey/engine/site";
import { DomainError } from "@causey/engine/units";
import type { PlanCrs } from "../crs/index.ts";
import { checkEllipsoid, readPoints } from "../points/index.ts";
import { Findings } from "../problem/index.ts";
import { MAX_CELLS, readTerrain, type Terrain } from "../terrain/index.ts";
import type { SurveyedPoints } from "./points-evidence.ts";

type Choice<K extends TerrainChoice["kind"]> = Extract<TerrainChoice, { readonly kind: K }>;

/** Ground as it was measured, and the points that it was made of; null for ground that comes from none. */
export interface MeasuredGround extends Terrain {
  readonly surveyed: SurveyedPoints | null;
}

/** The file a choice of terrain reads from; null where the ground is typed into the plan itself. */
export const groundFile = (choice: TerrainChoice): string | null =>
  choice.kind === "stations" ? null : choice.file;

/**
 * The ground of a plan as a grid of heights, whatever it is known from, before any correction.
 *
 * bytes           of `groundFile`, null where there is none
 * survey          holds the stations, for ground of that kind
 * known_heights_m heights on the plan's datum that are known at the site, against which survey heights are held [m]
 * Throws `ProblemError` with everything found.
 */
export async function readGround(
  choice: TerrainChoice,
  bytes: Uint8Array | null,
  expectedCrs: PlanCrs | undefined,
  survey: Pick<Survey, "stations">,
  known_heights_m: readonly number[] = [],
): Promise<MeasuredGround> {
  if (choice.kind === "stations") return groundOfStations(choice, survey, known_heights_m);
  if (bytes === null) throw new DomainError("ground-without-its-file", { file: choice.file });
  if (choice.kind === "points") return groundOfPoints(choice, bytes, known_heights_m);
  const terrain = await readTerrain(choice.file, bytes, {
    unit: choice.unit,
    ...(expectedCrs === undefined ? {} : { expectedCrs }),
  });
  return { ...terrain, surveyed: null };
}

function groundOfPoints(
  choice: Choice<"points">,
  bytes: Uint8Array,
  known_heights_m: readonly number[],
): MeasuredGround {
  const { columns, unit, decimal, date_order } = choice;
  const options = { columns, unit, decimal, date_order, known_heights_m };
  const { points, left_out_count, warnings } = readPoints(choice.file, bytes, options);
  const found = new Findings(choice.file);
  const tin = triangulate(points);
  if (tin.triangles.length === 0)
    found.stop({
      code: "points-no-surface",
      place: "file",
      value: `${tin.z.length} places`,
      message: "There are not three points off one line: they span no ground.",
      mend: "Survey points to both sides of the line too, or enter them as stations of the survey.",
    });
  const raster = withinCells(found, "terrain.cell_m", choice.cell_m, () =>
    surfaceRaster(tin, choice.cell_m, choice.longest_edge_m),
  );
  checkAnyGround(found, raster, choice, tin);
  return { raster, crs: null, vertical: null, warnings, surveyed: { points, left_out_count, tin } };
}

function checkAnyGround(found: Findings, raster: Raster, choice: Choice<"points">, tin: Tin): void {
  if (raster.values.some((v) => !Number.isNaN(v))) return;
  found.stop({
    code: "points-too-far-apart",
    place: "terrain.longest_edge_m",
    value: choice.longest_edge_m,
    message: `No cell of ${choice.cell_m} m lies in a triangle of the ${tin.z.length} points whose edges are ${choice.longest_edge_m} m or less: no ground is known.`,
    mend: "Allow a longer edge if the ground between the points is even, or choose smaller cells.",
  });
}

function groundOfStations(
  choice: Choice<"stations">,
  { stations }: Pick<Survey, "stations">,
  known_heights_m: readonly number[],
): MeasuredGround {
  const found = new Findings("plan.json");
  if (stations.length === 0)
    found.stop({
      code: "stations-none",
      place: "survey.stations",
      value: "0 stations",
      message: "The ground is to be known from stations, and there is none.",
      mend: "Enter at least one station with its position and ground height, or give a terrain file.",
    });
  const heights = stations.map((s) => s.ground_m);
  checkEllipsoid(found, heights, "survey.stations", known_heights_m, true);
  found.throwIfErrors();
  const raster = withinCells(found, "terrain.cell_m", choice.cell_m, () =>
    stationSurface(stations, choice.cell_m, choice.reach_m),
  );
  if (raster.values.every((v) => Number.isNaN(v)))
    found.stop({
      code: "stations-reach",
      place: "terrain.reach_m",
      value: choice.reach_m,
      message: `No cell of ${choice.cell_m} m lies within ${choice.reach_m} m of a station or a line between two.`,
      mend: "Choose a longer reach or smaller cells.",
    });
  return { raster, crs: null, vertical: null, warnings: [], surveyed: null };
}

/** Turns the engine's refusal of a grid without end into words for the plan's owner. */
function withinCells(found: Findings, place: string, cell_m: number, make: () => Raster): Raster {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof DomainError && error.code === "too-many-cells")) throw error;
    return found.stop({
      code: "terrain-too-large",
      place,
      value: cell_m,
      message: `In cells of ${cell_m} m the points would fill more than the ${MAX_CELLS} cells that are held; one may lie far from the rest.`,
      mend: "Look for a point with a wrong position, or choose larger cells.",
    });
  }
}
