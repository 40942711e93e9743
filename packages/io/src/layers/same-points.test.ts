import { expect, test } from "vitest";
import {
  fivePoints,
  geoJsonFile,
  geoPackageFile,
  gpxFile,
  kmlFile,
  shapefileZip,
  utm19,
} from "../../test/support/vector-files.ts";
import { zipOf } from "../../test/support/shapefile.ts";
import { placeLayer, readLayers, toPlaces, type PlaceMapping } from "./index.ts";

const mapping: PlaceMapping = {
  idField: "name",
  nameField: "name",
  kind: "plot",
  keep_off_m: 1.5,
  reach_m: 2,
};

const files: readonly (readonly [string, () => Uint8Array | Promise<Uint8Array>, "exact" | "reprojected"])[] =
  [
    ["points.gpx", gpxFile, "reprojected"],
    ["points.kml", kmlFile, "reprojected"],
    ["points.kmz", () => zipOf({ "doc.kml": kmlFile() }), "reprojected"],
    ["points.geojson", geoJsonFile, "reprojected"],
    ["points.zip", shapefileZip, "exact"],
    ["points.gpkg", geoPackageFile, "exact"],
    ["misnamed.dat", gpxFile, "reprojected"],
  ];

test.each(files)("%s: the same five points in EPSG:26919, to 1 mm", async (name, make, kind) => {
  const { layers } = await readLayers(name, await make());
  expect(layers).toHaveLength(1);
  const { layer, warnings } = await placeLayer(layers[0]!, utm19);
  const { plots, starts } = toPlaces(layer, mapping);
  expect(starts).toEqual([]);
  expect(plots.map((p) => p.name)).toEqual(fivePoints.map((p) => p.name));
  plots.forEach((plot, i) => {
    const [x, y] = fivePoints[i]!.at;
    expect(Math.hypot(plot.x - x, plot.y - y)).toBeLessThan(kind === "exact" ? 1e-9 : 0.001);
    expect([plot.keep_off_m, plot.reach_m]).toEqual([1.5, 2]);
  });
  expect(warnings.map((w) => w.code)).toEqual(kind === "exact" ? [] : ["layer-reprojected"]);
});
