import { ProblemError } from "@causey/engine/formula";
import type { TerrainChoice } from "@causey/engine/plan";
import type { Start } from "@causey/engine/site";
import type { Station } from "@causey/engine/survey";
import { crsName, type PlanCrs } from "../crs/index.ts";
import { fileNameFault, type PlanFiles } from "../files/index.ts";
import { PLACES_FILE, PLAN_FILE, ZONES_FILE } from "../plan/index.ts";
import { fault } from "../problem/index.ts";
import type { TerrainLook } from "./look-at-terrain.ts";
import { startOnTerrain } from "./start-on-terrain.ts";

/** The site of a plan that begins: its system, its ground with the files that it is read from, and its start. */
export interface FreshSite {
  readonly crs: PlanCrs;
  readonly terrain: TerrainChoice;
  readonly starts: readonly Start[];
  readonly stations: readonly Station[];
  readonly files: PlanFiles;
}

/** What the user says of a terrain file. */
export interface SiteTold {
  /** System of the file; null takes the one that the file names. */
  readonly crs: PlanCrs | null;
  /** Name of the vertical datum; empty takes the file's own name for it. */
  readonly datum: string;
  /** Where the walkway begins [m on the grid]; null = not known yet. */
  readonly start: readonly [number, number] | null;
}

/**
 * The site that a terrain file gives. A start that is not known yet is put at the edge of the known ground and says
 * so in its name. A file that names no system lies in the told one: who says it has checked it.
 *
 * beside  what belongs to the terrain, such as its .prj
 * Throws `ProblemError` when the system is neither named by the file nor told, or the file names another one.
 */
export function siteOfTerrain(look: TerrainLook, told: SiteTold, beside: PlanFiles = new Map()): FreshSite {
  const crs = systemOf(look, told.crs);
  const file = fileName(look);
  const datum = told.datum.trim() || (look.vertical?.name ?? `Datum of ${file} (its name is not told)`);
  const isTold = look.crs === null && "epsg" in crs;
  return {
    crs,
    terrain: { kind: "grid", file, unit: look.unit, datum, ...(isTold ? { crs_confirmed: true } : {}) },
    starts: [told.start === null ? startOnTerrain(look.raster) : startAt(told.start)],
    stations: [],
    files: new Map([...beside, [file, look.bytes]]),
  };
}

/** A site whose terrain is still to be put into the folder, as terrain.tif; a start that is not known is left out. */
export const siteToCome = (
  crs: PlanCrs,
  datum: string,
  start: SiteTold["start"],
  unit: "m" | "ft",
): FreshSite => ({
  crs,
  terrain: {
    kind: "grid",
    file: "terrain.tif",
    unit,
    datum: datum.trim() || "Datum of the terrain (its name is not told)",
  },
  starts: start === null ? [] : [startAt(start)],
  stations: [],
  files: new Map(),
});

/** Ground is taken as known so far beside a station, in cells of this size [m]. */
const STATIONS = { kind: "stations", cell_m: 0.5, reach_m: 10 } as const;

/**
 * The site where there is no terrain: the start is the first station, and ground is known round it alone.
 *
 * ground_m  height of the ground at the start, on the datum
 */
export function siteOfStart(
  crs: PlanCrs,
  datum: string,
  start: readonly [number, number],
  ground_m: number,
): FreshSite {
  const [x, y] = start;
  const station = { id: "ST1", x, y, ground_m, probe_m: null, water_m: null, date: null };
  return {
    crs,
    terrain: { ...STATIONS, datum: datum.trim() },
    starts: [startAt(start)],
    stations: [station],
    files: new Map(),
  };
}

const startAt = ([x, y]: readonly [number, number]): Start => ({ id: "S1", name: "Start", x, y });

/** The file's own name where a plan folder can hold it. */
function fileName({ name, bytes }: TerrainLook): string {
  const isTaken = [PLAN_FILE, PLACES_FILE, ZONES_FILE, "prices.csv", "readme.txt"].includes(
    name.toLowerCase(),
  );
  if (!isTaken && !name.startsWith(".") && !name.includes("/") && fileNameFault(name) === null) return name;
  return bytes[0] === 0x49 || bytes[0] === 0x4d ? "terrain.tif" : "terrain.asc";
}

function systemOf({ name, crs }: TerrainLook, told: PlanCrs | null): PlanCrs {
  const own = crs === null ? null : { epsg: crs.code };
  if (own !== null && (told === null || ("epsg" in told && told.epsg === own.epsg))) return own;
  if (own === null && told !== null) return told;
  const problem =
    own === null
      ? {
          code: "crs-missing",
          place: "coordinate system",
          message: `${name} does not say which coordinate system it is in.`,
          mend: "Give the EPSG code of the system that it was made in (such as EPSG:27700), or say that it is on a local grid.",
        }
      : {
          code: "crs-mismatch",
          place: "coordinate system",
          value: crsName(own),
          message: `The terrain is in ${crsName(own)}, not in ${crsName(told!)}.`,
          mend: `Leave the system out to take ${crsName(own)}, or bring the terrain into ${crsName(told!)}.`,
        };
  throw new ProblemError([fault(name, problem)]);
}
