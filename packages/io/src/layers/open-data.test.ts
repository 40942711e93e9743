import { describe, expect, test } from "vitest";
import { ringArea, type Crs, type Polygons } from "@causey/engine/site";
import { crsFromEpsg } from "../crs/index.ts";
import { hasOpenData, openData } from "../../test/support/open-data.ts";
import { zipOf } from "../../test/support/shapefile.ts";
import { placeLayer, readLayers, toZones, type ZoneMapping } from "./index.ts";

const set = "marsh-dem-stour";
const source =
  "marsh-dem-stour, platform outlined by Goodwin, Mudd and Clubb (2018), doi 10.5194/esurf-6-239-2018";
const mapping: ZoneMapping = {
  idField: "id",
  nameField: "id",
  use: "habitat",
  source: "Goodwin, Mudd and Clubb 2018",
  hidden: false,
  sensitivity: 4,
};

const part = (ending: string): Uint8Array => openData(`${set}/platform.${ending}`);
const zipped = (): Uint8Array =>
  zipOf(Object.fromEntries(["shp", "shx", "dbf", "prj"].map((e) => [`marsh/platform.${e}`, part(e)])));

const areaOf = (polygons: Polygons): number =>
  polygons
    .flat(1)
    .map((ring, i, all) => {
      const isHole = polygons.some((rings) => rings.indexOf(all[i]!) > 0);
      return (isHole ? -1 : 1) * Math.abs(ringArea(ring));
    })
    .reduce((a, b) => a + b, 0);

async function zonesOf(name: string, bytes: Uint8Array, crs: Crs) {
  const { layers } = await readLayers(name, bytes);
  const { layer, warnings } = await placeLayer(layers[0]!, crs);
  return { ...toZones(layer, mapping), placed: warnings, features: layers[0]!.features };
}

describe.skipIf(!hasOpenData(set))(source, () => {
  test("the zipped shapefile: five polygons, 25,474 m2 in all, each as large as its table says, in EPSG:27700", async () => {
    const { zones, features, placed } = await zonesOf("platform.zip", zipped(), await crsFromEpsg(27700));
    expect(zones).toHaveLength(5);
    expect(placed).toEqual([]);
    const areas = zones.map((z) => areaOf(z.polygons));
    expect(Math.round(areas.reduce((a, b) => a + b, 0))).toBe(25_474);
    areas.forEach((area, i) =>
      expect(Math.abs(area - Number(features[i]!.properties["area_m2"]))).toBeLessThan(0.1),
    );
  });

  test("the GeoJSON in longitude and latitude covers the same ground within the datum shift that its warning states", async () => {
    const crs = await crsFromEpsg(27700);
    const grid = await zonesOf("platform.zip", zipped(), crs);
    const degrees = await zonesOf("platform.geojson", part("geojson"), crs);
    expect(degrees.placed.map((w) => [w.code, /about 5 m/.test(w.message)])).toEqual([
      ["layer-reprojected", true],
    ]);
    expect(degrees.zones).toHaveLength(5);
    const total = degrees.zones.reduce((sum, z) => sum + areaOf(z.polygons), 0);
    expect(Math.abs(total - 25_474)).toBeLessThan(5);
    grid.zones.forEach((zone, i) => {
      const [x, y] = zone.polygons[0]![0]![0]!;
      const nearest = Math.min(
        ...degrees.zones[i]!.polygons[0]![0]!.map(([u, v]) => Math.hypot(u - x, v - y)),
      );
      expect(nearest).toBeLessThan(5);
    });
  });

  test("the shapefile on a site in UTM zone 31 is reprojected; areas keep the scale of the grid", async () => {
    const { zones, placed } = await zonesOf("platform.zip", zipped(), await crsFromEpsg(32631));
    expect(placed.map((w) => w.code)).toEqual(["layer-reprojected"]);
    const total = zones.reduce((sum, z) => sum + areaOf(z.polygons), 0);
    expect(Math.abs(total / 25_474 - 1)).toBeLessThan(0.001);
    const [x, y] = zones[0]!.polygons[0]![0]![0]!;
    expect([Math.round(x / 1000), Math.round(y / 1000)]).toEqual([378, 5758]);
  });
});
