import { readFolder } from "@causey/io/folder";
import type { ReadPlan } from "@causey/io/plan";
import { readWholePlan } from "@causey/runtime/derive";

/** Reads a plan folder; every problem at once. */
export const readPlanFolder = async (folder: string): Promise<ReadPlan> =>
  readWholePlan(await readFolder(folder));
