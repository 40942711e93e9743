import type { Problem } from "@causey/engine/formula";
import type { Raster } from "@causey/engine/site";
import { M_PER_FT } from "@causey/engine/units";
import { crsName, epsgInfo, type EpsgInfo, type PlanCrs } from "../crs/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { readAsciiGrid } from "./ascii-grid.ts";
import { checkFillValues } from "./fill-values.ts";
import type { FileGrid } from "./grid.ts";
import { readGeoTiff } from "./geotiff.ts";
import { noteOddities } from "./oddities.ts";

export interface TerrainOptions {
  /** Unit of the heights in the file; feet are international feet, 0.3048 m exactly. */
  readonly unit: "m" | "ft";
  /** The plan's horizontal system: a file that names another one is refused. */
  readonly expectedCrs?: PlanCrs;
}

export interface Terrain {
  /** Heights in metres, rows from south to north, cell centres. */
  readonly raster: Raster;
  /** The horizontal system that the file names; null when it names none. */
  readonly crs: EpsgInfo | null;
  /** The vertical system that the file names; null when it names none, as nearly all do. */
  readonly vertical: EpsgInfo | null;
  readonly warnings: readonly Problem[];
}

/**
 * Reads terrain from a GeoTIFF or an ESRI ASCII grid, told apart by their first bytes. Works in browser and Node.
 *
 * name   file name, for messages
 * bytes  the whole file; at most 25 million cells
 * Throws `ProblemError` with everything found: sizes and offsets are checked against the length of the file before
 * memory is taken for them. Horizontal units must be metres; rotated grids, several bands and degrees are refused.
 */
export async function readTerrain(
  name: string,
  bytes: Uint8Array,
  options: TerrainOptions,
): Promise<Terrain> {
  const found = new Findings(name);
  const read = isTiff(bytes)
    ? await readGeoTiff(found, bytes, options.unit)
    : { grid: readAsciiGrid(found, bytes), crs: null, vertical: null };
  const crs = read.crs === null ? null : await checkCrs(found, read.crs, options.expectedCrs);
  const vertical = read.vertical === null ? null : await epsgInfo(read.vertical);
  checkFillValues(found, read.grid, options.unit === "m" ? 1 : 1 / M_PER_FT);
  checkAnyGround(found, read.grid);
  found.throwIfErrors();
  noteOddities(found, read.grid);
  return { raster: toRaster(read.grid, options.unit), crs, vertical, warnings: found.warnings };
}

/** "II" or "MM", then 42 for TIFF or 43 for BigTIFF. */
function isTiff(bytes: Uint8Array): boolean {
  const [a, b, c, d] = bytes;
  const little = a === 0x49 && b === 0x49 && (c === 42 || c === 43) && d === 0;
  return little || (a === 0x4d && b === 0x4d && c === 0 && (d === 42 || d === 43));
}

async function checkCrs(
  found: Findings,
  code: number,
  expected: PlanCrs | undefined,
): Promise<EpsgInfo | null> {
  if (expected !== undefined && !("epsg" in expected && expected.epsg === code))
    found.error({
      code: "crs-mismatch",
      place: "coordinate system",
      value: `EPSG:${code}`,
      message: `The terrain is in EPSG:${code}, the plan in ${crsName(expected)}.`,
      mend: `Bring the terrain into ${crsName(expected)}, or set "crs" in plan.json to {"epsg": ${code}} and move the places with it.`,
    });
  const info = await epsgInfo(code);
  if (info === null)
    found.warn({
      code: "crs-unknown",
      place: "coordinate system",
      value: `EPSG:${code}`,
      message: `The terrain names EPSG:${code}, which is not in the register of coordinate systems.`,
      mend: "Check the file's coordinate system.",
    });
  return info;
}

function checkAnyGround(found: Findings, grid: FileGrid): void {
  if (grid.values.every((v) => Number.isNaN(v)))
    found.error({
      code: "terrain-empty",
      place: "all cells",
      value: `${grid.cols} x ${grid.rows} cells`,
      message: `No cell of ${quote(found.file)} holds a height.`,
      mend: "Check the no-data value it declares, and that the right file was taken.",
    });
}

/** Multiplied in double precision, so that feet become metres exactly before the value is rounded to 32 bits. */
function toRaster(grid: FileGrid, unit: "m" | "ft"): Raster {
  const { cols, rows, x0, y0, dx, dy, values } = grid;
  if (unit === "ft") for (let i = 0; i < values.length; i++) values[i] = values[i]! * M_PER_FT;
  return { cols, rows, x0, y0, dx, dy, values };
}
