import * as fc from "fast-check";
import { expect, test } from "vitest";
import { readTerrain } from "../src/terrain/index.ts";
import { isHelpful, problemsOf, utf8 } from "./support/problems.ts";

const METRES = { unit: "m" } as const;
const header = "ncols 3\nnrows 2\nxllcorner 100\nyllcorner 200\ncellsize 2\nNODATA_value -9999\n";
const read = (text: string, unit: "m" | "ft" = "m") => readTerrain("t.asc", utf8(text), { unit });

test("rows come out from south to north, corners half a cell outside the centres (ESRI ASCII grid)", async () => {
  const { raster, crs, vertical } = await read(`${header}1 2 3\n4 5 -9999\n`);
  expect(raster).toMatchObject({ cols: 3, rows: 2, x0: 101, y0: 201, dx: 2, dy: 2 });
  expect([...raster.values]).toEqual([4, 5, NaN, 1, 2, 3]);
  expect([crs, vertical]).toEqual([null, null]);
});

test("xllcenter, dx and dy, any order and case, Windows and old Macintosh line ends, a byte order mark", async () => {
  const lines = [
    "\ufeffDY 4",
    "DX 2",
    "NROWS 2",
    "NCOLS 3",
    "YLLCENTER 200",
    "xllcenter 100",
    "1 2 3",
    "4.5 +5 6e0",
  ];
  for (const end of ["\n", "\r\n", "\r"]) {
    const { raster } = await read(lines.join(end));
    expect(raster).toMatchObject({ x0: 100, y0: 200, dx: 2, dy: 4 });
    expect([...raster.values]).toEqual([4.5, 5, 6, 1, 2, 3]);
  }
});

test("a no-data value of +999 above all heights is data only to those who do not read the header", async () => {
  const text = header.replace("-9999", "999").replace("cellsize", "CELLSIZE");
  const { raster } = await read(`${text}1.2 999 1.3\n999.000 1.1 1.0\n`);
  expect([...raster.values]).toEqual([NaN, 1.1, 1, 1.2, NaN, 1.3].map(Math.fround));
});

test("a no-data value printed with fewer digits than it is stored with is still recognised", async () => {
  const { raster } = await read(`${header.replace("-9999", "-3.40282346639e+38")}1 -3.40282e+38 3\n4 5 6\n`);
  expect([...raster.values]).toEqual([4, 5, 6, 1, NaN, 3]);
});

test("values may flow over line ends when no line is a row", async () => {
  const { raster } = await read(`${header}1 2\n3 4\n5 6\n`);
  expect([...raster.values]).toEqual([4, 5, 6, 1, 2, 3]);
});

test("feet become metres by the definition of the foot, 0.3048 m", async () => {
  const { raster } = await read(`${header}1 2 3\n4 5 6\n`, "ft");
  expect([...raster.values]).toEqual([4, 5, 6, 1, 2, 3].map((v) => Math.fround(v * 0.3048)));
});

test("property: every decimal number reads as the language itself reads it", async () => {
  const decimal = fc.oneof(
    fc.double({ min: -9000, max: 9000, noNaN: true }).map(String),
    fc
      .tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: 0, max: 12 }))
      .map(([v, d]) => (v / 7).toFixed(d)),
    fc.integer({ min: -9000, max: 9000 }).map(String),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(decimal, { minLength: 6, maxLength: 6 }), async (cells) => {
      // One height in most cells and far from the others is refused as an undeclared no-data value: tested elsewhere.
      fc.pre(new Set(cells.map((v) => Math.fround(Number(v)))).size > 3);
      const [a, b, c, d, e, f] = cells;
      const { raster } = await read(`${header}${a} ${b} ${c}\n${d} ${e} ${f}\n`);
      expect([...raster.values]).toEqual(
        [d, e, f, a, b, c].map((v) => Math.fround(Number(v))).map((v) => (v === -9999 ? NaN : v)),
      );
    }),
  );
});

const faults: readonly (readonly [title: string, text: string, code: string, place: RegExp])[] = [
  ["a missing value in a row", `${header}1 2 3\n4 5\n`, "terrain-truncated", /^line 8$/],
  ["a missing row", `${header}1 2 3\n`, "terrain-truncated", /^line 8, byte 80$/],
  ["a row too many", `${header}1 2 3\n4 5 6\n7 8 9\n`, "terrain-rows", /^line 9$/],
  [
    "a value too many, one too few",
    `${header.replace("nrows 2", "nrows 3")}1 2 3 4\n5 6\n7 8 9\n`,
    "terrain-rows",
    /^line 7$/,
  ],
  ["a word among the values", `${header}1 2 x\n4 5 6\n`, "terrain-value", /^line 7, byte 78$/],
  ["decimal commas", `${header}1,5 2 3\n4 5 6\n`, "terrain-value", /^line 7/],
  ["no cell size", header.replace("cellsize 2\n", "") + "1 2 3\n4 5 6\n", "terrain-header", /^line 6$/],
  [
    "a cell size of NaN",
    `${header.replace("cellsize 2", "cellsize NaN")}1 2 3\n4 5 6\n`,
    "terrain-cell-size",
    /^header$/,
  ],
  [
    "a cell size below zero",
    `${header.replace("cellsize 2", "cellsize -2")}1 2 3\n4 5 6\n`,
    "terrain-cell-size",
    /^header$/,
  ],
  [
    "cells in degrees",
    `${header.replace("cellsize 2", "cellsize 0.000009")}1 2 3\n4 5 6\n`,
    "terrain-degrees",
    /^header$/,
  ],
  ["two columns counts", `ncols 4\n${header}1 2 3\n4 5 6\n`, "terrain-header", /^line 2$/],
  ["corner and centre at once", `xllcenter 4\n${header}1 2 3\n4 5 6\n`, "terrain-header", /^line 8$/],
  ["zero columns", `${header.replace("ncols 3", "ncols 0")}1 2 3\n`, "terrain-size", /^header$/],
  ["half a column", `${header.replace("ncols 3", "ncols 2.5")}1 2 3\n`, "terrain-size", /^header$/],
  [
    "a header that claims 2 GB",
    `${header.replace("ncols 3", "ncols 30000").replace("nrows 2", "nrows 20000")}1 2 3\n`,
    "terrain-too-large",
    /^header$/,
  ],
  [
    "a header that claims what the file cannot hold",
    `${header.replace("ncols 3", "ncols 4000").replace("nrows 2", "nrows 5000")}1 2 3\n`,
    "terrain-truncated",
    /^byte /,
  ],
  [
    "an unknown header line",
    `ncols 3\nproject secret\n${header.slice(8)}1 2 3\n4 5 6\n`,
    "terrain-header",
    /^line 2$/,
  ],
  ["another format", "PK\u0003\u0004 not a grid", "terrain-format", /^line 1$/],
  ["nothing at all", "", "terrain-header", /^line 1$/],
];

test.each(faults)("refused with its place: %s", async (_title, text, code, place) => {
  const problems = await problemsOf(() => read(text));
  const problem = problems.find((p) => p.code === code);
  expect(problem, problems.map((p) => p.code).join()).toBeDefined();
  expect(problem!.place).toMatch(place);
  expect(problems.every((p) => p.file === "t.asc" && isHelpful(p))).toBe(true);
});

test("all faults of the header are listed at once", async () => {
  const problems = await problemsOf(() => read("ncols three\nnrows 2\nwest 4\n1 2 3\n"));
  expect(problems.map((p) => p.value)).toEqual(expect.arrayContaining(["ncols three", "west 4"]));
  expect(problems.filter((p) => p.message.includes("lacks")).length).toBeGreaterThanOrEqual(3);
});

const grid = (cells: readonly number[], cols: number, nodata = "-9999"): string =>
  `ncols ${cols}\nnrows ${cells.length / cols}\nxllcorner 0\nyllcorner 0\ncellsize 1\nNODATA_value ${nodata}\n${cells.join(" ").replaceAll(new RegExp(`((?:\\S+ ){${cols - 1}}\\S+) ?`, "g"), "$1\n")}`;

const marsh = Array.from({ length: 400 }, (_, i) => Number((1.2 + Math.sin(i) * 0.4).toFixed(3)));
const withValue = (value: number, count: number): number[] =>
  marsh.map((v, i) => (i % 10 === 0 && i / 10 < count ? value : v));

test.each([999, -999, 9999, -99, 32767, -32768, 3.4e38, -3.4e38, 99999])(
  "an undeclared no-data value %d is named, not guessed",
  async (value) => {
    const problems = await problemsOf(() => read(grid(withValue(value, 20), 20, "-1234")));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      code: "undeclared-nodata",
      place: "20 of 400 cells",
      severity: "error",
    });
    expect(problems[0]!.value).toBe(String(Math.fround(value)));
    expect(problems[0]!.mend).toContain(`NODATA_value ${Math.fround(value)}`);
  },
);

test("two undeclared values, one at each end, are both named", async () => {
  const cells = withValue(999, 20).map((v, i) => (i % 10 === 5 ? -9999 : v));
  const problems = await problemsOf(() => read(grid(cells, 20, "-1")));
  expect(problems.map((p) => p.value).sort()).toEqual(["-9999", "999"]);
});

test.each([
  ["a moor at 999 m", marsh.map((v) => v + 997.5).concat(Array<number>(20).fill(999))],
  ["one spike", withValue(45, 1)],
  ["an embankment", withValue(4.5, 20)],
  ["a pond of one level", withValue(0.3, 30)],
  ["level ground", Array<number>(400).fill(0)],
])("ground is not mistaken for a no-data value: %s", async (_title, cells) => {
  const { raster } = await read(grid(cells, 20));
  expect(raster.values.some((v) => Number.isNaN(v))).toBe(false);
});

test("a bound in feet is a bound in feet: 30,000 is a peak in feet, and no ground in metres", async () => {
  const cells = marsh.map((v) => v + 29_000);
  await expect(read(grid(cells, 20), "ft")).resolves.toBeDefined();
  const problems = await problemsOf(() => readTerrain("t.asc", utf8(grid(cells, 20)), METRES));
  expect(problems[0]!.code).toBe("undeclared-nodata");
});
