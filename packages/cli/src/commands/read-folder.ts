import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import { validateKit } from "@causey/engine/kit";
import { readFolder } from "@causey/io/folder";
import { readPlan, type ReadPlan } from "@causey/io/plan";

/** Reads a plan folder with the ready kits and tables of this build; every problem at once. */
export async function readPlanFolder(folder: string): Promise<ReadPlan> {
  return readPlan(await readFolder(folder), { readyKits, validateKit: (kit) => validateKit(kit, tables) });
}
