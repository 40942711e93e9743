import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";

const root = process.env["CAUSEY_DATA"] ?? resolve(import.meta.dirname, "../../../../../shared/data");

/** Whether a set of the open data is there; says so on the console when it is not, and the test is left out. */
export function hasOpenData(set: string): boolean {
  const isThere = existsSync(resolve(root, set));
  if (!isThere) console.warn(`open data "${set}" is not there (set CAUSEY_DATA): its tests are left out`);
  return isThere;
}

export const openDataPath = (path: string): string => resolve(root, path);

export const openData = (path: string): Uint8Array => new Uint8Array(readFileSync(openDataPath(path)));
