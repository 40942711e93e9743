import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Whether the open geographic command line tools (package gdal-bin) are there; tests that need them are left out. */
export const hasGdal = spawnSync("ogrinfo", ["--version"]).status === 0;

/** A folder of its own for one test, taken away afterwards. */
export async function inFolder<T>(use: (folder: string) => T | Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "causey-vector-"));
  try {
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export const save = (folder: string, name: string, bytes: Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};

export const load = (path: string): Uint8Array => new Uint8Array(readFileSync(path));

export const run = (
  tool: "ogr2ogr" | "ogrinfo" | "gdalinfo" | "gdal_translate",
  ...options: readonly string[]
): string => execFileSync(tool, [...options], { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });

export interface OgrLayer {
  readonly count: number;
  readonly extent: readonly number[] | null;
  readonly epsg: number | null;
  readonly type: string;
}

/** What ogrinfo says about one layer. */
export function layerInfo(path: string, layer: string): OgrLayer {
  const text = run("ogrinfo", "-so", path, layer);
  const extent = /Extent: \(([-\d.]+), ([-\d.]+)\) - \(([-\d.]+), ([-\d.]+)\)/.exec(text);
  const code = /ID\["EPSG",(\d+)\]\]\s*\nData axis/.exec(text)?.[1];
  return {
    count: Number(/Feature Count: (\d+)/.exec(text)?.[1]),
    extent: extent === null ? null : extent.slice(1).map(Number),
    epsg: code === undefined ? null : Number(code),
    type: /Geometry: (.*)/.exec(text)?.[1] ?? "",
  };
}
