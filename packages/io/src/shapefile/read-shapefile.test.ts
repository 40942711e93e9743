import * as fc from "fast-check";
import { expect, test } from "vitest";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import { writeDbf, writeShp, zipOf, type DbfField } from "../../test/support/shapefile.ts";
import { shapefileParts, shapefileZip } from "../../test/support/vector-files.ts";
import { readLayers } from "../layers/index.ts";

const square = (x: number, y: number, size: number, clockwise = true): [number, number][] => {
  const ring: [number, number][] = [
    [x, y],
    [x, y + size],
    [x + size, y + size],
    [x + size, y],
    [x, y],
  ];
  return clockwise ? ring : ring.reverse();
};

const areas = async (rings: readonly (readonly [number, number][])[]) => {
  const { shp, shx } = writeShp(5, [rings]);
  const { layers } = await readLayers("a.zip", zipOf({ "a.shp": shp, "a.shx": shx }));
  return layers[0]!.features[0]!.geometry;
};

test("holes go to the outline that holds them, whichever way round the rings turn", async () => {
  const outer = square(0, 0, 100);
  const island = square(40, 40, 10);
  for (const clockwise of [true, false]) {
    const hole = square(20, 20, 50, clockwise);
    const far = square(200, 0, 10, clockwise);
    const shape = await areas([far, island, hole, outer]);
    expect(shape).toEqual({ type: "MultiPolygon", coordinates: [[outer, hole], [far], [island]] });
  }
});

test("a hole in the bight of a larger outline belongs to the small one around it", async () => {
  const bight: [number, number][] = [
    [0, 0],
    [0, 100],
    [10, 100],
    [10, 10],
    [100, 10],
    [100, 0],
    [0, 0],
  ];
  const small = square(50, 50, 30);
  const hole = square(60, 60, 5, false);
  expect(await areas([bight, small, hole])).toEqual({
    type: "MultiPolygon",
    coordinates: [[bight], [small, hole]],
  });
});

test("property: rings in rings: the ground covered is the same as by counting how many rings a place lies in", async () => {
  const box = fc.tuple(
    fc.integer({ min: 0, max: 12 }),
    fc.integer({ min: 0, max: 12 }),
    fc.integer({ min: 1, max: 20 }),
  );
  const grid = fc.uniqueArray(box, { minLength: 2, maxLength: 8, selector: (b) => b.join(" ") });
  await fc.assert(
    fc.asyncProperty(grid, fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }), async (boxes, turns) => {
      const rings = apart(boxes).map(([x, y, size], i) => square(x, y, size, turns[i]));
      const shape = await areas(rings);
      const polygons = (shape.type === "Polygon" ? [shape.coordinates] : shape.coordinates) as [
        number,
        number,
      ][][][];
      expect(polygons.flat(1)).toHaveLength(rings.length);
      for (let x = 0.25; x < 40; x += 1.5)
        for (let y = 0.25; y < 40; y += 1.5) {
          const around = rings.filter((ring) => isIn(ring, x, y)).length;
          const covered = polygons.filter(
            ([outer, ...holes]) => isIn(outer!, x, y) && !holes.some((h) => isIn(h, x, y)),
          );
          expect(covered).toHaveLength(around % 2);
        }
    }),
    { numRuns: 100 },
  );
});

/** Boxes of which each lies wholly inside or wholly outside every other. */
function apart(
  boxes: readonly (readonly [number, number, number])[],
): readonly (readonly [number, number, number])[] {
  const kept: (readonly [number, number, number])[] = [];
  const inside = (
    [a, b, s]: readonly [number, number, number],
    [x, y, t]: readonly [number, number, number],
  ): boolean => a > x && b > y && a + s < x + t && b + s < y + t;
  const beside = (
    [a, b, s]: readonly [number, number, number],
    [x, y, t]: readonly [number, number, number],
  ): boolean => a + s < x || x + t < a || b + s < y || y + t < b;
  for (const box of boxes)
    if (kept.every((k) => inside(box, k) || inside(k, box) || beside(box, k))) kept.push(box);
  return kept;
}

const isIn = (ring: readonly (readonly [number, number])[], x: number, y: number): boolean => {
  const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
  return x > Math.min(...xs) && x < Math.max(...xs) && y > Math.min(...ys) && y < Math.max(...ys);
};

test("a shape of twelve thousand rings is refused, not sorted for hours", async () => {
  const rings = Array.from({ length: 100_000 }, (_, i) =>
    square(i % 300, Math.floor(i / 300), 0.5).slice(0, 4),
  );
  const { shp, shx } = writeShp(5, [rings]);
  const problems = await problemsOf(() => readLayers("a.zip", zipOf({ "a.shp": shp, "a.shx": shx })));
  expect(problems.map((p) => p.code)).toContain("shp-rings");
});

test("missing parts: .prj leaves the system open, .dbf the names, .shx nothing; each is said", async () => {
  const { "points.shp": shp } = shapefileParts();
  const { layers, warnings } = await readLayers("p.zip", zipOf({ "points.shp": shp! }));
  expect(layers[0]).toMatchObject({ crs: null });
  expect(layers[0]!.features.map((f) => f.properties)).toEqual([{}, {}, {}, {}, {}]);
  expect(warnings.map((w) => w.code)).toEqual(["shx-missing", "dbf-missing", "prj-missing"]);
  expect(warnings.every(isHelpful)).toBe(true);
  expect(warnings[2]!.mend).toMatch(/\.prj.*EPSG code/);
});

const table = (
  fields: readonly DbfField[],
  row: readonly (string | Uint8Array)[],
  cpg?: string,
  language = 0,
) => {
  const { shp, shx } = writeShp(1, [[1, 2]]);
  const dbf = writeDbf(fields, [row]);
  dbf[29] = language;
  const files = { "t.shp": shp, "t.shx": shx, "t.dbf": dbf, "t.prj": utf8("x") };
  return zipOf(cpg === undefined ? files : { ...files, "t.cpg": utf8(cpg) });
};
const propertiesOf = async (zip: Uint8Array) =>
  (await readLayers("t.zip", zip)).layers[0]!.features[0]!.properties;

test("fields: numbers, empty and too long ones, days, yes and no", async () => {
  const fields: DbfField[] = [
    { name: "n", type: "N", length: 8 },
    { name: "empty", type: "N", length: 4 },
    { name: "full", type: "N", length: 4 },
    { name: "day", type: "D", length: 8 },
    { name: "no_day", type: "D", length: 8 },
    { name: "yes", type: "L", length: 1 },
    { name: "open", type: "L", length: 1 },
    { name: "text", type: "C", length: 9 },
  ];
  const row = ["  -12.5", "", "****", "20240415", "00000000", "T", "?", " 0012 "];
  expect(await propertiesOf(table(fields, row))).toEqual({
    n: -12.5,
    empty: null,
    full: null,
    day: "2024-04-15",
    no_day: null,
    yes: true,
    open: null,
    text: "0012",
  });
});

test("the encoding: .cpg first, then the language byte, then UTF-8; what fits none is refused, not guessed", async () => {
  const fields: DbfField[] = [{ name: "name", type: "C", length: 10 }];
  const latin = Uint8Array.from([0x44, 0xfc, 0x6e, 0x65]);
  const cyrillic = Uint8Array.from([0xc4, 0xfe, 0xed, 0xe0]);
  expect(await propertiesOf(table(fields, ["Düne"]))).toEqual({ name: "Düne" });
  expect(await propertiesOf(table(fields, [latin], "ANSI 1252"))).toEqual({ name: "Düne" });
  expect(await propertiesOf(table(fields, [latin], "ISO-8859-1\n"))).toEqual({ name: "Düne" });
  expect(await propertiesOf(table(fields, [latin], "88591"))).toEqual({ name: "Düne" });
  expect(await propertiesOf(table(fields, [latin], undefined, 0x57))).toEqual({ name: "Düne" });
  expect(await propertiesOf(table(fields, [cyrillic], "1251"))).toEqual({ name: "Дюна" });
  expect(await propertiesOf(table(fields, [cyrillic], undefined, 0xc9))).toEqual({ name: "Дюна" });
  expect(await propertiesOf(table(fields, ["Dune"], "cp437"))).toEqual({ name: "Dune" });
  for (const [cpg, language] of [
    [undefined, 0],
    ["UTF-8", 0x57],
    ["cp437", 0],
    ["klingon", 0],
  ] as const) {
    const problems = await problemsOf(() => readLayers("t.zip", table(fields, [latin], cpg, language)));
    expect(problems.map((p) => p.code)).toEqual(["dbf-text"]);
  }
});

test("rows marked as deleted are left out, and only they", async () => {
  const { shp, shx } = writeShp(1, [
    [1, 2],
    [3, 4],
    [5, 6],
  ]);
  const dbf = writeDbf([{ name: "n", type: "N", length: 3 }], [["1"], ["2"], ["3"]], [1]);
  const { layers, warnings } = await readLayers(
    "d.zip",
    zipOf({ "d.shp": shp, "d.shx": shx, "d.dbf": dbf, "d.prj": utf8("x") }),
  );
  expect(layers[0]!.features.map((f) => [f.properties["n"], f.geometry.coordinates])).toEqual([
    [1, [1, 2]],
    [3, [5, 6]],
  ]);
  expect(warnings.map((w) => w.code)).toEqual(["dbf-deleted"]);
});

const changed = (name: string, change: (view: DataView) => void): Uint8Array => {
  const parts = shapefileParts();
  const bytes = parts[name]!.slice();
  change(new DataView(bytes.buffer));
  return zipOf({ ...parts, [name]: bytes });
};
const areaWith = (change: (view: DataView) => void): Uint8Array => {
  const { shp, shx } = writeShp(5, [[square(0, 0, 10)]]);
  change(new DataView(shp.buffer));
  return zipOf({ "a.shp": shp, "a.shx": shx });
};

test.each([
  ["a header that claims 2 GB", changed("points.shp", (v) => v.setInt32(24, 0x3fffffff, false))],
  ["a record longer than the file", changed("points.shp", (v) => v.setInt32(104, 0x3fffffff, false))],
  ["a record of negative length", changed("points.shp", (v) => v.setInt32(104, -8, false))],
  ["a record too short for a point", changed("points.shp", (v) => v.setInt32(104, 4, false))],
  ["a record of another type", changed("points.shp", (v) => v.setInt32(108, 5, true))],
  ["a type that is not read", changed("points.shp", (v) => v.setInt32(32, 31, true))],
  ["two thousand million parts", areaWith((v) => v.setInt32(144, 0x7fffffff, true))],
  ["two thousand million points", areaWith((v) => v.setInt32(148, 0x7fffffff, true))],
  ["minus one part", areaWith((v) => v.setInt32(144, -1, true))],
  ["a part that begins beyond the points", areaWith((v) => v.setInt32(152, 99, true))],
  ["a position that is not a number", changed("points.shp", (v) => v.setFloat64(112, NaN, true))],
  [
    "a table that claims four thousand million rows",
    changed("points.dbf", (v) => v.setUint32(4, 0xffffffff, true)),
  ],
  ["a table of other shapes", changed("points.dbf", (v) => v.setUint32(4, 4, true))],
  ["fields longer than a row", changed("points.dbf", (v) => v.setUint8(48, 255))],
  ["an index of other shapes", zipOf({ ...shapefileParts(), "points.shx": writeShp(1, [[1, 2]]).shx })],
  [
    "a file cut off",
    zipOf({ ...shapefileParts(), "points.shp": shapefileParts()["points.shp"]!.slice(0, 150) }),
  ],
] as const)("lying headers are refused before memory is taken: %s", async (_title, zip) => {
  const problems = await problemsOf(() => readLayers("lie.zip", zip));
  expect(problems.length).toBeGreaterThan(0);
  expect(problems.every(isHelpful)).toBe(true);
});

test("the archive itself stays under the rules of all archives: a damaged byte is noticed by its check sum", async () => {
  const zip = shapefileZip();
  zip[60] = zip[60]! ^ 0xff;
  const problems = await problemsOf(() => readLayers("p.zip", zip));
  expect(problems.every((p) => p.code.startsWith("archive"))).toBe(true);
});
