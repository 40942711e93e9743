import type { Problem } from "@causey/engine/formula";
import type { Plan, Results } from "@causey/engine/plan";
import { crsOf } from "@causey/io/crs";
import { layoutGeoPackage, layoutGpx } from "@causey/io/exports";
import { withoutHidden } from "@causey/io/results";
import { sqlite } from "../files/sqlite.ts";

/** By the ending of the file. */
export type LayoutKind = "gpx" | "gpkg";

export interface LayoutFile {
  readonly bytes: Uint8Array;
  readonly type: string;
  readonly warnings: readonly Problem[];
}

/** The layout without any trace of hidden zones. Throws `ProblemError`, for GPX on a local grid above all. */
export async function layoutFile(kind: LayoutKind, plan: Plan, results: Results): Promise<LayoutFile> {
  const crs = await crsOf(plan.crs);
  const shown = withoutHidden(results, plan.zones);
  if (kind === "gpx") return { ...layoutGpx(shown, crs), type: "application/gpx+xml" };
  const bytes = await layoutGeoPackage(shown, crs, sqlite);
  return { bytes, type: "application/geopackage+sqlite3", warnings: [] };
}
