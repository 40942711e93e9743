import { Findings } from "../problem/index.ts";

/** Terms A, D, B, E, C, F: the middle of pixel (column, row) lies at x = A col + B row + C, y = D col + E row + F. */
export type World = readonly [number, number, number, number, number, number];

/** Endings of world files. */
export const WORLD_ENDINGS = [".jgw", ".jpgw", ".pgw", ".pngw", ".tfw", ".tifw", ".wld"] as const;

export const isWorldName = (name: string): boolean =>
  WORLD_ENDINGS.some((ending) => name.toLowerCase().endsWith(ending));

/** Reads a world file: six numbers, a line each. Throws `ProblemError` for anything else. */
export function readWorldFile(name: string, bytes: Uint8Array): World {
  const found = new Findings(name);
  const lines = new TextDecoder().decode(bytes.subarray(0, 2000)).trim().split(/\s+/);
  const bad = lines.findIndex((line) => !/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(line));
  if (lines.length !== 6 || bad >= 0)
    found.stop({
      code: "photo-world",
      place: bad >= 0 ? `line ${bad + 1}` : `${lines.length} lines`,
      value: bad >= 0 ? lines[bad] : `${lines.length} numbers`,
      message: "A world file holds six numbers, a line each, with decimal points; this one does not.",
      mend: "Export the picture again with its world file (.jgw, .pgw), or as a GeoTIFF.",
    });
  return lines.map(Number) as unknown as World;
}
