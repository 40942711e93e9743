import { describe, expect, test } from "vitest";
import { hasGdal, inFolder, layerInfo, load, run, save } from "../../test/support/gdal.ts";
import { hasOpenData, openData } from "../../test/support/open-data.ts";
import { zipOf } from "../../test/support/shapefile.ts";
import { fivePoints, geoJsonFile, geoPackageFile, gpxFile, utm19 } from "../../test/support/vector-files.ts";
import { allPositions, type VectorLayer } from "../layer-form/index.ts";
import { writeGeoPackage } from "../geopackage/index.ts";
import { writeGpx } from "../markup/index.ts";
import { placeLayer, readLayers } from "./index.ts";

const extentOf = (layer: VectorLayer): number[] => {
  const all = layer.features.flatMap((f) => allPositions(f.geometry));
  const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

const expectNear = (a: readonly number[], b: readonly number[], tolerance: number): void => {
  expect(a).toHaveLength(b.length);
  a.forEach((v, i) => expect(Math.abs(v - b[i]!)).toBeLessThan(tolerance));
};

describe.skipIf(!hasGdal)("witness: the command line tools of GDAL", () => {
  test.each([
    ["out.shp", ["-f", "ESRI Shapefile", "-t_srs", "EPSG:26919"]],
    ["out.gpkg", ["-f", "GPKG", "-t_srs", "EPSG:26919"]],
    ["out.kml", ["-f", "KML"]],
    ["out.gpx", ["-f", "GPX", "-select", "name"]],
    ["out.geojson", ["-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=9"]],
  ])("%s written by ogr2ogr gives the five points to 1 mm", async (name, options) => {
    await inFolder(async (folder) => {
      const from = save(folder, "in.geojson", geoJsonFile());
      run("ogr2ogr", ...options, `${folder}/${name}`, from);
      const side = ["shp", "shx", "dbf", "prj"];
      const bytes = name.endsWith(".shp")
        ? zipOf(Object.fromEntries(side.map((e) => [`out.${e}`, load(`${folder}/out.${e}`)])))
        : load(`${folder}/${name}`);
      const { layers } = await readLayers(name, bytes);
      const { layer } = await placeLayer(layers[0]!, utm19);
      expect(layer.features.map((f) => f.properties["name"] ?? f.properties["Name"])).toEqual(
        fivePoints.map((p) => p.name),
      );
      layer.features.forEach((f, i) =>
        expectNear(f.geometry.coordinates as readonly number[], fivePoints[i]!.at, 0.001),
      );
    });
  });

  test("a GeoPackage of ours: ogrinfo reads its system, count, extent and kinds of shape, without a complaint", async () => {
    const square = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ] as const;
    const hole = [
      [4, 4],
      [4, 6],
      [6, 6],
    ] as const;
    const bytes = await writeGeoPackage([
      {
        name: "pools",
        crs: { epsg: 27700 },
        features: [
          {
            id: "a",
            properties: { name: "Größe 5", deep_m: 1.5, count: 3, wet: true, tags: ["x"] },
            geometry: { type: "Polygon", coordinates: [square, hole] },
          },
        ],
      },
      {
        name: "paths",
        crs: "lon-lat",
        features: [
          {
            id: null,
            properties: {},
            geometry: {
              type: "LineString",
              coordinates: [
                [1, 51],
                [1.5, 52],
              ],
            },
          },
        ],
      },
      {
        name: "grid",
        crs: { local: "Fen grid" },
        features: [{ id: "g", properties: {}, geometry: { type: "Point", coordinates: [3, 4] } }],
      },
      { name: "empty", crs: { epsg: 26919 }, features: [] },
    ]);
    await inFolder((folder) => {
      const path = save(folder, "ours.gpkg", bytes);
      expect(layerInfo(path, "pools")).toEqual({
        count: 1,
        extent: [0, 0, 10, 10],
        epsg: 27700,
        type: "Polygon",
      });
      expect(layerInfo(path, "paths")).toEqual({
        count: 1,
        extent: [1, 51, 1.5, 52],
        epsg: 4326,
        type: "Line String",
      });
      expect(layerInfo(path, "grid")).toMatchObject({ count: 1, extent: [3, 4, 3, 4], epsg: null });
      expect(layerInfo(path, "empty")).toMatchObject({ count: 0, epsg: 26919 });
      const all = run("ogrinfo", "-al", path, "pools");
      expect(all).toMatch(/POLYGON \(\(0 0,10 0,10 10,0 10,0 0\),\(4 4,4 6,6 6,4 4\)\)/);
      expect(all).toMatch(/name \(String\) = Größe 5/);
      expect(all).toMatch(/deep_m \(Real\) = 1\.5/);
      expect(all).toMatch(/count \(Integer64\) = 3/);
      expect(all).toMatch(/wet \(Integer\(Boolean\)\) = 1/);
      expect(run("ogr2ogr", "-f", "GeoJSON", `${folder}/back.geojson`, path, "pools")).toBe("");
    });
  });

  test("the five points as a GeoPackage of ours: count, extent and code agree with what we read back", async () => {
    const bytes = await geoPackageFile();
    const { layers } = await readLayers("points.gpkg", bytes);
    await inFolder((folder) => {
      const info = layerInfo(save(folder, "points.gpkg", bytes), "points");
      expect([info.count, info.epsg, info.type]).toEqual([5, 26919, "Point"]);
      expectNear(info.extent!, extentOf(layers[0]!), 1e-6);
    });
  });

  test("a GPX of ours: waypoints and tracks, names with signs that XML reserves", async () => {
    const bytes = writeGpx(
      [{ name: 'A/1 <&> "x"', lon: -70.1, lat: 41.6, note: "sleeper" }],
      [
        {
          name: "A",
          points: [
            [-70.1, 41.6],
            [-70.2, 41.7],
          ],
        },
      ],
      "Plan & more",
    );
    await inFolder((folder) => {
      const path = save(folder, "ours.gpx", bytes);
      expect(run("ogrinfo", "-al", path, "waypoints")).toMatch(/name \(String\) = A\/1 <&> "x"/);
      expect(layerInfo(path, "tracks")).toMatchObject({
        count: 1,
        extent: [-70.2, 41.6, -70.1, 41.7],
        epsg: 4326,
      });
      expect(layerInfo(save(folder, "five.gpx", gpxFile()), "waypoints").count).toBe(5);
    });
  });

  test.each(["Point", "PointZ", "PointM", "PointZM"])(
    "GeoPackage shapes of kind %s are read in the plane",
    async (kind) => {
      const values = kind === "Point" ? "7 8" : kind === "PointZM" ? "7 8 9 10" : "7 8 9";
      await inFolder(async (folder) => {
        const csv = save(
          folder,
          "in.csv",
          new TextEncoder().encode(
            `id,WKT\na,"${kind.replace("Point", "POINT ").replace(/ $/, "")} (${values})"\n`,
          ),
        );
        run(
          "ogr2ogr",
          "-f",
          "GPKG",
          "-a_srs",
          "EPSG:26919",
          "-oo",
          "GEOM_POSSIBLE_NAMES=WKT",
          `${folder}/z.gpkg`,
          csv,
        );
        const { layers } = await readLayers("z.gpkg", load(`${folder}/z.gpkg`));
        expect(layers[0]!.features[0]!.geometry).toEqual({ type: "Point", coordinates: [7, 8] });
      });
    },
  );

  test.each(["POLYGON Z", "LINESTRING M", "MULTIPOLYGON ZM"])(
    "shapefile and GeoPackage: %s keeps its plane",
    async (kind) => {
      const corner = (x: number, y: number): string =>
        [x, y, ...(kind.endsWith("ZM") ? [5, 6] : [5])].join(" ");
      const line = [corner(0, 0), corner(4, 0), corner(4, 4), corner(0, 0)].join(",");
      const wkt = kind.startsWith("LINE")
        ? `${kind} (${line})`
        : kind.startsWith("MULTI")
          ? `${kind} (((${line})))`
          : `${kind} ((${line}))`;
      await inFolder(async (folder) => {
        const csv = save(folder, "in.csv", new TextEncoder().encode(`name,WKT\na,"${wkt}"\n`));
        const from = ["-a_srs", "EPSG:26919", "-oo", "GEOM_POSSIBLE_NAMES=WKT"];
        run("ogr2ogr", "-f", "GPKG", ...from, `${folder}/z.gpkg`, csv);
        run("ogr2ogr", "-f", "ESRI Shapefile", ...from, `${folder}/z.shp`, csv);
        const zip = zipOf(
          Object.fromEntries(["shp", "shx", "dbf", "prj"].map((e) => [`z.${e}`, load(`${folder}/z.${e}`)])),
        );
        for (const [name, bytes] of [
          ["z.gpkg", load(`${folder}/z.gpkg`)],
          ["z.zip", zip],
        ] as const) {
          const { layers } = await readLayers(name, bytes);
          const positions = allPositions(layers[0]!.features[0]!.geometry).map((p) => [...p].join(" "));
          expect(new Set(positions)).toEqual(new Set(["0 0", "4 0", "4 4"]));
        }
      });
    },
  );

  test.skipIf(!hasOpenData("marsh-dem-stour"))(
    "marsh-dem-stour platform: count, system and extent as ogrinfo says",
    async () => {
      const part = (e: string): Uint8Array => openData(`marsh-dem-stour/platform.${e}`);
      const parts = Object.fromEntries(["shp", "shx", "dbf", "prj"].map((e) => [`platform.${e}`, part(e)]));
      const { layers } = await readLayers("platform.zip", zipOf(parts));
      await inFolder((folder) => {
        for (const [name, bytes] of Object.entries(parts)) save(folder, name, bytes);
        const info = layerInfo(`${folder}/platform.shp`, "platform");
        expect(layers[0]!.features).toHaveLength(info.count);
        expectNear(info.extent!, extentOf(layers[0]!), 1e-5);
        expect(info.epsg).toBe(27700);
      });
    },
  );
});
