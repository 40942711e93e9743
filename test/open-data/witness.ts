import { execFileSync } from "node:child_process";
import { resolve } from "node:path";
import { expect } from "vitest";
import { readSeries } from "@causey/io/water";
import { dataFolder } from "../../packages/engine/test/support/open-data.ts";
import { run } from "../../packages/io/test/support/gdal.ts";
import { openData } from "../../packages/io/test/support/open-data.ts";

/** Where a file of the open data lies. */
export const at = (path: string): string => resolve(dataFolder, path);
/** Name of a file in a path. */
export const name = (path: string): string => path.split("/").at(-1)!;

interface GdalInfo {
  readonly size: readonly [number, number];
  readonly cornerCoordinates: Readonly<Record<"lowerLeft" | "upperRight", readonly [number, number]>>;
  readonly coordinateSystem?: { readonly wkt: string };
  readonly bands: readonly {
    readonly noDataValue?: number;
    readonly minimum?: number;
    readonly maximum?: number;
  }[];
}
export const gdalInfo = (path: string): GdalInfo =>
  JSON.parse(run("gdalinfo", "-json", "-stats", "--config", "GDAL_PAM_ENABLED", "NO", path)) as GdalInfo;
export const epsgOf = ({ coordinateSystem }: GdalInfo): number | null => {
  const code = /ID\["EPSG",(\d+)\]\]\s*$/.exec(coordinateSystem?.wkt ?? "")?.[1];
  return code === undefined ? null : Number(code);
};
/** Cells all over a grid, counted from its north-west corner. */
export const cellsOf = (cols: number, rows: number): readonly (readonly [number, number])[] =>
  Array.from({ length: 40 }, (_, k) => [(k * 37 + 11) % cols, (k * 53 + 7) % rows] as const);
/** What GDAL has at these cells, in the first band. */
export const gdalValues = (path: string, cells: readonly (readonly [number, number])[]): readonly number[] =>
  execFileSync("gdallocationinfo", ["-valonly", "-b", "1", path], {
    encoding: "utf8",
    input: cells.map((cell) => cell.join(" ")).join("\n"),
  })
    .trim()
    .split("\n")
    .map(Number);

/** One line of an SQL question to a table: numbers by their order. */
export function ask(path: string, sql: string, ...open: readonly string[]): readonly number[] {
  const text = run("ogrinfo", "-q", ...open, path, "-sql", sql);
  return [...text.matchAll(/ = (-?[\d.e+-]+)$/gm)].map((m) => Number(m[1]));
}
/** GDAL prints corners to a millimetre. */
export const PRINTED = 0.0006;
export const near = (a: readonly number[], b: readonly number[], tolerance: number): void => {
  expect(a).toHaveLength(b.length);
  a.forEach((v, i) => expect(Math.abs(v - b[i]!), `${v} and ${b[i]}`).toBeLessThanOrEqual(tolerance));
};
export const extentOf = (xs: ArrayLike<number>, ys: ArrayLike<number>): readonly number[] => {
  const [x, y] = [Array.from(xs), Array.from(ys)];
  return [Math.min(...x), Math.min(...y), Math.max(...x), Math.max(...y)];
};
/** Holds the levels of a series against the column that GDAL reads: count, least, greatest, mean. */
export function expectLevels(
  path: string,
  table: string,
  time: string,
  level: string,
  kind: "readings" | "high-low",
  unit: "m" | "ft" = "m",
): void {
  const { series } = readSeries(
    openData(path),
    {
      file: name(path),
      kind,
      basis: "recorded",
      columns: { time, level, flag: null },
      unit,
      zone: unit === "ft" ? "-05:00" : "UTC",
      datum: "D",
      offset_m: 0,
      offset_source: "",
      attribution: "open data",
    },
    "D",
  );
  const metres = unit === "ft" ? 0.3048 : 1;
  const [n, low, high, mean] = ask(
    at(path),
    `SELECT COUNT(${level}) AS n, MIN(${level}) AS a, MAX(${level}) AS b, AVG(${level}) AS c FROM "${table}"`,
    "-oo",
    "AUTODETECT_TYPE=YES",
    "-oo",
    "EMPTY_STRING_AS_NULL=YES",
  ) as [number, number, number, number];
  const z = [...series.z_m];
  const ours = [
    z.length,
    z.reduce((a, v) => Math.min(a, v)),
    z.reduce((a, v) => Math.max(a, v)),
    z.reduce((a, v) => a + v, 0) / z.length,
  ];
  near(ours, [n, low * metres, high * metres, mean * metres], 1e-6);
}
