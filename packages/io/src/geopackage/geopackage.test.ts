import initSqlJs from "sql.js";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import { geoPackageFile } from "../../test/support/vector-files.ts";
import type { VectorFeature, VectorGeometry } from "../layer-form/index.ts";
import { readLayers } from "../layers/index.ts";
import { readBlob } from "./read-wkb.ts";
import { writeGeoPackage } from "./index.ts";

const open = async (bytes: Uint8Array | null) => new (await initSqlJs()).Database(bytes);

/** A sound GeoPackage with some statements run over it. */
async function changed(...statements: readonly string[]): Promise<Uint8Array> {
  const db = await open(await geoPackageFile());
  for (const sql of statements) db.run(sql);
  const bytes = db.export();
  db.close();
  return bytes;
}

const line: VectorGeometry = {
  type: "LineString",
  coordinates: [
    [1, 2],
    [3, 4.5],
  ],
};

test("layers written are the layers read: shapes, attributes, systems, ids", async () => {
  const wkt = 'LOCAL_CS["Fen",UNIT["metre",1]]';
  const features: readonly VectorFeature[] = [
    { id: "a", properties: { name: "Größe", deep_m: 1.25, count: 3, wet: true, note: null }, geometry: line },
    {
      id: "b",
      properties: { name: "=1", deep_m: 2, count: 4, wet: false, tags: ["x", 1] },
      geometry: {
        type: "Polygon",
        coordinates: [
          [
            [0, 0],
            [1, 0],
            [1, 1],
          ],
        ],
      },
    },
    {
      id: "c",
      properties: { Name: "capital" },
      geometry: {
        type: "MultiPoint",
        coordinates: [
          [0, 0],
          [1, 0],
        ],
      },
    },
  ];
  const bytes = await writeGeoPackage([
    { name: 'odd "name"; --', crs: { epsg: 27700 }, features },
    {
      name: "degrees",
      crs: "lon-lat",
      features: [{ id: null, properties: { geom: 1, fid: 2 }, geometry: line }],
    },
    { name: "own", crs: { wkt }, features: [] },
    { name: "grid", crs: { local: "Fen" }, features: [] },
  ]);
  const { layers, warnings } = await readLayers("a.gpkg", bytes);
  expect(warnings).toEqual([]);
  expect(layers.map((l) => [l.name, l.crs])).toEqual([
    ['odd "name"; --', { epsg: 27700 }],
    ["degrees", "lon-lat"],
    ["own", { wkt }],
    ["grid", null],
  ]);
  expect(layers[0]!.features.map((f) => f.id)).toEqual(["a", "b", "c"]);
  expect(layers[0]!.features[0]!.properties).toEqual({
    id: "a",
    name: "Größe",
    deep_m: 1.25,
    count: 3,
    wet: true,
    note: null,
    tags: null,
    Name_2: null,
  });
  expect(layers[0]!.features[1]!.properties).toMatchObject({ name: "=1", wet: false, tags: '["x",1]' });
  expect(layers[0]!.features[1]!.geometry).toEqual({
    type: "Polygon",
    coordinates: [
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ],
    ],
  });
  expect(layers[0]!.features[2]).toMatchObject({
    properties: { Name_2: "capital" },
    geometry: { type: "MultiPoint" },
  });
  expect(layers[1]!.features[0]).toEqual({ id: "1", properties: { geom: 1, fid: 2 }, geometry: line });
});

test("equal layers give equal bytes, with the signs that the form asks for", async () => {
  const bytes = await geoPackageFile();
  expect(await geoPackageFile()).toEqual(bytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  expect([view.getUint32(68, false), view.getUint32(60, false)]).toEqual([0x47504b47, 10_300]);
});

test("names that cannot be tables, twins, unknown codes and NaN are broken promises", async () => {
  const layer = { name: "a", crs: { epsg: 27700 }, features: [] } as const;
  for (const bad of [
    [{ ...layer, name: "gpkg_x" }],
    [{ ...layer, name: "" }],
    [layer, { ...layer, name: "A" }],
    [{ ...layer, crs: { epsg: 999_999 } }],
    [
      {
        ...layer,
        features: [{ id: null, properties: {}, geometry: { type: "Point", coordinates: [NaN, 0] } as const }],
      },
    ],
    [{ ...layer, features: [{ id: null, properties: { v: NaN }, geometry: line }] }],
  ])
    await expect(writeGeoPackage(bad)).rejects.toMatchObject({ name: "DomainError" });
});

test.each([
  ["cut off in the middle", async () => (await geoPackageFile()).slice(0, 9000), "gpkg-file"],
  ["cut off in its head", async () => (await geoPackageFile()).slice(0, 60), "gpkg-file"],
  [
    "a database of another kind",
    async () => {
      const db = await open(null);
      db.run("CREATE TABLE t (a)");
      return db.export();
    },
    "gpkg-tables",
  ],
  [
    "a table of contents that is a view without an end",
    () =>
      changed(
        "ALTER TABLE gpkg_contents RENAME TO old",
        "CREATE VIEW gpkg_contents AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT 'points' AS table_name, 'features' AS data_type, i FROM n",
      ),
    "gpkg-tables",
  ],
  [
    "a shape that claims more than it holds",
    () => changed("UPDATE points SET geom = X'47500001FFFFFFFF0102000000FFFFFF7F'"),
    "gpkg-shape",
  ],
  ["a curve", () => changed("UPDATE points SET geom = X'47500001FFFFFFFF010800000000000000'"), "gpkg-shape"],
  ["bytes that are no shape", () => changed("UPDATE points SET geom = X'00'"), "gpkg-shape"],
] as const)("refused in words that help: %s", async (_title, make, code) => {
  const problems = await problemsOf(async () => readLayers("a.gpkg", await make()));
  expect(problems[0]!.code).toBe(code);
  expect(problems.every(isHelpful)).toBe(true);
});

test("a layer that is a view is left out with a warning, for it may never end", async () => {
  const bytes = await changed(
    "ALTER TABLE points RENAME TO old",
    "CREATE VIEW points AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i, geom FROM n, old",
    "UPDATE gpkg_contents SET table_name = 'points'",
    "UPDATE gpkg_geometry_columns SET table_name = 'points'",
  );
  const { layers, warnings } = await readLayers("a.gpkg", bytes);
  expect(layers).toEqual([]);
  expect(warnings.map((w) => w.code)).toEqual(["gpkg-view", "no-features"]);
});

test("a list of tables whose pages lead back to one another is refused before it is followed", async () => {
  const tables = Array.from(
    { length: 200 },
    (_, i) => `CREATE TABLE "table ${i}, with a name of some length" (a, b, c)`,
  );
  const bytes = await changed(...tables);
  expect(bytes[100]).toBe(5);
  new DataView(bytes.buffer, bytes.byteOffset).setUint32(108, 1, false);
  const [problem] = await problemsOf(() => readLayers("a.gpkg", bytes));
  expect(problem!.message).toMatch(/list of tables is damaged/);
});

test("a file that was open elsewhere is read, and a warning says what may be missing", async () => {
  const bytes = await geoPackageFile();
  bytes.set([2, 2], 18);
  const { layers, warnings } = await readLayers("a.gpkg", bytes);
  expect(layers[0]!.features).toHaveLength(5);
  expect(warnings.map((w) => w.code)).toEqual(["gpkg-open"]);
  expect(bytes[18]).toBe(2);
});

test("systems: undefined ones leave it open, codes of others come as their text", async () => {
  const crsOf = async (sql: string) => (await readLayers("a.gpkg", await changed(sql))).layers[0]!.crs;
  expect(await crsOf("UPDATE gpkg_geometry_columns SET srs_id = -1")).toBeNull();
  expect(await crsOf("UPDATE gpkg_geometry_columns SET srs_id = 0")).toBeNull();
  expect(await crsOf("UPDATE gpkg_geometry_columns SET srs_id = 4326")).toBe("lon-lat");
  expect(await crsOf("UPDATE gpkg_geometry_columns SET srs_id = 77")).toBeNull();
  const own =
    "UPDATE gpkg_spatial_ref_sys SET organization = 'me', definition = 'PROJCS[\"x\"]' WHERE srs_id = 26919";
  expect(await crsOf(own)).toEqual({ wkt: 'PROJCS["x"]' });
});

test("computed columns do not run, blobs are left out", async () => {
  const bytes = await changed(
    "ALTER TABLE points ADD COLUMN bomb GENERATED ALWAYS AS (length(zeroblob(900000000)))",
    "ALTER TABLE points ADD COLUMN photo BLOB",
    "UPDATE points SET photo = X'0102'",
  );
  const { layers } = await readLayers("a.gpkg", bytes);
  expect(layers[0]!.features[0]!.properties).toEqual({ name: "Gate", photo: null });
});

/** One point in every form of well-known binary: byte order, heights, measures, envelope. */
function blob(little: boolean, code: number, numbers: readonly number[], envelope: number): Uint8Array {
  const size = [0, 32, 48, 48, 64][envelope]!;
  const out = new Uint8Array(8 + size + 5 + 8 * numbers.length);
  const view = new DataView(out.buffer);
  out.set([0x47, 0x50, 0, (envelope << 1) | 1]);
  out[8 + size] = little ? 1 : 0;
  view.setUint32(9 + size, code, little);
  numbers.forEach((n, i) => view.setFloat64(13 + size + 8 * i, n, little));
  return out;
}

test.each([
  ["plane", 1, [7, 8]],
  ["ISO with height", 1001, [7, 8, 9]],
  ["ISO with measure", 2001, [7, 8, 9]],
  ["ISO with both", 3001, [7, 8, 9, 10]],
  ["extended with height", 0x80000001, [7, 8, 9]],
  ["extended with measure", 0x40000001, [7, 8, 9]],
  ["extended with both", 0xc0000001, [7, 8, 9, 10]],
] as const)(
  "GeoPackage 1.3, clause 2.1.3, well-known binary: a point, %s, in both byte orders, under every envelope",
  (_title, code, numbers) => {
    for (const little of [true, false])
      for (const envelope of [0, 1, 2, 3, 4])
        expect(readBlob(blob(little, code, numbers, envelope))).toEqual({
          type: "Point",
          coordinates: [7, 8],
        });
  },
);

test("property: any shapes and texts come back as they were", async () => {
  const position = fc.tuple(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.integer({ min: -1e9, max: 1e9 }),
  );
  const positions = fc.array(position, { minLength: 2, maxLength: 6 });
  const closed = fc.array(position, { minLength: 3, maxLength: 6 }).map((r) => [...r, r[0]!]);
  const shape = fc.oneof(
    position.map((coordinates) => ({ type: "Point" as const, coordinates })),
    positions.map((coordinates) => ({ type: "LineString" as const, coordinates })),
    fc
      .array(closed, { minLength: 1, maxLength: 3 })
      .map((coordinates) => ({ type: "Polygon" as const, coordinates })),
    fc
      .array(fc.array(closed, { minLength: 1, maxLength: 2 }), { minLength: 2, maxLength: 3 })
      .map((coordinates) => ({ type: "MultiPolygon" as const, coordinates })),
    fc
      .array(positions, { minLength: 2, maxLength: 3 })
      .map((coordinates) => ({ type: "MultiLineString" as const, coordinates })),
  );
  const text = fc.string({ unit: "grapheme" }).map((t) => t.replaceAll("\0", ""));
  await fc.assert(
    fc.asyncProperty(fc.array(fc.tuple(shape, text), { minLength: 1, maxLength: 5 }), async (given) => {
      const features = given.map(([geometry, name]) => ({ id: null, properties: { name }, geometry }));
      const { layers } = await readLayers(
        "a.gpkg",
        await writeGeoPackage([{ name: "t", crs: { epsg: 26919 }, features }]),
      );
      expect(layers[0]!.features.map((f) => [f.geometry, f.properties["name"]])).toEqual(
        features.map((f) => [f.geometry, f.properties.name]),
      );
    }),
    { numRuns: 60 },
  );
});

test("bytes that only begin like a database", async () => {
  const [problem] = await problemsOf(() => readLayers("a.gpkg", utf8("SQLite format 3\0 and more")));
  expect(problem!.code).toBe("gpkg-file");
});
