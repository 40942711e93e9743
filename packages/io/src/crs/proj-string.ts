import type { Crs } from "@causey/engine/site";

/**
 * Datum shifts that stand in for a shift grid this program does not carry: seven parameters as in the datum table of
 * the package proj4 (OSGB36, Potsdam, NZGD49). That they hold within a few metres is from memory.
 */
const GRID_STAND_INS: Readonly<Record<string, string>> = {
  "OSTN15_NTv2_OSGBtoETRS.gsb": "446.448,-125.157,542.06,0.15,0.247,0.842,-20.489",
  "BETA2007.gsb": "598.1,73.7,418.2,0.202,0.045,-2.455,6.7",
  "nzgd2kgrid0005.gsb": "59.47,-5.04,187.44,0.47,-0.1,1.024,-4.5993",
};

const NO_SHIFT = "@null";

/**
 * The PROJ string with which the program computes, or the shift grid that is missing. A shift grid would make the
 * projection throw or give NaN; where a stand-in is known it is replaced, otherwise the system cannot be used.
 */
export function designProj(proj: string): { readonly proj: string } | { readonly missingGrid: string } {
  const grid = /\+nadgrids=("[^"]*"|\S+)/.exec(proj);
  if (grid) {
    const name = grid[1]!;
    // "@null": latitudes of the web maps' sphere are those of WGS 84 as they are; the package knows the word.
    if (name === NO_SHIFT) return { proj };
    const standIn = GRID_STAND_INS[name];
    return standIn === undefined
      ? { missingGrid: name }
      : { proj: proj.replace(grid[0], `+towgs84=${standIn}`) };
  }
  return /\+datum=NAD27\b/.test(proj) ? { missingGrid: "conus, alaska or ntv2_0.gsb (NAD27)" } : { proj };
}

export interface LonLatAccuracy {
  /** good: about a metre or better; metres: several metres; unknown: no datum shift is known, hundreds of metres. */
  readonly grade: "good" | "metres" | "unknown";
  readonly note: string;
}

/**
 * How well longitude and latitude can be turned into this system and back. All design work stays in the system
 * itself and does not depend on it; GPS, GPX and GeoJSON in longitude and latitude do. The grades are judged from
 * the PROJ string alone (from memory, confirm with a mark of known position).
 */
export function lonLatAccuracy(crs: Crs & { kind: "epsg" }): LonLatAccuracy {
  const shift = /\+towgs84=(\S+)/.exec(crs.proj)?.[1];
  const zero = shift?.split(",").every((v) => Number(v) === 0) ?? false;
  const modern =
    crs.proj.includes(`+nadgrids=${NO_SHIFT}`) ||
    /\+datum=(WGS84|NAD83)\b|\+ellps=(GRS80|WGS84)\b/.test(crs.proj);
  if (zero || (shift === undefined && modern))
    return { grade: "good", note: `EPSG:${crs.code} and GPS positions agree to about a metre or two.` };
  if (shift !== undefined)
    return {
      grade: "metres",
      note:
        `Longitude and latitude are turned into EPSG:${crs.code} with one datum shift for the whole country, not ` +
        "with its shift grid: positions from GPS or from GeoJSON in longitude and latitude may be about 5 m off. " +
        "Coordinates given in the grid itself are exact.",
    };
  return {
    grade: "unknown",
    note:
      `No datum shift is known for EPSG:${crs.code}: longitude and latitude could be hundreds of metres off. ` +
      "Give coordinates in the grid itself.",
  };
}
