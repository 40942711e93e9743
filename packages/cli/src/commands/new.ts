import { ProblemError } from "@causey/engine/formula";
import { crsOf } from "@causey/io/crs";
import type { PlanFiles } from "@causey/io/files";
import {
  freshPlanFiles,
  freshSystem,
  lookAtTerrain,
  siteOfTerrain,
  siteToCome,
  type FreshSite,
  type SiteTold,
} from "@causey/io/fresh";
import { readWholePlan } from "@causey/runtime/derive";
import { readFile } from "node:fs/promises";
import { basename, resolve } from "node:path";
import { startPlace } from "../fresh/start-place.ts";
import {
  problemLines,
  readArgs,
  UsageError,
  word,
  writeOut,
  type Shell,
  type Values,
} from "../shell/index.ts";

const form =
  "causey new DIR [--terrain FILE] [--crs EPSG:CODE|local] [--datum NAME] [--start EAST,NORTH | --start-lat-lon LAT,LON] [--height-unit m|ft] [--name NAME] [--site NAME] [--units us|metric] [--force]\n" +
  "--terrain takes a GeoTIFF or ASCII grid into the folder, and the coordinate system from it; --crs says it where the file does not.";

const text = { type: "string" } as const;
const options = {
  terrain: text,
  crs: text,
  datum: text,
  start: text,
  "start-lat-lon": text,
  "height-unit": text,
  name: text,
  site: text,
  units: text,
  force: { type: "boolean" },
} as const;

/**
 * `causey new DIR`: a plan folder to start from, with a terrain where one is given. Never writes over a folder that is
 * there, and writes nothing when the terrain makes no plan that can be read.
 */
export async function runNew(args: readonly string[], shell: Shell): Promise<number> {
  const { values, places } = readArgs(args, options, ["DIR"], form);
  const folder = resolve(places[0]!);
  const [site, units] = [await siteOf(values), oneOf(values, "units", ["us", "metric"])];
  const site_name = word(values, "site");
  const files = freshPlanFiles(word(values, "name") ?? basename(folder), {
    ...(site === null ? {} : { site }),
    ...(site_name === undefined ? {} : { site_name }),
    ...(units === undefined ? {} : { units }),
  });
  if (site !== null && values["terrain"] !== undefined) await readOnce(files, shell);
  await writeOut(folder, files, values["force"] === true);
  shell.out(
    `${places[0]} holds a plan to start from${site === null ? "" : ` in ${systemWords(site)}`}. Read its README.txt, then run: causey check ${places[0]}`,
  );
  return 0;
}

/** Reads the plan as "causey check" will: throws `ProblemError` for what is wrong, tells what is only to be noted. */
async function readOnce(files: PlanFiles, shell: Shell): Promise<void> {
  const read = await readWholePlan(files);
  if (!read.ok) throw new ProblemError(read.problems);
  if (read.warnings.length > 0) shell.error(problemLines(read.warnings));
}

async function siteOf(values: Values): Promise<FreshSite | null> {
  const crs = freshSystem(word(values, "crs") ?? "");
  const datum = word(values, "datum") ?? "";
  const path = word(values, "terrain");
  if (path === undefined) return withoutTerrain(values, { crs, datum });
  const bytes = new Uint8Array(await readFile(resolve(path)));
  const look = await lookAtTerrain(basename(path), bytes, unitOf(values));
  const start = await startPlace(values, crs ?? (look.crs && { epsg: look.crs.code }));
  return siteOfTerrain(look, { crs, datum, start }, await prjBeside(path));
}

const unitOf = (values: Values): "m" | "ft" | undefined => oneOf(values, "height-unit", ["m", "ft"]);

/** A site whose terrain is still to be put into the folder; null where nothing is said of it either. */
async function withoutTerrain(values: Values, told: Omit<SiteTold, "start">): Promise<FreshSite | null> {
  const given = ["crs", "datum", "start", "start-lat-lon"].filter((key) => values[key] !== undefined);
  if (given.length === 0) return null;
  if (told.crs === null)
    throw new UsageError(`Give --terrain FILE, or say the system with --crs.\nForm: ${form}`);
  await crsOf(told.crs);
  const start = await startPlace(values, told.crs);
  return siteToCome(told.crs, told.datum, start, unitOf(values) ?? "m");
}

/** The .prj of an ASCII grid goes with it: the reader holds the plan's system against it. */
async function prjBeside(path: string): Promise<ReadonlyMap<string, Uint8Array>> {
  const prj = path.replace(/\.[^./\\]*$/, ".prj");
  if (prj === path) return new Map();
  try {
    return new Map([[basename(prj), new Uint8Array(await readFile(resolve(prj)))]]);
  } catch {
    return new Map();
  }
}

function oneOf<T extends string>(values: Values, key: string, words: readonly T[]): T | undefined {
  const told = word(values, key);
  if (told === undefined) return undefined;
  const known = words.find((w) => w === told);
  if (known === undefined) throw new UsageError(`--${key} ${told}: give ${words.join(" or ")}.`);
  return known;
}

const systemWords = ({ crs }: FreshSite): string =>
  "epsg" in crs ? `EPSG:${crs.epsg}` : `the local grid "${crs.local}"`;
