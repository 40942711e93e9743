import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Crs } from "@causey/engine/site";
import { readArchive, writeArchive } from "../src/archive/index.ts";
import { photoPixels, readPhoto, readWorldFile } from "../src/photo/index.ts";
import { readPlan, writePlan } from "../src/plan/index.ts";
import {
  guessQuote,
  openQuote,
  quoteRows,
  readPrices,
  readQuote,
  type KnownItem,
} from "../src/prices/index.ts";
import { readTerrain } from "../src/terrain/index.ts";
import { readPlaces, readZones } from "../src/vector/index.ts";
import { isHelpful, valueOrRefusal } from "./support/problems.ts";
import { sampleFiles, sampleKit, samplePlan, samplePrices, sampleTerrain } from "./support/sample-plan.ts";
import { geoTags, nodataTag, writeTiff, type TiffOptions } from "./support/tiff.ts";

/** How often each reader is tried: as many times as CAUSEY_FUZZ says, or the few that every test run can afford. */
const runs = (few: number): number => Number(process.env["CAUSEY_FUZZ"] ?? few);

/** No file of a few kilobytes may keep its reader busy for longer [ms]. */
const LONGEST = 2000;

const local: Crs = { kind: "local", name: "Fen grid" };
const cells = Float32Array.from({ length: 600 }, (_, i) => Math.sin(i) * 2);
const tags = [...geoTags(0, 20, 1, 1, null), nodataTag("-9999")];
const tiff = (o: TiffOptions): Uint8Array => writeTiff(30, 20, cells, { tags, ...o });
const written = writePlan(samplePlan);

const yardQuote = new TextEncoder().encode(
  "Item;Length ft;Price GBP;Quoted\n2x6 treated;8;9,80;2026-10-02\n5/4x6 decking;12;11,40;2026-10-02\nscrews;;7,50;2026-10-02\n",
);
/** Opened, its columns guessed, and every row read as the first item that is known. */
function readWholeQuote(bytes: Uint8Array): unknown {
  const table = openQuote("quote.csv", bytes);
  const known: readonly KnownItem[] = [{ item: "2x6", names: [], is_lumber: true }];
  const choice = { ...guessQuote(table), source: "Yard" };
  const items = new Map(quoteRows(table, choice, known).map((row) => [row.line, row.guess.item ?? "2x6"]));
  const read = readQuote(table, choice, items, known);
  for (const { price, length_mm } of read.prices)
    if (!Number.isFinite(price) || (length_mm !== null && !Number.isFinite(length_mm)))
      throw new Error("A price or length that is no number came out of the quote.");
  return read;
}

const greenTiff = writeTiff(36, 8, Array.from({ length: 96 }, () => [60, 140, 70]).flat(), {
  kind: "uint",
  bits: 8,
  compression: "deflate",
  rows_per_strip: 3,
  tags: [
    ...geoTags(0, 20, 1, 1, null),
    { tag: 256, type: 4, values: [12] },
    { tag: 258, type: 3, values: [8, 8, 8] },
    { tag: 262, type: 3, values: [2] },
    { tag: 277, type: 3, values: [3] },
    { tag: 339, type: 3, values: [1, 1, 1] },
  ],
});
const pngHead = Uint8Array.from([
  137,
  80,
  78,
  71,
  13,
  10,
  26,
  10,
  0,
  0,
  0,
  13,
  73,
  72,
  68,
  82,
  0,
  0,
  0,
  9,
  0,
  0,
  0,
  7,
  8,
  2,
  ...Array<number>(20).fill(0),
]);
const photoOf = async (file: string, bytes: Uint8Array): Promise<unknown> => {
  readPhoto({ file, world: [1, 0, 0, -1, 5, 5], crs_confirmed: true }, bytes, { local: "Fen grid" });
  return photoPixels(file, bytes, 5);
};

/** Sound files, each with the reader that meets it. */
const targets: readonly (readonly [string, Uint8Array, (bytes: Uint8Array) => unknown])[] = [
  ["GeoTIFF", tiff({ rows_per_strip: 7 }), (b) => readTerrain("t.tif", b, { unit: "m" })],
  [
    "GeoTIFF, DEFLATE",
    tiff({ compression: "deflate", predictor: 3, tile: [16, 16] }),
    (b) => readTerrain("t.tif", b, { unit: "ft" }),
  ],
  [
    "GeoTIFF, LZW, big-endian",
    tiff({ compression: "lzw", little: false }),
    (b) => readTerrain("t.tif", b, { unit: "m" }),
  ],
  ["GeoTIFF, PackBits", tiff({ compression: "packbits" }), (b) => readTerrain("t.tif", b, { unit: "m" })],
  [
    "GeoTIFF, ZSTD",
    tiff({ compression: "zstd", rows_per_strip: 5 }),
    (b) => readTerrain("t.tif", b, { unit: "m" }),
  ],
  ["BigTIFF", tiff({ big: true, compression: "deflate" }), (b) => readTerrain("t.tif", b, { unit: "m" })],
  ["ESRI ASCII grid", sampleTerrain(), (b) => readTerrain("t.asc", b, { unit: "m" })],
  ["zones", written.get("zones.geojson")!, (b) => readZones("zones.geojson", b, local)],
  ["places", written.get("places.geojson")!, (b) => readPlaces("places.geojson", b, local, {})],
  ["prices", samplePrices, (b) => readPrices("prices.csv", b)],
  ["a yard's quote", yardQuote, readWholeQuote],
  ["photo, GeoTIFF", greenTiff, (b) => photoOf("p.tif", b)],
  ["photo, PNG", pngHead, (b) => photoOf("p.png", b)],
  ["world file", new TextEncoder().encode("0.5\n0\n0\n-0.5\n10\n20\n"), (b) => readWorldFile("p.jgw", b)],
  ["archive", writeArchive(sampleFiles()), (b) => readArchive(b)],
];

/** How far into a file, evenly: doubles at random are nearly all next to 0 and would spoil the first byte alone. */
const share = fc.integer({ min: 0, max: 1_000_000 }).map((n) => n / 1_000_000);
const odd = fc.oneof(fc.constantFrom(0, 1, 255, 128, 127, 32, 44, 45, 48, 57, 91, 34), fc.nat(255));

/** Bytes overwritten, cut out, doubled, and the end cut off: what disks, mail programs and attackers do to files. */
const damage = fc.record({
  writes: fc.array(fc.tuple(share, odd), { minLength: 1, maxLength: 8 }),
  cut: fc.oneof({ weight: 5, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: share }),
  slice: fc.oneof(
    { weight: 3, arbitrary: fc.constant(undefined) },
    { weight: 1, arbitrary: fc.tuple(share, fc.integer({ min: -40, max: 40 })) },
  ),
  head: fc.boolean(),
});
type Damage = typeof damage extends fc.Arbitrary<infer T> ? T : never;

function spoil(bytes: Uint8Array, d: Damage): Uint8Array {
  let out = bytes.slice(0, Math.max(1, Math.floor(bytes.length * d.cut)));
  if (d.slice) {
    const at = Math.floor(d.slice[0] * out.length);
    const [n] = [d.slice[1]];
    const kept = n < 0 ? out.subarray(Math.min(out.length, at - n)) : out.subarray(Math.max(0, at - n));
    out = Uint8Array.from([...out.subarray(0, at), ...kept]);
  }
  const reach = d.head ? Math.min(out.length, 400) : out.length;
  for (const [where, value] of d.writes) out[Math.min(out.length - 1, Math.floor(where * reach))] = value;
  return out;
}

test.each(targets)(
  "property: %s, damaged anyhow: a value or problems, soon, and nothing else",
  async (_title, bytes, read) => {
    await fc.assert(
      fc.asyncProperty(damage, async (d) => {
        const start = performance.now();
        await valueOrRefusal(() => read(spoil(bytes, d)));
        expect(performance.now() - start).toBeLessThan(LONGEST);
      }),
      { numRuns: runs(250) },
    );
  },
);

test.each(targets)("property: %s: its reader refuses random bytes in words", async (_title, bytes, read) => {
  const start = bytes.subarray(0, 4);
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 600 }), fc.boolean(), async (random, withSign) => {
      await valueOrRefusal(() => read(withSign ? Uint8Array.from([...start, ...random]) : random));
    }),
    { numRuns: runs(150) },
  );
});

test("property: a folder with any one file spoilt is a plan or a list of problems that help", async () => {
  const files = sampleFiles();
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...files.keys()), damage, async (name, d) => {
      const spoilt = new Map([...files, [name, spoil(files.get(name)!, d)]]);
      const answer = await readPlan(spoilt, { readyKits: [sampleKit] });
      if (!answer.ok) expect(answer.problems.length > 0 && answer.problems.every(isHelpful)).toBe(true);
    }),
    { numRuns: runs(250) },
  );
});
