import type { CuttingProblem } from "@causey/engine/fabrication";
import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";

const root = resolve(import.meta.dirname, "../../../..");
const folder = resolve(root, process.env["CAUSEY_DATA"] ?? "../shared/data", "cutting-1d");

export interface PublishedCase {
  readonly file: string;
  readonly source: string;
  readonly optimum: number;
}

const sources: Readonly<Record<string, string>> = {
  falkenauer: "Falkenauer (1996)",
  scholl: "Scholl, Klein and Juergens (1997)",
  schwerin: "Schwerin and Waescher (1997)",
};

/** The instances with their optimum; empty, and said so once, where the open data is not there. */
export function publishedCases(): PublishedCase[] {
  if (!existsSync(folder)) {
    console.info('left out: open data "cutting-1d" is not in CAUSEY_DATA');
    return [];
  }
  const [, ...lines] = readFileSync(resolve(folder, "optima.csv"), "utf8").trim().split("\n");
  return lines.map((line) => {
    const cells = line.split(",");
    return { file: cells[0]!, source: sources[cells[1]!.split("/")[0]!]!, optimum: Number(cells[9]) };
  });
}

/** Number of kinds, stock length, then length and count of each kind. */
export function readCase(file: string): CuttingProblem {
  const [kinds, length_mm, ...pairs] = readFileSync(resolve(folder, file), "utf8")
    .trim()
    .split(/\s+/)
    .map(Number);
  return {
    kerf_mm: 0,
    stock: [{ length_mm: length_mm!, price: 1 }],
    pieces: Array.from({ length: kinds! }, (_, k) => ({
      length_mm: pairs[2 * k]!,
      count: pairs[2 * k + 1]!,
    })),
  };
}
