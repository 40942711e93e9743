import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Results } from "@causey/engine/plan";
import type { Crs } from "@causey/engine/site";
import type { SqliteHook } from "../geopackage/index.ts";
import { layoutGeoPackage } from "./layout-geopackage.ts";
import { layoutGpx } from "./layout-gpx.ts";

export interface ExchangeFiles {
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** How far off receivers may be, or why there is no file for them. */
  readonly warnings: readonly Problem[];
}

/**
 * The layout for other programs: layout.gpkg with joints, parts, feet and branches, and layout.gpx for a handheld
 * receiver. On a local grid there is no longitude and latitude, so the latter is left out with a warning that says so.
 */
export async function exchangeFiles(
  results: Results,
  crs: Crs,
  sqlite: SqliteHook = {},
): Promise<ExchangeFiles> {
  const gpx = gpxOrWhyNot(results, crs);
  const gpkg = await layoutGeoPackage(results, crs, sqlite);
  return {
    files: new Map([["layout.gpkg", gpkg], ...(gpx.bytes ? [["layout.gpx", gpx.bytes] as const] : [])]),
    warnings: gpx.warnings,
  };
}

function gpxOrWhyNot(
  results: Results,
  crs: Crs,
): { readonly bytes: Uint8Array | null; readonly warnings: readonly Problem[] } {
  try {
    return layoutGpx(results, crs);
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { bytes: null, warnings: error.problems.map((p) => ({ ...p, severity: "warning" as const })) };
  }
}
