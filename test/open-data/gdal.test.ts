import { rasterExtent } from "@causey/engine/site";
import { comparePrj, crsFromEpsg } from "@causey/io/crs";
import { writeGeoPackage } from "@causey/io/geopackage";
import { placeLayer, readLayers, toZones, type VectorLayer } from "@causey/io/layers";
import { photoPixels, readPhoto } from "@causey/io/photo";
import { readPenetrometer, readPoints } from "@causey/io/points";
import { readTerrain } from "@causey/io/terrain";
import { writeZones } from "@causey/io/vector";
import { describe, expect, test } from "vitest";
import { hasGdal, inFolder, layerInfo, load, run, save } from "../../packages/io/test/support/gdal.ts";
import { hasOpenData, openData as bytesOf } from "../../packages/io/test/support/open-data.ts";
import { zipOf } from "../../packages/io/test/support/shapefile.ts";
import {
  ask,
  at,
  cellsOf,
  epsgOf,
  expectLevels,
  extentOf,
  gdalInfo,
  gdalValues,
  name,
  near,
  PRINTED,
} from "./witness.ts";

const METRES = { unit: "m", decimal: "point", date_order: "ymd" } as const;
const plain = { code: null, accuracy: null, date: null } as const;

describe.skipIf(!hasGdal)("witness: GDAL's command line tools on the open data", () => {
  test.skipIf(!hasOpenData("marsh-dem-stour") || !hasOpenData("marsh-dem-sweney")).each([
    ["marsh-dem-stour/dem-native.tif", 27700],
    ["marsh-dem-stour/dem-1m.tif", 27700],
    ["marsh-dem-stour/dem-1m.asc", null],
    ["marsh-dem-stour/platform-native.tif", 27700],
    ["marsh-dem-sweney/dem-2m.tif", null],
    ["marsh-dem-sweney/dem-2m.asc", null],
  ])("%s: size, extent, system, least and greatest height, and heights at 40 cells", async (path, epsg) => {
    const { raster, crs } = await readTerrain(name(path), bytesOf(path), { unit: "m" });
    const info = gdalInfo(at(path));
    expect([raster.cols, raster.rows]).toEqual(info.size);
    const { lowerLeft, upperRight } = info.cornerCoordinates;
    near(rasterExtent(raster), [...lowerLeft, ...upperRight], PRINTED);
    expect(crs?.code ?? null).toBe(epsg);
    if (epsg !== null) expect(epsgOf(info)).toBe(epsg);
    const known = [...raster.values].filter((z) => !Number.isNaN(z));
    const [low, high] = [known.reduce((a, z) => Math.min(a, z)), known.reduce((a, z) => Math.max(a, z))];
    near([low, high], [info.bands[0]!.minimum!, info.bands[0]!.maximum!], 5e-4);
    const nodata = info.bands[0]!.noDataValue ?? NaN;
    const cells = cellsOf(raster.cols, raster.rows);
    const theirs = gdalValues(at(path), cells);
    cells.forEach(([col, row], k) => {
      const ours = raster.values[(raster.rows - 1 - row) * raster.cols + col]!;
      if (theirs[k] === nodata) expect(ours).toBeNaN();
      else near([ours], [theirs[k]!], 1e-6 * Math.max(1, Math.abs(theirs[k]!)));
    });
  });

  test.skipIf(!hasOpenData("marsh-dem-stour"))(
    "marsh-dem-stour: the platform as shapefile and as GeoJSON: count and extent; as zones and as a GeoPackage of ours GDAL opens it, in EPSG:27700, with 25,474 m2",
    async () => {
      const parts = Object.fromEntries(
        ["shp", "shx", "dbf", "prj"].map((e) => [`platform.${e}`, bytesOf(`marsh-dem-stour/platform.${e}`)]),
      );
      const flat = (layer: VectorLayer): readonly (readonly [number, number])[] =>
        layer.features.flatMap(
          (f) =>
            (f.geometry.coordinates as [number, number][][]).flat(
              f.geometry.type === "Polygon" ? 1 : 2,
            ) as unknown as [number, number][],
        );
      for (const [file, bytes, from] of [
        ["platform.zip", zipOf(parts), "platform.shp"],
        ["platform.geojson", bytesOf("marsh-dem-stour/platform.geojson"), "platform.geojson"],
      ] as const) {
        const { layers } = await readLayers(file, bytes);
        const info = layerInfo(at(`marsh-dem-stour/${from}`), "platform");
        expect(layers[0]!.features).toHaveLength(info.count);
        const points = flat(layers[0]!);
        near(
          extentOf(
            points.map((p) => p[0]),
            points.map((p) => p[1]),
          ),
          info.extent!,
          1e-5,
        );
      }
      const crs = await crsFromEpsg(27700);
      const { layers } = await readLayers("platform.zip", zipOf(parts));
      const { layer } = await placeLayer(layers[0]!, crs);
      const mapping = { idField: "id", nameField: "id", use: "habitat", source: "x", hidden: false } as const;
      const { zones } = toZones(layer, mapping);
      const packed = await writeGeoPackage([
        { name: "platform", crs: { epsg: 27700 }, features: layer.features },
      ]);
      await inFolder((folder) => {
        const shp = layerInfo(at("marsh-dem-stour/platform.shp"), "platform");
        const geojson = save(folder, "zones.geojson", writeZones(zones, { epsg: 27700 }));
        const gpkg = save(folder, "ours.gpkg", packed);
        for (const [path, table] of [
          [geojson, "zones"],
          [gpkg, "platform"],
        ] as const) {
          const info = layerInfo(path, table);
          expect([info.count, info.epsg]).toEqual([5, 27700]);
          near(info.extent!, shp.extent!, 1e-3);
          const geometry = path === gpkg ? "geom" : "geometry";
          const [area] = ask(
            path,
            `SELECT SUM(ST_Area(${geometry})) AS area FROM "${table}"`,
            "-dialect",
            "SQLite",
          );
          near([area!], [25_474], 1);
        }
      });
    },
  );

  test.skipIf(!hasOpenData("marsh-survey-points")).each([
    ["wells_int", 26919, "X", "Y", "Z", "X <> 0"],
    ["grants_beach", 2953, "x", "y", "z", "z <> 0"],
  ] as const)(
    "marsh-survey-points: %s: count, extent and heights of the points that count; its .prj is EPSG:%i for both",
    async (site, epsg, x, y, z, counts) => {
      const path = `marsh-survey-points/${site}-points.csv`;
      const { points } = readPoints(name(path), bytesOf(path), {
        ...METRES,
        columns: { id: null, x, y, z, ...plain },
        heights: "as-read",
      });
      const theirs = ask(
        at(path),
        `SELECT COUNT(*) AS n, MIN(${x}) AS a, MIN(${y}) AS b, MAX(${x}) AS c, MAX(${y}) AS d, MIN(${z}) AS e, MAX(${z}) AS f FROM "${site}-points" WHERE ${counts}`,
        "-oo",
        "AUTODETECT_TYPE=YES",
      );
      const heights = [...points.z];
      near(
        [points.z.length, ...extentOf(points.x, points.y), Math.min(...heights), Math.max(...heights)],
        theirs,
        1e-6,
      );
      const words = new TextDecoder().decode(bytesOf(`marsh-survey-points/${site}.prj`));
      expect(comparePrj(words, await crsFromEpsg(epsg))).toBe("agrees");
    },
  );

  test.skipIf(!hasOpenData("hydroperiod-ria-formosa"))(
    "hydroperiod-ria-formosa: points and tide table: count, extent, least and greatest height",
    () => {
      const path = "hydroperiod-ria-formosa/data_points.csv";
      const { points } = readPoints(name(path), bytesOf(path), {
        ...METRES,
        columns: { id: "point", x: "latitude", y: "longitude", z: "elevation", ...plain },
      });
      near(
        [points.z.length, ...extentOf(points.x, points.y), Math.min(...points.z), Math.max(...points.z)],
        ask(
          at(path),
          "SELECT COUNT(*) AS n, MIN(latitude) AS a, MIN(longitude) AS b, MAX(latitude) AS c, MAX(longitude) AS d, MIN(elevation) AS e, MAX(elevation) AS f FROM data_points",
          "-oo",
          "AUTODETECT_TYPE=YES",
        ),
        1e-6,
      );
      const table = "hydroperiod-ria-formosa/data_heights.csv";
      expectLevels(table, "data_heights", "datetime", "height", "high-low");
    },
  );

  test.skipIf(!hasOpenData("water")).each([
    ["bishops-head-8571421-hourly-2019-2021", "time_utc", "verified_m", "readings", "m"],
    ["farm-creek-marsh-pond-15min-2018-03_2019-02", "time_est", "level_ft_navd88", "readings", "ft"],
    ["faro-olhao-tide-table-2017-03", "datetime", "height", "high-low", "m"],
    ["synthetic-charleston-8665530-hourly-2023", "time_utc", "noisy_m_msl", "readings", "m"],
  ] as const)(
    "water/%s: rows with a level, least, greatest and mean level",
    (file, time, level, kind, unit) => expectLevels(`water/${file}.csv`, file, time, level, kind, unit),
  );

  test.skipIf(!hasOpenData("ground-strength-sweden"))(
    "ground-strength-sweden: 1,063 places, their extent, and the mean cone index at each depth",
    () => {
      const path = "ground-strength-sweden/penetration-transects.csv";
      const { places } = readPenetrometer(name(path), bytesOf(path), {
        columns: { id: "Name", x: "Easting", y: "Northing", index: ["Kpa5", "Kpa10", "Kpa15"], group: null },
        decimal: "point",
      });
      const mean = (k: number): number => places.reduce((s, p) => s + p.index_kpa[k]!, 0) / places.length;
      near(
        [
          places.length,
          ...extentOf(
            places.map((p) => p.x),
            places.map((p) => p.y),
          ),
          mean(0),
          mean(1),
          mean(2),
        ],
        ask(
          at(path),
          'SELECT COUNT(*) AS n, MIN(Easting) AS a, MIN(Northing) AS b, MAX(Easting) AS c, MAX(Northing) AS d, AVG(Kpa5) AS e, AVG(Kpa10) AS f, AVG(Kpa15) AS g FROM "penetration-transects"',
          "-oo",
          "AUTODETECT_TYPE=YES",
        ),
        1e-4,
      );
    },
  );

  test.skipIf(!hasOpenData("marsh-dem-stour")).each([
    ["DEFLATE", "2", "YES"],
    ["LZW", "2", "NO"],
    ["NONE", "1", "YES"],
  ])(
    "marsh-dem-stour as a picture of three colours, packed with %s, predictor %s, tiled %s: extent, system and colours as GDAL wrote them",
    async (compress, predictor, tiled) => {
      await inFolder(async (folder) => {
        const path = `${folder}/photo.tif`;
        const bands = [
          "-b",
          "1",
          "-b",
          "1",
          "-b",
          "1",
          "-scale",
          "-1",
          "3",
          "0",
          "255",
          "-ot",
          "Byte",
          "-a_nodata",
          "none",
        ];
        const packing = [
          `COMPRESS=${compress}`,
          `TILED=${tiled}`,
          "PHOTOMETRIC=RGB",
          ...(compress === "NONE" ? [] : [`PREDICTOR=${predictor}`]),
        ];
        run(
          "gdal_translate",
          "-q",
          ...bands,
          ...packing.flatMap((p) => ["-co", p]),
          at("marsh-dem-stour/dem-1m.tif"),
          path,
        );
        const bytes = load(path);
        const read = readPhoto({ file: "photo.tif", world: null }, bytes, { epsg: 27700 });
        const info = gdalInfo(path);
        near(
          read.extent,
          [...info.cornerCoordinates.lowerLeft, ...info.cornerCoordinates.upperRight],
          PRINTED,
        );
        expect([read.cols, read.rows]).toEqual(info.size);
        const pixels = (await photoPixels("photo.tif", bytes, 4000))!;
        const cells = cellsOf(read.cols, read.rows);
        expect(cells.map(([col, row]) => pixels.rgba[(row * read.cols + col) * 4])).toEqual(
          gdalValues(path, cells),
        );
      });
    },
  );
});
