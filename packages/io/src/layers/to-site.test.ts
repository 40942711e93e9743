import { expect, test } from "vitest";
import type { JsonObject } from "@causey/engine/formula";
import { problemsOf, isHelpful, utf8 } from "../../test/support/problems.ts";
import { utm19 } from "../../test/support/vector-files.ts";
import type { Positions, VectorFeature } from "../layer-form/index.ts";
import { placeLayer, readLayers, toPlaces, toZones, type PlacedLayer, type ZoneMapping } from "./index.ts";

const layerOf = (features: readonly VectorFeature[]): PlacedLayer => ({
  name: "pools",
  file: "pools.zip",
  crs: utm19,
  features,
});
const area = (id: string | null, ring: Positions, properties: JsonObject = {}): VectorFeature => ({
  id,
  properties: { name: `Pool ${id}`, ...properties },
  geometry: { type: "Polygon", coordinates: [ring] },
});
const ring = (gap: number): Positions => [
  [400_000, 4_600_000],
  [400_010, 4_600_000],
  [400_010, 4_600_010],
  [400_000, 4_600_000 + gap],
];
const mapping: ZoneMapping = {
  idField: null,
  nameField: "name",
  use: "pool",
  source: "survey 2024",
  hidden: false,
};

test("an outline with a gap below 1 mm is closed with a warning, and is then the closed outline", () => {
  const { zones, warnings } = toZones(layerOf([area("a", ring(0.0009)), area("b", ring(0))]), mapping);
  expect(warnings.map((w) => [w.code, w.place, w.value])).toEqual([
    ["ring-closed", 'feature 1 ("a"), ring 1', "gap of 0.90 mm"],
  ]);
  expect(zones[0]!.polygons).toEqual(zones[1]!.polygons);
  expect(zones[0]!.polygons[0]![0]).toHaveLength(3);
});

test("a wider gap is an error that names feature and gap; all problems come at once", async () => {
  const crossing: Positions = [
    [0, 0],
    [10, 10],
    [10, 0],
    [0, 10],
    [0, 0],
  ];
  const layer = layerOf([
    area("a", ring(0.001)),
    area("b", ring(2.5)),
    area("b", ring(0)),
    area("c", crossing),
    area(null, ring(0)),
    { ...area("d", ring(0)), properties: {} },
    { id: "e", properties: { name: "Ditch" }, geometry: { type: "LineString", coordinates: ring(0) } },
  ]);
  const problems = await problemsOf(() => toZones(layer, mapping));
  const told = problems.map((p) => `${p.code}: ${p.place}: ${p.value}`);
  expect(told).toContain('ring-open: feature 1 ("a"), ring 1: gap of 1.0 mm');
  expect(told).toContain('ring-open: feature 2 ("b"), ring 1: gap of 2.50 m');
  expect(told.find((t) => t.startsWith("zone-twins"))).toMatch(/"b"/);
  expect(told.find((t) => t.includes('("c")'))).toMatch(/^zone-ring.*near 5\.00, 5\.00/);
  expect(problems.find((p) => p.place.startsWith("feature 5"))?.message).toMatch(/needs an id/);
  expect(problems.find((p) => p.place.startsWith('feature 6 ("d")'))?.message).toMatch(/name/);
  expect(problems.find((p) => p.code === "zone-geometry")?.place).toBe('feature 7 ("e")');
  expect(problems.every((p) => isHelpful(p) && p.file === 'pools.zip, layer "pools"')).toBe(true);
});

test("fields, words of the file's own, dates, numbers as text, and names that look like numbers", () => {
  const features = [
    area("1", ring(0), {
      art: "reed",
      closed: "2024-04-15T00:00:00Z",
      opens: "08-01",
      w: "2.5",
      secret: "yes",
      no: 12,
    }),
    area("2", ring(0), { art: "bird", closed: "2024-04-15", opens: "2024-08-01", w: 3, secret: 0, no: 13 }),
  ];
  const { zones } = toZones(layerOf(features), {
    idField: "no",
    nameField: "no",
    use: { field: "art", words: { reed: "closed", bird: "seasonal-closure" } },
    source: { field: "art" },
    hidden: { field: "secret" },
    from: { field: "closed" },
    to: { field: "opens" },
    buffer_m: { field: "w" },
  });
  expect(zones.map((z) => [z.id, z.name, z.use, z.source, z.hidden, z.from, z.to, z.buffer_m])).toEqual([
    ["12", "12", "closed", "reed", true, "04-15", "08-01", 2.5],
    ["13", "13", "seasonal-closure", "bird", false, "04-15", "08-01", 3],
  ]);
});

test("a slip in the mapping is one message with what there is", async () => {
  const layer = layerOf([area("a", ring(0), { art: "reed" }), area("b", ring(0), { art: "alder" })]);
  const field = await problemsOf(() => toZones(layer, { ...mapping, nameField: "Nam" }));
  expect(field.map((p) => [p.code, p.value])).toEqual([["layer-field", "Nam"]]);
  expect(field[0]!.mend).toMatch(/"name", "art"/);
  const words = await problemsOf(() =>
    toZones(layer, { ...mapping, use: { field: "art", words: { reed: "pool" } } }),
  );
  expect(words[0]).toMatchObject({ code: "layer-word", place: 'feature 2 ("b"), art', value: "alder" });
});

test("points become starts and plots; areas and missing distances are named", async () => {
  const point = (id: string, properties: JsonObject): VectorFeature => ({
    id,
    properties: { name: id, ...properties },
    geometry: { type: "Point", coordinates: [400_000, 4_600_000] },
  });
  const layer = layerOf([
    point("gate", { what: "start" }),
    point("p1", { what: "plot", off: 1, side: "north" }),
  ]);
  const given = {
    idField: null,
    nameField: "name",
    kind: { field: "what" },
    arrive_from: { field: "side" },
  } as const;
  const { starts, plots } = toPlaces(layer, { ...given, keep_off_m: { field: "off" }, reach_m: 2 });
  expect(starts).toEqual([{ id: "gate", name: "gate", x: 400_000, y: 4_600_000 }]);
  expect(plots).toEqual([
    { id: "p1", name: "p1", x: 400_000, y: 4_600_000, keep_off_m: 1, reach_m: 2, arrive_from: "north" },
  ]);
  const problems = await problemsOf(() =>
    toPlaces(layerOf([...layer.features, area("x", ring(0))]), { ...given, kind: "plot" }),
  );
  expect(problems.map((p) => p.place)).toEqual(
    expect.arrayContaining(['feature 1 ("gate"), keep_off_m', 'feature 3 ("x"), geometry']),
  );
});

test("GeoJSON zones in another system than the site's are brought over, where the folder's own reader refuses them", async () => {
  const file = JSON.stringify({
    type: "FeatureCollection",
    crs: { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::26918" } },
    features: [
      {
        type: "Feature",
        id: 7,
        properties: { name: "Pool" },
        geometry: {
          type: "Polygon",
          coordinates: [
            [
              [747_000, 4_612_000],
              [747_100, 4_612_000],
              [747_100, 4_612_100],
              [747_000, 4_612_000],
            ],
          ],
        },
      },
    ],
  });
  const { layers } = await readLayers("pools.geojson", utf8(file));
  expect(layers[0]!.crs).toEqual({ epsg: 26918 });
  const { layer, warnings } = await placeLayer(layers[0]!, utm19);
  const { zones } = toZones(layer, mapping);
  expect(warnings.map((w) => w.code)).toEqual(["layer-reprojected"]);
  expect(zones[0]!.id).toBe("7");
  expect(zones[0]!.polygons[0]![0]![0]![0]).toBeLessThan(300_000);
});

test("GeoJSON whose numbers cannot be degrees and that names no system leaves it open", async () => {
  const file = JSON.stringify({ type: "Point", coordinates: [412_345, 4_612_345] });
  const { layers, warnings } = await readLayers("p.geojson", utf8(file));
  expect([layers[0]!.crs, warnings.map((w) => w.code)]).toEqual([null, ["geojson-degrees"]]);
});

test("ids become words that a visit can name, from a field or from the file; names stay, and a word stays as it is", () => {
  const point = (id: string | null, name: string): VectorFeature => ({
    id,
    properties: { name },
    geometry: { type: "Point", coordinates: [400_000, 4_600_000] },
  });
  const given = { nameField: "name", kind: "plot", keep_off_m: 1, reach_m: 2 } as const;
  const ids = (features: readonly VectorFeature[], idField: string | null) =>
    toPlaces(layerOf(features), { ...given, idField }).plots.map((p) => [p.id, p.name]);
  expect(ids([point(null, "Plot A"), point(null, "Älv 2"), point(null, "P-3")], "name")).toEqual([
    ["plot-a", "Plot A"],
    ["alv-2", "Älv 2"],
    ["P-3", "P-3"],
  ]);
  expect(ids([point("way point 7", "Seven")], null)).toEqual([["way-point-7", "Seven"]]);
});

test("two ids that become one word are told, not numbered unasked", async () => {
  const two = ["Plot A", "plot a"].map((name): VectorFeature => ({
    id: null,
    properties: { name },
    geometry: { type: "Point", coordinates: [400_000, 4_600_000] },
  }));
  const problems = await problemsOf(() =>
    toPlaces(layerOf(two), { idField: "name", nameField: "name", kind: "plot", keep_off_m: 1, reach_m: 2 }),
  );
  expect(problems).toMatchObject([{ code: "place-twins", value: "plot-a" }]);
});
