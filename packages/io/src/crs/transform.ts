import { DomainError } from "@causey/engine/units";
import type { Crs } from "@causey/engine/site";
import proj4 from "proj4";

/** Maps one point; null when the projection has no answer there (a pole, the far side of the earth). */
export type PointMap = (a: number, b: number) => readonly [number, number] | null;

const LON_LAT = "+proj=longlat +datum=WGS84 +no_defs";

/** Longitude and latitude [degrees, WGS 84] to east and north [m]. Throws `DomainError` for a local grid. */
export const toGrid = (crs: Crs): PointMap => {
  const map = converter(crs);
  return (lon, lat) => finite(() => map.forward([lon, lat]));
};

/** East and north [m] to longitude and latitude [degrees, WGS 84]. Throws `DomainError` for a local grid. */
export const toLonLat = (crs: Crs): PointMap => {
  const map = converter(crs);
  return (x, y) => finite(() => map.inverse([x, y]));
};

interface Converter {
  readonly forward: (point: [number, number]) => readonly number[];
  readonly inverse: (point: [number, number]) => readonly number[];
}

function converter(crs: Crs): Converter {
  if (crs.kind === "local") throw new DomainError("local-grid-has-no-position", { name: crs.name });
  return proj4(LON_LAT, crs.proj);
}

function finite(map: () => readonly number[]): readonly [number, number] | null {
  try {
    const [a, b] = map();
    return Number.isFinite(a) && Number.isFinite(b) ? [a!, b!] : null;
  } catch {
    return null;
  }
}

/** Whether the projection can be set up at all. */
export function isComputable(proj: string): boolean {
  try {
    proj4(LON_LAT, proj);
    return true;
  } catch {
    return false;
  }
}

/** WGS 84: equatorial radius [m] and first eccentricity squared (NIMA TR8350.2, table 3.1 and 3.3, from memory). */
const EQUATOR_RADIUS = 6_378_137;
const ECCENTRICITY_2 = 0.006_694_379_990_14;

/**
 * Length on the grid over length on the ground near a point, along the axis that is worse. 1 is true; UTM stays
 * within 0.9996 and 1.001. Null when the projection has no answer there.
 */
export function gridScale(crs: Crs & { kind: "epsg" }, x: number, y: number): number | null {
  const back = toLonLat(crs);
  const step = 100;
  const [west, east, south, north] = [
    back(x - step, y),
    back(x + step, y),
    back(x, y - step),
    back(x, y + step),
  ];
  if (!west || !east || !south || !north) return null;
  const ratios = [groundLength(west, east), groundLength(south, north)].map((ground) => (2 * step) / ground);
  return ratios.reduce((worst, r) => (Math.abs(r - 1) > Math.abs(worst - 1) ? r : worst));
}

/** Length of a short line on the ellipsoid between two points in degrees [m]: radii of curvature at its middle. */
function groundLength(a: readonly [number, number], b: readonly [number, number]): number {
  const rad = Math.PI / 180;
  const lat = ((a[1] + b[1]) / 2) * rad;
  const w = 1 - ECCENTRICITY_2 * Math.sin(lat) ** 2;
  const alongMeridian = (EQUATOR_RADIUS * (1 - ECCENTRICITY_2)) / w ** 1.5;
  const alongParallel = (EQUATOR_RADIUS / Math.sqrt(w)) * Math.cos(lat);
  return Math.hypot((b[0] - a[0]) * rad * alongParallel, (b[1] - a[1]) * rad * alongMeridian);
}
