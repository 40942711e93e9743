import type { Crs, Raster } from "@causey/engine/site";
import { rasterExtent } from "@causey/engine/site";
import type { Plan } from "@causey/engine/plan";
import { comparePrj, crsName, epsgInfo, gridScale, toLonLat, type EpsgInfo } from "../crs/index.ts";
import type { PlanFiles } from "../files/index.ts";
import { Findings } from "../problem/index.ts";
import type { Terrain } from "../terrain/index.ts";

/**
 * A terrain file that names no coordinate system may be anywhere. It is accepted on a local grid; for an EPSG system a
 * .prj file of the same name must agree, or the plan's owner must say that it was checked.
 */
export function checkTerrainCrs(
  found: Findings,
  terrain: Terrain,
  entry: Plan["terrain"],
  crs: Crs,
  files: PlanFiles,
): void {
  if (terrain.crs !== null || crs.kind === "local" || entry.kind !== "grid") return;
  const prjName = entry.file.replace(/\.[^./]*$/, ".prj");
  const prj = files.get(prjName);
  const answer =
    prj === undefined ? "unreadable" : comparePrj(new TextDecoder().decode(prj.subarray(0, 20_000)), crs);
  if (answer === "agrees") return;
  if (answer === "differs")
    found.error({
      code: "crs-mismatch",
      place: prjName,
      value: prjName,
      message: `The file ${prjName} describes another system than the plan's (${crsName(crs)}).`,
      mend: `Bring the terrain into ${crsName(crs)}, or correct "crs" in plan.json or the .prj file.`,
    });
  else if (entry.crs_confirmed !== true)
    found.error({
      code: "crs-missing",
      place: "coordinate system",
      message: `The terrain does not say which coordinate system it is in; the plan is in ${crsName(crs)}.`,
      mend: `When you have checked that it is in ${crsName(crs)}, write "crs_confirmed": true into "terrain" in plan.json; otherwise export it with its system, or state a local grid in "crs".`,
    });
}

/** Most that a metre on the grid may differ from a metre on the ground: modules of the kit would not meet beyond it. */
const MOST_STRETCH = 0.005;

/** Refuses a grid that stretches lengths at the site, and terrain that lies where the grid has no meaning. */
export function checkStretch(found: Findings, raster: Raster, crs: Crs): void {
  if (crs.kind === "local") return;
  const [west, south, east, north] = rasterExtent(raster);
  const scale = gridScale(crs, (west + east) / 2, (south + north) / 2);
  if (scale !== null && Math.abs(scale - 1) <= MOST_STRETCH) return;
  found.error({
    code: "crs-stretch",
    place: "extent",
    value: extentText(raster),
    message:
      scale === null
        ? `The terrain lies where ${crsName(crs)} has no meaning.`
        : `Where the terrain lies, 1 m on the ground is ${scale.toFixed(3)} m in ${crsName(crs)}.`,
    mend: "Check that the terrain is in this system, or choose the UTM zone or national grid of the site.",
  });
}

/** Ground this far outside the area of a system is named [degrees]: sites lie across the border of a zone at times. */
const AREA_SLACK_DEG = 0.5;

/** Ground far outside the area that its system is made for: most likely east and north are exchanged. */
export async function checkArea(found: Findings, raster: Raster, crs: Crs): Promise<void> {
  if (crs.kind === "local") return;
  const info = await epsgInfo(crs.code);
  const [west, south, east, north] = rasterExtent(raster);
  const at = toLonLat(crs)((west + east) / 2, (south + north) / 2);
  if (info === null || info.bounds === null || at === null || isWithin(at, info.bounds)) return;
  found.warn({
    code: "crs-area",
    place: "extent",
    value: extentText(raster),
    message: `In ${crsName(crs)} the ground lies at ${degrees(at)}, outside the area that this system is made for: ${info.area}`,
    mend: "Check that the columns of east and north are not exchanged, and that the file is in this system.",
  });
}

function isWithin([lon, lat]: readonly [number, number], bounds: NonNullable<EpsgInfo["bounds"]>): boolean {
  const [west, south, east, north] = bounds;
  const [w, e] = [west - AREA_SLACK_DEG, east + AREA_SLACK_DEG];
  const isAcross = west <= east ? lon >= w && lon <= e : lon >= w || lon <= e;
  return isAcross && lat >= south - AREA_SLACK_DEG && lat <= north + AREA_SLACK_DEG;
}

const degrees = ([lon, lat]: readonly [number, number]): string =>
  `${Math.abs(lat).toFixed(3)} ${lat < 0 ? "S" : "N"}, ${Math.abs(lon).toFixed(3)} ${lon < 0 ? "W" : "E"}`;

/** When the file itself names a vertical system with another name, the plan's owner should look again. */
export function checkFileDatum(found: Findings, terrain: Terrain, entry: Plan["terrain"]): void {
  if (terrain.vertical === null) return;
  const [file, plan] = [terrain.vertical.name, entry.datum].map(plainName);
  if (file!.includes(plan!) || plan!.includes(file!)) return;
  found.warn({
    code: "datum-of-file",
    place: "vertical system",
    value: `${terrain.vertical.name} (EPSG:${terrain.vertical.code})`,
    message: `The file names "${terrain.vertical.name}" as its vertical system, plan.json says "${entry.datum}".`,
    mend: "Make sure that both mean the same datum.",
  });
}

/** Letters and digits only, without the word "height". */
export const plainName = (name: string): string =>
  name.toLowerCase().replaceAll(/height|datum|[^\p{L}\p{N}]/gu, "");

export const extentText = (raster: Raster): string => {
  const [west, south, east, north] = rasterExtent(raster).map((v) => v.toFixed(1));
  return `east ${west} to ${east}, north ${south} to ${north}`;
};
