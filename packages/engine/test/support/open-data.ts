import { existsSync, readFileSync, readdirSync } from "node:fs";
import { resolve } from "node:path";

const root = resolve(import.meta.dirname, "../../../..");
/** Folder of the open test data: CAUSEY_DATA, by default beside the repository. It is only read, never copied. */
export const dataFolder = resolve(root, process.env["CAUSEY_DATA"] ?? "../shared/data");

/** Whether a set of open data is there; says so once when it is not. */
export function hasData(set: string): boolean {
  const found = existsSync(resolve(dataFolder, set));
  if (!found) console.info(`left out: open data "${set}" is not in CAUSEY_DATA`);
  return found;
}

export const dataText = (set: string, file: string): string =>
  readFileSync(resolve(dataFolder, set, file), "utf8");
export const dataBytes = (set: string, file: string): Uint8Array =>
  new Uint8Array(readFileSync(resolve(dataFolder, set, file)));
export const dataFiles = (set: string): string[] => readdirSync(resolve(dataFolder, set)).sort();
