import * as fc from "fast-check";
import { expect, test } from "vitest";
import { isHelpful, valueOrRefusal } from "../../test/support/problems.ts";
import { zipOf } from "../../test/support/shapefile.ts";
import { writeDbf, writeShp } from "../../test/support/shapefile.ts";
import {
  geoJsonFile,
  geoPackageFile,
  gpxFile,
  kmlFile,
  kmlOf,
  shapefileParts,
  shapefileZip,
  utm19,
} from "../../test/support/vector-files.ts";
import { writeGeoPackage } from "../geopackage/index.ts";
import { writeGpx } from "../markup/index.ts";
import { placeLayer, readLayers, toPlaces, toZones } from "./index.ts";

const runs = Number(process.env["CAUSEY_FUZZ"] ?? 300);

/** The whole way of a file: read, placed, turned into places and zones; each step may refuse, none may break. */
async function wholeWay(bytes: Uint8Array): Promise<void> {
  const read = await valueOrRefusal(() => readLayers("damaged", bytes));
  expect(read?.warnings.every(isHelpful) ?? true).toBe(true);
  for (const layer of read?.layers ?? []) {
    const options = layer.crs === null ? { assume: { epsg: 26919 } } : {};
    const placed = await valueOrRefusal(() => placeLayer(layer, utm19, options));
    if (placed === null) continue;
    await valueOrRefusal(() =>
      toPlaces(placed.layer, { idField: null, nameField: "name", kind: "plot", keep_off_m: 1, reach_m: 1 }),
    );
    await valueOrRefusal(() =>
      toZones(placed.layer, { idField: null, nameField: "name", use: "pool", source: "x", hidden: false }),
    );
  }
}

const ring: [number, number][] = [
  [400_000, 4_600_000],
  [400_000, 4_600_010],
  [400_010, 4_600_010],
  [400_010, 4_600_000],
  [400_000, 4_600_000],
];
const areaParts = (): Record<string, Uint8Array> => {
  const hole = ring.map(([x, y]): [number, number] => [400_003 + (x - 400_000) / 5, y / 5 + 3_680_003]);
  const { shp, shx } = writeShp(5, [[ring, hole], null, [ring]]);
  const dbf = writeDbf(
    [
      { name: "name", type: "C", length: 12 },
      { name: "deep", type: "N", length: 8 },
      { name: "day", type: "D", length: 8 },
      { name: "wet", type: "L", length: 1 },
    ],
    ["a", "b", "c"].map((n) => [n, "1.5", "20240415", "T"]),
  );
  return { "a.shp": shp, "a.shx": shx, "a.dbf": dbf, "a.prj": shapefileParts()["points.prj"]! };
};

const area = kmlOf(
  '<Placemark id="a"><name>Pool</name><description><![CDATA[<b>wet</b>]]></description><MultiGeometry><Polygon><outerBoundaryIs><LinearRing><coordinates>' +
    "-70,41 -70.001,41 -70.001,41.001 -70,41</coordinates></LinearRing></outerBoundaryIs></Polygon><LineString><coordinates>-70,41 -70.1,41</coordinates></LineString></MultiGeometry></Placemark>",
);

const within = (parts: Record<string, Uint8Array>, name: string, bytes: Uint8Array): Uint8Array =>
  zipOf({ ...parts, [name]: bytes });

/** Sound files and, for files inside an archive, how the damaged one is packed (its check sum would betray it). */
const targets: readonly (readonly [
  string,
  () => Uint8Array | Promise<Uint8Array>,
  (b: Uint8Array) => Uint8Array,
])[] = [
  ...Object.keys(areaParts()).map(
    (name) =>
      [
        `shapefile, ${name}`,
        () => areaParts()[name]!,
        (b: Uint8Array) => within(areaParts(), name, b),
      ] as const,
  ),
  [
    "shapefile of points",
    () => shapefileParts()["points.shp"]!,
    (b) => within(shapefileParts(), "points.shp", b),
  ],
  ["zip archive", shapefileZip, (b) => b],
  ["KML", () => kmlFile(), (b) => b],
  ["KML with areas", () => new TextEncoder().encode(area), (b) => b],
  ["KMZ", () => new TextEncoder().encode(area), (b) => zipOf({ "doc.kml": b })],
  ["GPX", gpxFile, (b) => b],
  [
    "GPX with a track",
    () =>
      writeGpx(
        [],
        [
          {
            name: "T",
            points: [
              [-70, 41],
              [-70.1, 41.1],
            ],
          },
        ],
        "x",
      ),
    (b) => b,
  ],
  ["GeoJSON", geoJsonFile, (b) => b],
  ["GeoPackage", geoPackageFile, (b) => b],
  [
    "GeoPackage with areas",
    () =>
      writeGeoPackage([
        {
          name: "a",
          crs: { epsg: 26919 },
          features: [
            {
              id: "a",
              properties: { name: "a", deep: 1.5 },
              geometry: { type: "MultiPolygon", coordinates: [[ring], [ring]] },
            },
          ],
        },
      ]),
    (b) => b,
  ],
];

/** How far into a file, evenly: doubles at random are nearly all next to 0 and would spoil the first byte alone. */
const share = fc.integer({ min: 0, max: 1_000_000 }).map((n) => n / 1_000_000);
const odd = fc.oneof(fc.constantFrom(0, 1, 2, 5, 10, 13, 32, 34, 38, 60, 62, 127, 128, 255), fc.nat(255));
const damage = fc.record({
  writes: fc.array(fc.tuple(share, odd), { maxLength: 8 }),
  repeat: fc.option(fc.tuple(share, share, fc.integer({ min: 1, max: 20 }))),
  cut: fc.option(fc.tuple(share, share)),
  end: fc.oneof({ weight: 4, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: share }),
  isInHead: fc.boolean(),
});
type Damage = typeof damage extends fc.Arbitrary<infer T> ? T : never;

const stretch = (length: number, a: number, b: number): [number, number] => {
  const [from, to] = [Math.floor(a * length), Math.floor(b * length)];
  return from < to ? [from, to] : [to, from];
};

/** Bytes overwritten, a stretch repeated or cut out, the end cut off. */
function spoil(bytes: Uint8Array, d: Damage): Uint8Array {
  let out: Uint8Array = bytes.slice();
  const reach = d.isInHead ? Math.min(out.length, 200) : out.length;
  for (const [where, value] of d.writes) out[Math.min(out.length - 1, Math.floor(where * reach))] = value;
  if (d.repeat !== null) {
    const [from, to] = stretch(Math.min(out.length, 2000), d.repeat[0], d.repeat[1]);
    const copies = Array.from({ length: d.repeat[2] }, () => out.subarray(from, to));
    out = joined([out.subarray(0, to), ...copies, out.subarray(to)]);
  }
  if (d.cut !== null) {
    const [from, to] = stretch(out.length, d.cut[0], d.cut[0] + (d.cut[1] - d.cut[0]) * 0.05);
    out = joined([out.subarray(0, from), out.subarray(to)]);
  }
  return out.slice(0, Math.ceil(out.length * d.end));
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const p of parts) {
    out.set(p, at);
    at += p.length;
  }
  return out;
}

/** No single file of a few kilobytes may keep the reader busy for longer [ms]. */
const LONGEST = 2000;

test.each(targets)(
  "property: %s, damaged anyhow: layers or problems that help, soon, and nothing else",
  async (_title, make, pack) => {
    const sound = await make();
    await wholeWay(pack(sound));
    await fc.assert(
      fc.asyncProperty(damage, async (d) => {
        const start = performance.now();
        await wholeWay(pack(spoil(sound, d)));
        expect(performance.now() - start).toBeLessThan(LONGEST);
      }),
      { numRuns: runs },
    );
  },
  1_200_000,
);
