import { expect, test } from "vitest";
import { craftZip } from "../../test/support/zip.ts";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import { zipOf } from "../../test/support/shapefile.ts";
import { geoPackageFile, gpxFile, kmlFile, shapefileParts } from "../../test/support/vector-files.ts";
import { readLayers } from "./index.ts";

test("one archive with several layers of several formats, in folders, with capitals and litter", async () => {
  const parts = Object.entries(shapefileParts());
  const named = (stem: string) =>
    parts.map(([name, bytes]) => [name.replace("points", stem).replace(".dbf", ".DBF"), bytes] as const);
  const { layers, warnings } = await readLayers(
    "all.zip",
    zipOf({
      ...Object.fromEntries([...named("a/joints"), ...named("b/PLOTS")]),
      "b/spots.kml": kmlFile(),
      "b/walk.gpx": gpxFile(),
      "b/base.gpkg": await geoPackageFile(),
      "__MACOSX/._a": utf8("x"),
      "readme.txt": utf8("hello"),
    }),
  );
  expect(layers.map((l) => [l.name, l.features.length])).toEqual([
    ["joints", 5],
    ["PLOTS", 5],
    ["points", 5],
    ["spots", 5],
    ["walk waypoints", 5],
  ]);
  expect(warnings).toEqual([]);
});

test.each([
  [
    "a bomb: 1 kB that claims 300 MB",
    craftZip([{ name: "a.shp", data: new Uint8Array(1000), method: 8, size: 300_000_000 }]),
    "archive-entry",
  ],
  ["a name that climbs out of the folder", zipOf({ "../../etc/a.shp": utf8("x") }), "archive-entry"],
  ["an archive without a layer", zipOf({ "readme.txt": utf8("x") }), "archive-layers"],
  ["a .shp alone", shapefileParts()["points.shp"]!, "shp-alone"],
  ["a text of another kind", utf8("id,name\n1,a\n"), "vector-format"],
  ["a page of the web", utf8("<html><body/></html>"), "vector-format"],
  ["nothing", new Uint8Array(0), "vector-format"],
  ["GeoJSON without features", utf8('{"type": "Topology"}'), "geojson"],
  ["an archive inside an archive", zipOf({ "a.gpkg": zipOf({ "b.gpx": gpxFile() }) }), "vector-format"],
] as const)("refused in words that help: %s", async (_title, bytes, code) => {
  const problems = await problemsOf(() => readLayers("given.zip", bytes));
  expect(problems[0]!.code).toBe(code);
  expect(problems.every(isHelpful)).toBe(true);
});

test("features without a shape are left out with a warning; unlike shapes in one feature are parted", async () => {
  const point = { type: "Point", coordinates: [1, 2] };
  const line = {
    type: "LineString",
    coordinates: [
      [1, 2],
      [3, 4],
    ],
  };
  const feature = (id: string, geometry: unknown) => ({ type: "Feature", properties: { id }, geometry });
  const file = JSON.stringify({
    type: "FeatureCollection",
    features: [
      feature("none", null),
      feature("both", { type: "GeometryCollection", geometries: [point, line] }),
      feature("two", { type: "GeometryCollection", geometries: [point, point] }),
    ],
  });
  const { layers, warnings } = await readLayers("a.geojson", utf8(file));
  expect(layers[0]!.features.map((f) => [f.id, f.geometry.type])).toEqual([
    ["both/points", "Point"],
    ["both/lines", "LineString"],
    ["two", "MultiPoint"],
  ]);
  expect(warnings.map((w) => [w.code, w.value])).toEqual([
    ["no-shape", "1 of 3"],
    ["mixed-shapes", "1"],
  ]);
});
