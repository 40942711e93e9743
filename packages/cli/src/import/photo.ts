import { ProblemError } from "@causey/engine/formula";
import type { Photo } from "@causey/engine/plan";
import type { Crs } from "@causey/engine/site";
import { planCrsOf, sameCrs } from "@causey/io/crs";
import { jsonBytes } from "@causey/io/json";
import { readPhoto, readWorldFile, WORLD_ENDINGS } from "@causey/io/photo";
import { PLAN_FILE } from "@causey/io/plan";
import { readFile } from "node:fs/promises";
import { basename, extname } from "node:path";
import { UsageError } from "../shell/index.ts";
import { assumedSystem } from "./site-part.ts";

interface Told {
  /** Path of the world file; the one beside the picture when left out. */
  readonly world: string | undefined;
  /** The user's word for the picture's system. */
  readonly system: string | undefined;
  readonly opacity: string | undefined;
}

/**
 * The folder with a picture under its map: the file itself, and plan.json naming it. Throws `ProblemError` for a
 * picture that does not say, and nobody says, where it lies and in which system.
 */
export async function withPhoto(
  files: ReadonlyMap<string, Uint8Array>,
  path: string,
  crs: Crs,
  told: Told,
): Promise<{
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly photo: Photo;
  readonly notes: ReturnType<typeof readPhoto>;
}> {
  const [name, bytes] = [basename(path), new Uint8Array(await readFile(path))];
  const world = await worldOf(path, told.world);
  const photo: Photo = {
    file: name,
    world: world === null ? null : readWorldFile(basename(world.path), world.bytes),
    ...(isSaidToBeOnSite(name, told.system, crs) ? { crs_confirmed: true } : {}),
    ...(told.opacity === undefined ? {} : { opacity: opacityOf(told.opacity) }),
  };
  const notes = readPhoto(photo, bytes, planCrsOf(crs));
  const plan = JSON.parse(new TextDecoder().decode(files.get(PLAN_FILE))) as object;
  return {
    files: new Map([
      ...files,
      [name, bytes],
      [PLAN_FILE, jsonBytes({ ...plan, photo } as never, "as-given")],
    ]),
    photo,
    notes,
  };
}

async function worldOf(
  picture: string,
  told: string | undefined,
): Promise<{ readonly path: string; readonly bytes: Uint8Array } | null> {
  if (told !== undefined) return { path: told, bytes: new Uint8Array(await readFile(told)) };
  const stem = picture.slice(0, picture.length - extname(picture).length);
  for (const ending of WORLD_ENDINGS) {
    const path = `${stem}${ending}`;
    const bytes = await readFile(path).catch(() => null);
    if (bytes) return { path, bytes: new Uint8Array(bytes) };
  }
  return null;
}

function isSaidToBeOnSite(file: string, system: string | undefined, crs: Crs): boolean {
  const said = assumedSystem(system, crs);
  if (said === undefined) return false;
  if (said !== "lon-lat" && sameCrs(said, planCrsOf(crs))) return true;
  throw new ProblemError([
    {
      severity: "error",
      code: "crs-mismatch",
      file,
      place: "coordinate system",
      value: system!,
      message: `The picture is said to be in ${system}, which is not the plan's system. Pictures are not reprojected.`,
      mend: "Bring it into the plan's system in a mapping program, then say --system site.",
    },
  ]);
}

function opacityOf(text: string): number {
  const value = Number(text);
  if (text.trim() !== "" && value > 0 && value <= 1) return value;
  throw new UsageError(`--opacity ${text}: give a share above 0 and not above 1, such as 0.7.`);
}
