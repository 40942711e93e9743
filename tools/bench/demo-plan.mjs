import { readFolder } from "@causey/io/folder";
import { readWholePlan } from "@causey/runtime/derive";
import { join, resolve } from "node:path";

export const root = resolve(import.meta.dirname, "../..");

/** The demo folder, read as every shell reads it. */
export async function demoPlan() {
  const read = await readWholePlan(await readFolder(join(root, "examples/salt-meadow")));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
}
