import type { Plan } from "@causey/engine/plan";
import type { Raster } from "@causey/engine/site";
import { groundFile, groundInputs, siteGround } from "@causey/io/ground";
import { hashJson } from "@causey/engine/formula";
import type { FilesBeside } from "./options.ts";

/** Terrains that are kept read. Each is 4 bytes a cell, so that four of 2 million cells take 32 MB. */
const KEPT = 4;

/**
 * The terrain of a plan, read once and kept while it is among the last used: reading takes longer than everything
 * else that an edit needs. Terrains are told apart by their contents, so one that changed is read anew.
 */
export function terrainShelf(): (plan: Plan, beside: FilesBeside) => Promise<Raster> {
  const shelf = new Map<string, Promise<Raster>>();
  return (plan, beside) => {
    const file = groundFile(plan.terrain);
    const key = hashJson([file === null ? null : beside.hashOf(file), groundInputs(plan)]);
    const reading = shelf.get(key) ?? readFrom(plan, beside);
    shelf.delete(key);
    shelf.set(key, reading);
    for (const oldest of [...shelf.keys()].slice(0, -KEPT)) shelf.delete(oldest);
    reading.catch(() => shelf.delete(key));
    return reading;
  };
}

async function readFrom(plan: Plan, beside: FilesBeside): Promise<Raster> {
  const file = groundFile(plan.terrain);
  const bytes = file === null ? null : await beside.read(file);
  if (file !== null && !bytes) throw new Error(`the plan's terrain ${file} is not in the store`);
  return (await siteGround(plan, bytes, plan.crs)).raster;
}
