import { ProblemError } from "@causey/engine/formula";
import type { Crs } from "@causey/engine/site";
import { crsOf, planCrsOf } from "@causey/io/crs";
import { PLAN_FILE } from "@causey/io/plan";
import type { PlaceDefaults } from "@causey/io/vector";
import { UsageError } from "../shell/index.ts";

export interface SitePart {
  readonly crs: Crs;
  /** What plots without their own distances take. */
  readonly plot_defaults: PlaceDefaults;
}

interface Document {
  readonly crs?: { readonly epsg?: unknown; readonly local?: unknown };
  readonly plot_defaults?: Partial<Record<keyof PlaceDefaults, unknown>>;
}

/** What an import needs of plan.json: system and distances at plots. The rest of the plan may still be unfinished. */
export async function sitePart(plan: Uint8Array | undefined): Promise<SitePart> {
  const { crs, plot_defaults: given = {} } = documentOf(plan) as Document;
  const { keep_off_m, reach_m } = given;
  const plot_defaults = {
    ...(typeof keep_off_m === "number" ? { keep_off_m } : {}),
    ...(typeof reach_m === "number" ? { reach_m } : {}),
  };
  if (typeof crs?.epsg === "number") return { crs: await crsOf({ epsg: crs.epsg }), plot_defaults };
  if (typeof crs?.local === "string") return { crs: await crsOf({ local: crs.local }), plot_defaults };
  throw refused(
    "crs",
    "The plan names no coordinate system.",
    'Write "crs": {"epsg": CODE} or {"local": NAME}.',
  );
}

function documentOf(plan: Uint8Array | undefined): object {
  if (plan === undefined)
    throw refused("file", "The folder holds no plan.json.", 'Make a plan folder with "causey new".');
  try {
    const value: unknown = JSON.parse(new TextDecoder().decode(plan));
    if (typeof value === "object" && value !== null) return value;
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
  }
  throw refused("file", "plan.json is not a JSON object.", 'Mend it; "causey check" says where.');
}

const refused = (place: string, message: string, mend: string): ProblemError =>
  new ProblemError([
    { severity: "error", code: "import-plan", file: PLAN_FILE, place, value: "", message, mend },
  ]);

/** The user's word for the system of a file that does not say it: "site", "lon-lat", or an EPSG code. */
export function assumedSystem(
  word: string | undefined,
  crs: Crs,
): { readonly epsg: number } | { readonly local: string } | "lon-lat" | undefined {
  if (word === undefined) return undefined;
  if (word === "lon-lat") return word;
  if (word === "site") return planCrsOf(crs);
  const code = /^(?:EPSG:)?(\d{4,6})$/i.exec(word)?.[1];
  if (code === undefined)
    throw new UsageError(`--system ${word}: give "site", "lon-lat" or an EPSG code such as EPSG:27700.`);
  return { epsg: Number(code) };
}
