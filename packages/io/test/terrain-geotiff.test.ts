import * as fc from "fast-check";
import { fromArrayBuffer, writeArrayBuffer } from "geotiff";
import { expect, test } from "vitest";
import { groundAt } from "@causey/engine/site";
import { readTerrain } from "../src/terrain/index.ts";
import { BlockFault, decodeBlock } from "../src/terrain/tiff-decode.ts";
import { zstdBomb } from "./support/packers.ts";
import { isHelpful, problemsOf, valueOrRefusal } from "./support/problems.ts";
import { geoTags, nodataTag, writeTiff, type TiffOptions, type TiffTag } from "./support/tiff.ts";

const METRES = { unit: "m" } as const;
const at = geoTags(621_000, 233_100, 2, 3, 27700);
/** 3 columns, 2 rows, north row first. */
const heights = [1, 2, 3, 4, 5, 6];
const tiny = (o: TiffOptions = {}): Uint8Array => writeTiff(3, 2, heights, { tags: at, ...o });

test("rows come out from south to north, cell centres half a cell inside (OGC GeoTIFF 1.1, pixel is area)", async () => {
  const { raster, crs, warnings } = await readTerrain("t.tif", tiny(), METRES);
  expect(raster).toMatchObject({ cols: 3, rows: 2, dx: 2, dy: 3, x0: 621_001, y0: 233_095.5 });
  expect([...raster.values]).toEqual([4, 5, 6, 1, 2, 3]);
  expect(groundAt(raster, 621_001, 233_098.5)).toBe(1);
  expect(crs).toMatchObject({ code: 27700, kind: "projected", unit_m: 1 });
  expect(warnings.map((w) => [w.code, w.value])).toEqual([["terrain-not-square", "2 x 3 m"]]);
});

test("pixel is point: the tie point is a cell centre (OGC GeoTIFF 1.1, GTRasterTypeGeoKey 2)", async () => {
  const tags = geoTags(621_000, 233_100, 2, 3, 27700, true);
  const { raster } = await readTerrain("t.tif", tiny({ tags }), METRES);
  expect(raster).toMatchObject({ x0: 621_000, y0: 233_097 });
});

test("a tie point other than the corner, and a plain transformation, give the same place", async () => {
  const tie = [at[0]!, { tag: 33922, type: 12, values: [1, 1, 0, 621_002, 233_097, 0] } as TiffTag, at[2]!];
  const matrix = [
    {
      tag: 34264,
      type: 12,
      values: [2, 0, 0, 621_000, 0, -3, 0, 233_100, 0, 0, 0, 0, 0, 0, 0, 1],
    } as TiffTag,
    at[2]!,
  ];
  for (const tags of [tie, matrix])
    expect((await readTerrain("t.tif", tiny({ tags }), METRES)).raster).toMatchObject({
      x0: 621_001,
      y0: 233_095.5,
    });
});

test("feet become metres by the definition of the foot, 0.3048 m", async () => {
  const { raster } = await readTerrain("t.tif", tiny({ bits: 64 }), { unit: "ft" });
  expect([...raster.values]).toEqual([4, 5, 6, 1, 2, 3].map((v) => Math.fround(v * 0.3048)));
});

test("whole numbers with a scale and an offset in their metadata become heights", async () => {
  const xml =
    '<GDALMetadata>\n<Item name="OFFSET" sample="0" role="offset">-1</Item>\n<Item name="SCALE" sample="0" role="scale">0.01</Item>\n</GDALMetadata>\0';
  const tags = [...at, { tag: 42112, type: 2, values: xml } as const, nodataTag("-32768")];
  const bytes = writeTiff(3, 2, [100, 200, 300, -32768, 150, 250], { kind: "int", bits: 16, tags });
  const { raster } = await readTerrain("t.tif", bytes, METRES);
  expect([...raster.values]).toEqual([NaN, 0.5, 1.5, 0, 1, 2].map(Math.fround));
});

for (const nodata of ["-9999", "999", "-3.4028234663852886e+38", "nan"])
  test(`declared no-data ${nodata} becomes NaN, in 32-bit cells that have rounded it too`, async () => {
    const stored = Number(nodata);
    const bytes = writeTiff(3, 2, [1, 2, stored, 4, stored, 6], { tags: [...at, nodataTag(nodata)] });
    expect([...(await readTerrain("t.tif", bytes, METRES)).raster.values]).toEqual([4, NaN, 6, 1, 2, NaN]);
  });

const kinds = [
  { kind: "float", bits: 32 },
  { kind: "float", bits: 64 },
  { kind: "int", bits: 16 },
  { kind: "int", bits: 32 },
  { kind: "uint", bits: 8 },
  { kind: "uint", bits: 16 },
] as const;

test("property: any cell type, byte order, compression, predictor and blocking gives back what was written", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.record({
        cell: fc.constantFrom(...kinds),
        little: fc.boolean(),
        big: fc.boolean(),
        compression: fc.constantFrom("none", "lzw", "deflate", "packbits", "zstd"),
        predictor: fc.constantFrom(1, 2, 3),
        cols: fc.integer({ min: 2, max: 40 }),
        rows: fc.integer({ min: 2, max: 40 }),
        tile: fc.option(fc.tuple(fc.constantFrom(16, 32), fc.constantFrom(16, 48)), { nil: undefined }),
        strip: fc.integer({ min: 1, max: 40 }),
        seed: fc.integer({ min: 1, max: 1e6 }),
      }),
      async ({ cell, little, big, compression, predictor, cols, rows, tile, strip, seed }) => {
        const fit =
          cell.kind === "float"
            ? predictor === 2 && cell.bits === 64
              ? 1
              : predictor
            : predictor === 3
              ? 2
              : predictor;
        const written = Array.from(
          { length: cols * rows },
          (_, i) => (i * seed * 7919 + ((i >> 3) % 5)) % 97,
        );
        const values = cell.kind === "float" ? written.map((v) => v / 8) : written;
        const bytes = writeTiff(cols, rows, values, {
          ...cell,
          little,
          big,
          compression,
          predictor: fit as 1 | 2 | 3,
          ...(tile ? { tile } : { rows_per_strip: strip }),
          tags: at,
        });
        const { raster } = await readTerrain("t.tif", bytes, METRES);
        const northFirst = Array.from({ length: rows }, (_, r) => [
          ...raster.values.subarray((rows - 1 - r) * cols, (rows - r) * cols),
        ]).flat();
        expect(northFirst).toEqual(values.map(Math.fround));
      },
    ),
    { numRuns: 120 },
  );
});

test("the package geotiff's reader gives the same cells for tiled, predicted, packed files", async () => {
  const values = Array.from({ length: 50 * 30 }, (_, i) => Math.sin(i / 7) * 3);
  for (const compression of ["lzw", "deflate", "packbits"] as const) {
    const bytes = writeTiff(50, 30, values, { compression, predictor: 3, tile: [16, 16], tags: at });
    const image = await (await fromArrayBuffer(bytes.slice().buffer)).getImage();
    const [band] = (await image.readRasters()) as unknown as [Float32Array];
    const { raster } = await readTerrain("t.tif", bytes, METRES);
    for (let r = 0; r < 30; r++)
      expect([...raster.values.subarray((29 - r) * 50, (30 - r) * 50)]).toEqual([
        ...band.subarray(r * 50, r * 50 + 50),
      ]);
  }
});

test("a file written by the package geotiff is read with its place, system and no-data value", async () => {
  const metadata = {
    height: 3,
    width: 4,
    SampleFormat: [3],
    BitsPerSample: [32],
    SamplesPerPixel: [1],
    PhotometricInterpretation: 1,
    ModelTiepoint: [0, 0, 0, 500_000, 4_600_000, 0],
    ModelPixelScale: [0.5, 0.5, 0],
    ProjectedCSTypeGeoKey: 32618,
    GTModelTypeGeoKey: 1,
    GTRasterTypeGeoKey: 1,
    GDAL_NODATA: "-9999\0",
  };
  const cells = Float32Array.from({ length: 12 }, (_, i) => (i === 5 ? -9999 : i / 4));
  const bytes = new Uint8Array(
    writeArrayBuffer(cells, metadata as unknown as Parameters<typeof writeArrayBuffer>[1]),
  );
  const { raster, crs } = await readTerrain("utm.tif", bytes, METRES);
  expect(raster).toMatchObject({ cols: 4, rows: 3, x0: 500_000.25, y0: 4_599_998.75, dx: 0.5, dy: 0.5 });
  expect([...raster.values]).toEqual([2, 2.25, 2.5, 2.75, 1, NaN, 1.5, 1.75, 0, 0.25, 0.5, 0.75]);
  expect(crs?.name).toBe("WGS 84 / UTM zone 18N");
});

const lyingTag = (
  tag: number,
  values: readonly number[],
  type: 3 | 4 | 12 = 4,
  claimed?: number,
): TiffTag => ({
  tag,
  type,
  values,
  ...(claimed === undefined ? {} : { claimed }),
});

const refused: readonly (readonly [title: string, bytes: () => Uint8Array, code: string, text: RegExp])[] = [
  [
    "a 1 kB file that claims 2 GB",
    () => tiny({ tags: [...at, lyingTag(256, [23_170]), lyingTag(257, [23_170])] }),
    "terrain-too-large",
    /536848900 cells; at most 25000000/,
  ],
  [
    "a 1 kB file that claims 96 MB",
    () => tiny({ tags: [...at, lyingTag(256, [4900]), lyingTag(257, [4900]), lyingTag(278, [4900])] }),
    "terrain-tiff",
    /needs 96040000 bytes/,
  ],
  [
    "a few packed bytes that claim 96 MB",
    () =>
      tiny({
        compression: "deflate",
        tags: [...at, lyingTag(256, [4900]), lyingTag(257, [4900]), lyingTag(278, [4900])],
      }),
    "terrain-truncated",
    /cannot unpack to the 96040000 bytes/,
  ],
  [
    "empty blocks that claim 96 MB",
    () =>
      tiny({
        tags: [
          ...at,
          lyingTag(256, [4900]),
          lyingTag(257, [4900]),
          lyingTag(278, [4900]),
          lyingTag(279, [0]),
        ],
      }),
    "terrain-truncated",
    /holds no height/,
  ],
  ["zero cells", () => tiny({ tags: [...at, lyingTag(256, [0])] }), "terrain-size", /fewer than two cells/],
  [
    "a strip beyond the end",
    () => tiny({ tags: [...at, lyingTag(273, [4_000_000_000])] }),
    "terrain-truncated",
    /block 1 of 1 should reach to byte 4000000024/,
  ],
  [
    "a million strips that are not there",
    () => tiny({ tags: [...at, lyingTag(273, [8], 4, 1_000_000)] }),
    "terrain-tiff",
    /holds 1000000 values/,
  ],
  [
    "too few strips",
    () => tiny({ tags: [...at, lyingTag(278, [1])] }),
    "terrain-tiff",
    /needs 2 strips or tiles/,
  ],
  [
    "a tag beyond the end",
    () => tiny({ tags: [...at, { tag: 42113, type: 2, values: "-9999\0", claimed: 190 }] }),
    "terrain-truncated",
    /tag 42113/,
  ],
  [
    "a directory beyond the end",
    () => Uint8Array.from([0x49, 0x49, 42, 0, 255, 255, 255, 0, 0, 0]),
    "terrain-truncated",
    /directory/,
  ],
  ["three bands", () => tiny({ tags: [...at, lyingTag(277, [3], 3)] }), "terrain-bands", /3 bands/],
  ["24-bit floats", () => tiny({ tags: [...at, lyingTag(258, [24], 3)] }), "terrain-type", /cell type/],
  ["JPEG", () => tiny({ tags: [...at, lyingTag(259, [7], 3)] }), "terrain-compression", /JPEG/],
  ["LERC", () => tiny({ tags: [...at, lyingTag(259, [34887], 3)] }), "terrain-compression", /LERC/],
  [
    "a rotated grid",
    () =>
      tiny({
        tags: [{ tag: 34264, type: 12, values: [2, 0.1, 0, 0, 0.1, -2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1] }],
      }),
    "terrain-rotated",
    /rotated/,
  ],
  [
    "south at the top",
    () => tiny({ tags: geoTags(0, 0, 2, -3, 27700) }),
    "terrain-rotated",
    /south at the top/,
  ],
  [
    "NaN cells",
    () => tiny({ tags: geoTags(0, 0, NaN, 3, 27700) }),
    "terrain-not-placed",
    /where its cells lie/,
  ],
  ["cells of 0 m", () => tiny({ tags: geoTags(0, 0, 0, 3, 27700) }), "terrain-cell-size", /above zero/],
  ["no place at all", () => tiny({ tags: [] }), "terrain-not-placed", /where its cells lie/],
  [
    "control points",
    () => tiny({ tags: [{ tag: 33922, type: 12, values: Array.from({ length: 18 }, (_, i) => i) }] }),
    "terrain-not-placed",
    /control points/,
  ],
  [
    "degrees",
    () =>
      tiny({
        tags: [
          ...geoTags(1, 52, 1e-5, 1e-5, null).slice(0, 2),
          lyingTag(34735, [1, 1, 0, 1, 1024, 0, 1, 2], 3),
        ],
      }),
    "terrain-degrees",
    /degrees/,
  ],
  [
    "a geographic system",
    () =>
      tiny({ tags: [...at.slice(0, 2), lyingTag(34735, [1, 1, 0, 2, 1024, 0, 1, 2, 2048, 0, 1, 4326], 3)] }),
    "crs-geographic",
    /degrees of longitude/,
  ],
  [
    "a grid in US survey feet",
    () =>
      tiny({
        tags: [
          ...at.slice(0, 2),
          lyingTag(34735, [1, 1, 0, 3, 1024, 0, 1, 1, 3072, 0, 1, 2263, 3076, 0, 1, 9003], 3),
        ],
      }),
    "terrain-feet-grid",
    /grid in feet/,
  ],
  [
    "heights that the file says are feet",
    () =>
      tiny({
        tags: [
          ...at.slice(0, 2),
          lyingTag(34735, [1, 1, 0, 3, 1024, 0, 1, 1, 3072, 0, 1, 27700, 4099, 0, 1, 9002], 3),
        ],
      }),
    "terrain-unit",
    /heights are in feet, plan.json says m/,
  ],
  [
    "a damaged block",
    () => {
      const b = tiny({ compression: "deflate" });
      b.fill(7, 10, 20);
      return b;
    },
    "terrain-block",
    /Block 1/,
  ],
  [
    "no data everywhere",
    () => writeTiff(3, 2, [9, 9, 9, 9, 9, 9], { tags: [...at, nodataTag("9")] }),
    "terrain-empty",
    /No cell/,
  ],
  [
    "a no-data value that is no number",
    () => tiny({ tags: [...at, nodataTag("none")] }),
    "terrain-nodata",
    /not a number/,
  ],
];

test.each(refused)("refused, fast and before memory is taken: %s", async (_title, bytes, code, text) => {
  const before = process.memoryUsage().arrayBuffers;
  const problems = await problemsOf(() => readTerrain("lie.tif", bytes(), METRES));
  expect(problems.map((p) => p.code)).toContain(code);
  expect(problems.find((p) => p.code === code)!.message).toMatch(text);
  expect(problems.every((p) => p.file === "lie.tif" && isHelpful(p))).toBe(true);
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(50_000_000);
});

test.each(["deflate", "lzw", "packbits"] as const)(
  "a block that unpacks to more than it may hold is stopped: %s",
  async (compression) => {
    const bytes = writeTiff(1000, 2, new Float32Array(2000), {
      compression,
      tags: [...at, lyingTag(256, [3])],
    });
    const problems = await problemsOf(() => readTerrain("bomb.tif", bytes, METRES));
    expect(problems[0]).toMatchObject({ code: "terrain-block", place: "byte 8, block 1 of 1" });
    expect(problems[0]!.message).toContain("more than the 24 bytes it may hold");
  },
);

test("ZSTD run-length blocks (RFC 8878) unpack, but not to gigabytes", async () => {
  const zeros = await decodeBlock(50000, zstdBomb(1), 131_072);
  expect(zeros.length).toBe(131_072);
  expect(zeros.every((b) => b === 0)).toBe(true);
  await expect(decodeBlock(50000, zstdBomb(20_000), 131_072)).rejects.toThrow(BlockFault);
});

test("LZW agrees with the package geotiff's over all code widths and table resets", async () => {
  const values = Array.from({ length: 150 * 150 }, (_, i) => ((i * 2654435761) % 4096) / 32);
  const bytes = writeTiff(150, 150, values, { compression: "lzw", tags: at });
  const image = await (await fromArrayBuffer(bytes.slice().buffer)).getImage();
  const [band] = (await image.readRasters()) as unknown as [Float32Array];
  const { raster } = await readTerrain("t.tif", bytes, METRES);
  expect([...band]).toEqual(values);
  expect([...raster.values.subarray(149 * 150)]).toEqual(values.slice(0, 150));
  expect([...raster.values.subarray(0, 150)]).toEqual(values.slice(149 * 150));
});

test("the file of another system than the plan's is refused with both names", async () => {
  const problems = await problemsOf(() =>
    readTerrain("t.tif", tiny(), { unit: "m", expectedCrs: { epsg: 32630 } }),
  );
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatchObject({ code: "crs-mismatch", value: "EPSG:27700" });
  expect(problems[0]!.message).toContain("EPSG:32630");
  const local = await problemsOf(() =>
    readTerrain("t.tif", tiny(), { unit: "m", expectedCrs: { local: "Site" } }),
  );
  expect(local[0]!.message).toContain('the local grid "Site"');
});

test("truncated at every byte: refused with the byte, never a value", async () => {
  const bytes = writeTiff(
    20,
    20,
    Array.from({ length: 400 }, (_, i) => i / 9),
    { compression: "deflate", rows_per_strip: 4, tags: at },
  );
  for (let n = 8; n < bytes.length; n += 7) {
    const problems = await problemsOf(() => readTerrain("cut.tif", bytes.subarray(0, n), METRES));
    expect(problems[0]!.code).toBe("terrain-truncated");
    expect(problems[0]!.place).toMatch(/^byte \d+$/);
  }
});

test("ZSTD with any one byte spoilt: heights or a refusal; the decoder neither hangs nor fills the memory", async () => {
  const cells = Float32Array.from({ length: 120 }, (_, i) => Math.sin(i));
  const sound = writeTiff(12, 10, cells, { tags: geoTags(0, 10, 1, 1, null), compression: "zstd" });
  const start = sound.findIndex((b, i) => b === 0x28 && sound[i + 1] === 0xb5 && sound[i + 2] === 0x2f);
  expect(start).toBeGreaterThan(0);
  let refused = 0;
  for (let i = start; i < sound.length; i++)
    for (const flip of [0x01, 0x20, 0x80, 0xff]) {
      const spoilt = sound.slice();
      spoilt[i]! ^= flip;
      if ((await valueOrRefusal(() => readTerrain("t.tif", spoilt, { unit: "m" }))) === null) refused += 1;
    }
  expect(refused).toBeGreaterThan(10);
});
