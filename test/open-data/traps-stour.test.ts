import { groundAt, type Raster } from "@causey/engine/site";
import { crsFromEpsg } from "@causey/io/crs";
import { placeLayer, readLayers } from "@causey/io/layers";
import { readTerrain } from "@causey/io/terrain";
import { describe, expect, test } from "vitest";
import { hasOpenData, openData } from "../../packages/io/test/support/open-data.ts";
import { readGroundPlan, type Ground } from "./said-plan.ts";
import { said } from "./said.ts";

const set = "marsh-dem-stour";
const source =
  "Goodwin, Mudd and Clubb (2018), doi 10.5194/esurf-6-239-2018; figures as worked out beside the data";
const DATUM = "Ordnance Datum Newlyn";
const file = (name: string): Uint8Array => openData(`${set}/${name}`);
const read = (name: string): ReturnType<typeof readTerrain> => readTerrain(name, file(name), { unit: "m" });
const plan = (name: string, more: Partial<Ground> = {}): Ground => ({
  crs: { epsg: 27700 },
  datum: DATUM,
  terrain: { kind: "grid", file: name, unit: "m", datum: DATUM },
  start: [621_915.5, 233_723.5],
  plot: [621_942.5, 233_664.5],
  files: { [name]: file(name) },
  ...more,
});
const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.round(share * (values.length - 1))]!;
const known = (raster: Raster): number[] => [...raster.values].filter((z) => !Number.isNaN(z));

describe.skipIf(!hasOpenData(set))(source, () => {
  test("marsh-dem-stour: cells that are not square are named, and kept as they are: 1.000602 x 1.000762 m, mean height 1.107 m", async () => {
    const { raster, warnings } = await read("dem-native.tif");
    said(warnings, "terrain-not-square", {
      severity: "warning",
      place: "cell size",
      value: "1.000602 x 1.000762 m",
      message: "nothing is resampled",
      mend: "by its coordinates, not cell by cell",
    });
    const heights = known(raster);
    expect(heights.reduce((a, z) => a + z, 0) / heights.length).toBeCloseTo(1.107, 3);
    // The mend is the square grid of the same ground: without the message, and at the same heights.
    const square = await read("dem-1m.tif");
    expect(square.warnings.map((w) => w.code)).not.toContain("terrain-not-square");
    expect(
      Math.abs(groundAt(raster, 621_942, 233_664) - groundAt(square.raster, 621_942, 233_664)),
    ).toBeLessThan(0.05);
  });

  test("marsh-dem-stour: the collar without data is named with its share (81.3 % valid); a start on it is refused, and moved onto ground it is not", async () => {
    const { warnings } = await read("dem-native.tif");
    said(warnings, "terrain-gaps", {
      value: "18.7 %",
      message: "nothing is known of the ground there",
      mend: "terrain that covers it",
    });
    const collar = await readGroundPlan(plan("dem-1m.tif", { start: [621_880.5, 233_770.5] }));
    said(collar.problems, "place-on-nodata", {
      severity: "error",
      place: 'start "Gate"',
      value: "621880.5, 233770.5",
      message: "hold no data",
      mend: "Move it onto known ground",
    });
    const mended = await readGroundPlan(plan("dem-1m.tif"));
    expect(mended.errors).toEqual([]);
  });

  test("marsh-dem-stour: the highest ground (up to 2.770 m) all along the edge is named; cut off there, the platform's percentiles are 1.31, 1.88, 1.99 m", async () => {
    const { raster, warnings } = await read("dem-native.tif");
    said(warnings, "terrain-edge-high", {
      value: "2.77",
      place: /^east 6\d{5}\.\d, north 2337\d\d/,
      message: "within 5 cells of where the file ends",
      mend: "reaches over the bank, or start the walkway further in",
    });
    const mask = (await read("platform-native.tif")).raster;
    const heights: number[] = [];
    mask.values.forEach((v, i) => {
      const z = raster.values[i]!;
      if (v === 1 && !Number.isNaN(z)) heights.push(z);
    });
    expect([0.05, 0.5, 0.95].map((q) => quantile(heights, q).toFixed(2))).toEqual(["1.31", "1.88", "1.99"]);
  });

  test("marsh-dem-stour: mask and terrain lie 3 mm apart; by their coordinates they still go together (platform 1.88 m, else -0.11 m in the middle)", async () => {
    const [{ raster }, { raster: mask }] = [await read("dem-native.tif"), await read("platform-native.tif")];
    const apart = Math.hypot(raster.x0 - mask.x0, raster.y0 - mask.y0);
    expect(apart).toBeGreaterThan(0.0005);
    expect(apart).toBeLessThan(0.006);
    const heights: [number[], number[]] = [[], []];
    for (let i = 0; i < mask.values.length; i++) {
      const x = mask.x0 + (i % mask.cols) * mask.dx;
      const y = mask.y0 + Math.floor(i / mask.cols) * mask.dy;
      const z = groundAt(raster, x, y);
      if (!Number.isNaN(z)) heights[mask.values[i] === 1 ? 1 : 0].push(z);
    }
    expect(quantile(heights[1], 0.5)).toBeCloseTo(1.88, 1);
    expect(Math.abs(quantile(heights[0], 0.5) + 0.11)).toBeLessThan(0.03);
  });

  test("marsh-dem-stour: the mask of 0 and 1 has no flag for nothing; taken as terrain it is named as a map of yes and no, and its outline comes in as 25,474 m2 of areas", async () => {
    const { warnings } = await read("platform-native.tif");
    said(warnings, "terrain-mask", {
      value: "0 and 1",
      message: "not like heights",
      mend: "bring it in as areas",
    });
    const { layers } = await readLayers("platform.geojson", file("platform.geojson"));
    const areas = layers[0]!.features.map((f) => Number(f.properties["area_m2"]));
    expect(areas).toHaveLength(5);
    expect(Math.round(areas.reduce((a, b) => a + b, 0))).toBe(25_474);
  });

  test("marsh-dem-stour: the outline in longitude and latitude is told to lie about 5 m off in EPSG:27700", async () => {
    const { layers } = await readLayers("platform.geojson", file("platform.geojson"));
    const { layer, warnings } = await placeLayer(layers[0]!, await crsFromEpsg(27700));
    said(warnings, "layer-reprojected", { message: "about 5 m", mend: /./ });
    expect(layer.features).toHaveLength(5);
  });

  test("marsh-dem-stour: the ASCII grid names no system; its .prj mends it, and a .prj of another system is refused", async () => {
    const bare = await readGroundPlan(plan("dem-1m.asc"));
    expect(bare.errors).toEqual(["crs-missing"]);
    said(bare.problems, "crs-missing", {
      message: "does not say which coordinate system",
      mend: '"crs_confirmed": true',
    });
    const files = { "dem-1m.asc": file("dem-1m.asc"), "dem-1m.prj": file("dem-1m.prj") };
    const mended = await readGroundPlan(plan("dem-1m.asc", { files }));
    expect(mended.errors).toEqual([]);
    const told = await readGroundPlan(
      plan("dem-1m.asc", {
        terrain: { kind: "grid", file: "dem-1m.asc", unit: "m", datum: DATUM, crs_confirmed: true },
      }),
    );
    expect(told.errors).toEqual([]);
    const other = openData("marsh-survey-points/wells_int.prj");
    const wrong = await readGroundPlan(plan("dem-1m.asc", { files: { ...files, "dem-1m.prj": other } }));
    expect(wrong.errors).toEqual(["crs-mismatch"]);
  });

  test("marsh-dem-stour: the files do not say their vertical datum; a plan that does not either is refused, and named it is read", async () => {
    const silent = await readGroundPlan(plan("dem-1m.tif", { document: { vertical_datum: "" } }));
    expect(silent.read.ok).toBe(false);
    const problem = silent.problems.find((p) => p.place === "vertical_datum")!;
    expect([problem.severity, problem.message, problem.mend].every((t) => t !== "")).toBe(true);
    const clash = await readGroundPlan(plan("dem-1m.tif", { document: { vertical_datum: "Chart datum" } }));
    expect(clash.errors).toContain("datum-clash");
    const mended = await readGroundPlan(plan("dem-1m.tif"));
    expect(mended.read.ok && mended.read.site.datum).toBe(DATUM);
  });
});
