// Rows 3 to 5 of the feature list: survey points, places and rasters as people have them.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Plan } from "@causey/engine/plan";
import { groundAt } from "@causey/engine/site";
import { M_PER_FT } from "@causey/engine/units";
import { describe, expect, test } from "vitest";
import { geoTags, writeTiff } from "../../packages/io/test/support/tiff.ts";
import {
  fivePoints,
  geoJsonFile,
  gpxFile,
  kmlFile,
  shapefileZip,
} from "../../packages/io/test/support/vector-files.ts";
import { flatPlan, folderFiles, planned, problemsIn } from "../support/feature-plan.ts";
import { causey, folderOf, temporaryFolder } from "../support/shell.ts";

type Points = Extract<Plan["terrain"], { kind: "points" }>;
const columns: Points["columns"] = {
  id: "Pt",
  x: "Easting",
  y: "Northing",
  z: "Elev",
  code: null,
  accuracy: "VRMS",
  date: "Date",
};
const surveyed = (some: Partial<Points> = {}): Plan =>
  flatPlan({
    terrain: {
      kind: "points",
      file: "rtk.csv",
      columns,
      unit: "m",
      decimal: "point",
      date_order: "ymd",
      datum: flatPlan().vertical_datum,
      cell_m: 1,
      longest_edge_m: 15,
      ...some,
    },
  });

/** A survey every 5 m with a metre written as `per` of the file's unit, at seven digits behind the point. */
function rtk(heads: readonly string[], per: number, delimiter = ","): string {
  const n = (m: number): string => (m / per).toFixed(7);
  const rows = Array.from({ length: 13 * 9 }, (_, i) => [5 * (i % 13), 5 * Math.floor(i / 13)] as const).map(
    ([x, y], i) => [`P${i}`, n(x), n(y), n(1 + x / 200 + y / 400), n(0.015), "2027-02-03"].join(delimiter),
  );
  return [heads.join(delimiter), ...rows].join("\r\n");
}
const HEADS = ["Pt", "Easting", "Northing", "Elev", "VRMS", "Date"];

describe("3 import RTK CSV with column mapping and unit choice (common practice, no source; 1 ft = 0.3048 m exactly)", () => {
  test("3 a feet file under other heads and a metre file give the same point within 1 mm", async () => {
    const metric = await planned(folderFiles(surveyed(), { "rtk.csv": rtk(HEADS, 1) }));
    const own = { id: "name", x: "E", y: "N", z: "height", code: null, accuracy: "sd", date: "taken" };
    const heads = ["name", "E", "N", "height", "sd", "taken"];
    const feet = await planned(
      folderFiles(surveyed({ unit: "ft", columns: own }), { "rtk.csv": rtk(heads, M_PER_FT, ";") }),
    );
    for (const [x, y] of [
      [5, 20],
      [17.3, 8.9],
      [38, 31.5],
    ] as const) {
      const [a, b] = [groundAt(metric.site.terrain, x, y), groundAt(feet.site.terrain, x, y)];
      expect(Math.abs(a - b)).toBeLessThan(0.001);
      expect(Math.abs(a - (1 + x / 200 + y / 400))).toBeLessThan(0.001);
    }
    expect(feet.results.survey.points).toMatchObject({ n: 117, accuracy: { stated: 117 } });
    expect(feet.results.survey.points!.accuracy!.worst_m).toBeCloseTo(0.015, 5);
  });

  test("3 the wrong unit is not taken in silence: a head that names feet is refused in a metre file", async () => {
    const heads = ["Pt", "Easting (ft)", "Northing (ft)", "Elev (ft)", "VRMS", "Date"];
    const named = { ...columns, x: heads[1]!, y: heads[2]!, z: heads[3]! };
    const problems = await problemsIn(
      folderFiles(surveyed({ columns: named }), { "rtk.csv": rtk(heads, M_PER_FT) }),
    );
    expect(problems.map((p) => p.code)).toContain("points-unit");
  });
});

/** Ground around the five points in UTM zone 19, one cell of it standing out. */
const [WEST, NORTH, CELL, COLS, ROWS] = [412_300, 4_612_540, 5, 70, 60] as const;
const cells = Array.from({ length: COLS * ROWS }, (_, i) => 1 + (i % COLS) / 100);
const KNOWN = { col: 21, row: 33 };
cells[KNOWN.row * COLS + KNOWN.col] = 2.875;
const lidar = (epsg: number | null): Uint8Array =>
  writeTiff(COLS, ROWS, cells, { tags: geoTags(WEST, NORTH, CELL, CELL, epsg) });
const inUtm = flatPlan({
  crs: { epsg: 26919 },
  terrain: { kind: "grid", file: "lidar.tif", unit: "m", datum: flatPlan().vertical_datum },
  starts: [{ id: "gate", name: "Gate", x: 412_345, y: 4_612_345 }],
  plots: [{ id: "p1", name: "Plot 1", x: 412_375, y: 4_612_345, keep_off_m: 1, reach_m: 3 }],
});

describe("4 import GPX, KML, GeoJSON, shapefile (zip) (common practice, no source)", () => {
  const kinds = [
    ["points.gpx", gpxFile],
    ["points.kml", kmlFile],
    ["points.geojson", geoJsonFile],
    ["points.zip", shapefileZip],
  ] as const;

  test.each(kinds)("4 %s: the shell brings in the same five points, to 1 mm", (name, make) => {
    const folder = folderOf(folderFiles(inUtm, { "lidar.tif": lidar(26919) }));
    const file = join(temporaryFolder(), name);
    writeFileSync(file, make());
    const out = join(temporaryFolder(), "out");
    const ran = causey([
      "import",
      folder,
      file,
      "--as",
      "plots",
      "--id-field",
      "name",
      "--name-field",
      "name",
      "--keep-off",
      "1.5",
      "--reach",
      "2",
      "--out",
      out,
    ]);
    expect(ran.error).not.toContain("error");
    expect(ran.code).toBe(0);
    const { features } = JSON.parse(readFileSync(join(out, "places.geojson"), "utf8")) as {
      features: { properties: { kind: string; name: string }; geometry: { coordinates: [number, number] } }[];
    };
    const plots = features.filter((f) => f.properties.kind === "plot" && f.properties.name !== "Plot 1");
    expect(plots.map((f) => f.properties.name)).toEqual(fivePoints.map((p) => p.name));
    plots.forEach(({ geometry: { coordinates } }, i) => {
      const [x, y] = fivePoints[i]!.at;
      expect(Math.hypot(coordinates[0] - x, coordinates[1] - y)).toBeLessThan(0.001);
    });
    expect(causey(["check", out]).code).toBe(0);
  });
});

describe("5 import GeoTIFF DEM with its CRS (OGC GeoTIFF 1.1)", () => {
  test("5 a sample of the terrain equals the known cell, at the cell's own place", async () => {
    const { site } = await planned(folderFiles(inUtm, { "lidar.tif": lidar(26919) }));
    const [x, y] = [WEST + (KNOWN.col + 0.5) * CELL, NORTH - (KNOWN.row + 0.5) * CELL];
    expect(groundAt(site.terrain, x, y)).toBeCloseTo(2.875, 6);
    expect(groundAt(site.terrain, x + CELL, y)).toBeCloseTo(1 + (KNOWN.col + 1) / 100, 6);
    expect(site.crs).toMatchObject({ kind: "epsg", code: 26919 });
  });

  test("5 without a CRS, and in another one than the plan's, it is refused", async () => {
    const without = await problemsIn(folderFiles(inUtm, { "lidar.tif": lidar(null) }));
    expect(without.map((p) => [p.code, p.file])).toEqual([["crs-missing", "lidar.tif"]]);
    expect(without[0]!.mend).toContain("crs_confirmed");
    const other = await problemsIn(folderFiles(inUtm, { "lidar.tif": lidar(27700) }));
    expect(other[0]!.code).toBe("crs-mismatch");
  });
});
