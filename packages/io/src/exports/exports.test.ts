import { describe, expect, test } from "vitest";
import type { Results } from "@causey/engine/plan";
import type { Crs } from "@causey/engine/site";
import { hasGdal, inFolder, layerInfo, save } from "../../test/support/gdal.ts";
import { problemsOf } from "../../test/support/problems.ts";
import { sampleResults, secret } from "../../test/support/sample-results.ts";
import { utm19 } from "../../test/support/vector-files.ts";
import { crsFromEpsg } from "../crs/index.ts";
import { placeLayer, readLayers } from "../layers/index.ts";
import { layoutGeoPackage, layoutGpx } from "./index.ts";

const local: Crs = { kind: "local", name: "Fen grid" };
const shift = (p: readonly [number, number]): readonly [number, number] => [p[0] + 400_000, p[1] + 4_600_000];

/** The sample layout moved to a place on the earth. */
const results: Results = {
  ...sampleResults,
  layout: {
    ...sampleResults.layout,
    joints: sampleResults.layout.joints.map((j) => {
      const [x, y] = shift([j.x, j.y]);
      return { ...j, x, y, feet: j.feet.map((rings) => rings.map((ring) => ring.map(shift))) };
    }),
    parts: sampleResults.layout.parts.map((p) => {
      const outline = p.outline.map((rings) => rings.map((ring) => ring.map(shift)));
      const [x, y] = p.kind === "platform" ? shift([p.x, p.y]) : [0, 0];
      return p.kind === "platform" ? { ...p, x, y, outline } : { ...p, outline };
    }),
  },
};
const { joints, parts, branches } = results.layout;

test("GPX: every joint is a waypoint with its tag, every branch a track; back in the grid to 1 mm", async () => {
  const { bytes, warnings } = layoutGpx(results, utm19);
  expect(warnings).toEqual([]);
  expect(layoutGpx(results, utm19).bytes).toEqual(bytes);
  const { layers } = await readLayers("layout.gpx", bytes);
  const { layer } = await placeLayer(layers[0]!, utm19);
  expect(layer.features.map((f) => f.properties["name"])).toEqual(joints.map((j) => j.id));
  layer.features.forEach((f, i) => {
    const [x, y] = f.geometry.coordinates as readonly [number, number];
    expect(Math.hypot(x - joints[i]!.x, y - joints[i]!.y)).toBeLessThan(0.001);
  });
  expect(layers[1]!.features).toHaveLength(branches.length);
  expect(layers[1]!.features[0]!.properties["name"]).toBe(
    `${branches[0]!.id}: ${branches[0]!.from} to ${branches[0]!.to_plot}`,
  );
});

test("GPX: a local grid cannot, in words that help; a coarse datum shift is said in the warning and in the file", async () => {
  const [problem] = await problemsOf(() => layoutGpx(results, local));
  expect(problem).toMatchObject({ code: "gpx-local-grid", file: "layout.gpx" });
  expect(problem!.mend).toMatch(/joints\.csv/);
  const { bytes, warnings } = layoutGpx(sampleResults, await crsFromEpsg(27700));
  expect(warnings.map((w) => w.code)).toEqual(["gpx-accuracy"]);
  expect(new TextDecoder().decode(bytes)).toContain("about 5 m off");
  const far: Crs = { ...utm19, proj: "+proj=utm +zone=19 +ellps=intl +units=m +no_defs" };
  expect((await problemsOf(() => layoutGpx(results, far)))[0]!.code).toBe("gpx-datum-shift");
});

test("GeoPackage: joints, parts, feet and branches with their places and figures", async () => {
  const { layers } = await readLayers("layout.gpkg", await layoutGeoPackage(results, utm19));
  expect(layers.map((l) => [l.name, l.features.length, l.crs])).toEqual([
    ["joints", joints.length, { epsg: 26919 }],
    ["parts", parts.length, { epsg: 26919 }],
    ["feet", joints.reduce((n, j) => n + j.feet.length, 0), { epsg: 26919 }],
    ["branches", branches.length, { epsg: 26919 }],
  ]);
  layers[0]!.features.forEach((f, i) => {
    const joint = joints[i]!;
    expect(f.properties).toMatchObject({
      id: joint.id,
      support: joint.support,
      vertical_datum: results.datum,
    });
    const [x, y] = f.geometry.coordinates as readonly [number, number];
    expect(Math.hypot(x - joint.x, y - joint.y)).toBeLessThan(0.001);
  });
  expect(layers[1]!.features.map((f) => f.properties["id"])).toEqual(parts.map((p) => p.id));
});

test("nothing of a hidden zone appears in either, though the layout names it", async () => {
  const named: Results = {
    ...results,
    layout: {
      ...results.layout,
      parts: parts.map((p) => ({ ...p, bridges: [secret.id] })),
      notes: [`Kept off ${secret.name}`],
      unreached: [
        {
          plot: "P9",
          because: `behind ${secret.name}`,
          gap: { width_m: 3, over: secret.name, from: [1, 2], to: [3, 4] },
        },
      ],
    },
    cautions: [secret.name],
  };
  for (const bytes of [await layoutGeoPackage(named, utm19), layoutGpx(named, utm19).bytes]) {
    const text = new TextDecoder("latin1").decode(bytes).toLowerCase();
    expect(text).toContain("sleeper");
    for (const word of [secret.id, secret.name, "orchid", "bridges"])
      expect(text).not.toContain(word.toLowerCase());
  }
});

test("GeoPackage on a local grid: no system is claimed, and the user's word brings it back", async () => {
  const { layers } = await readLayers("layout.gpkg", await layoutGeoPackage(sampleResults, local));
  expect(layers.map((l) => l.crs)).toEqual([null, null, null, null]);
  const { layer } = await placeLayer(layers[0]!, local, { assume: { local: "Fen grid" } });
  expect(layer.features).toHaveLength(joints.length);
});

describe.skipIf(!hasGdal)("witness: ogrinfo", () => {
  test("opens both files with the right counts and system", async () => {
    const gpkg = await layoutGeoPackage(results, utm19);
    await inFolder((folder) => {
      const path = save(folder, "layout.gpkg", gpkg);
      expect(layerInfo(path, "joints")).toMatchObject({ count: joints.length, epsg: 26919, type: "Point" });
      expect(layerInfo(path, "parts")).toMatchObject({ count: parts.length, epsg: 26919, type: "Polygon" });
      const gpx = save(folder, "layout.gpx", layoutGpx(results, utm19).bytes);
      expect(layerInfo(gpx, "waypoints").count).toBe(joints.length);
      expect(layerInfo(gpx, "tracks").count).toBe(branches.length);
    });
  });
});
