import { groundFile } from "@causey/io/ground";
import type { Problem } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { crsFromEpsg, toLonLat } from "../src/crs/index.ts";
import { readPlan, type ReadPlan } from "../src/plan/index.ts";
import { isHelpful } from "./support/problems.ts";
import { sampleFiles, sampleKit, samplePlan } from "./support/sample-plan.ts";
import { geoTags, writeTiff } from "./support/tiff.ts";

const EAST = 500_000;
const NORTH = 4_500_000;
const move = <T extends { readonly x: number; readonly y: number }>(p: T): T => ({
  ...p,
  x: p.x + EAST,
  y: p.y + NORTH,
});

const gridTerrain = (file: string) =>
  ({ kind: "grid", file, unit: "m", datum: samplePlan.vertical_datum }) as const;

/** The sample plan, moved into UTM zone 18N. */
const plan: Plan = {
  ...samplePlan,
  crs: { epsg: 32618 },
  terrain: gridTerrain("terrain.tif"),
  survey: { ...samplePlan.survey, check_shots: samplePlan.survey.check_shots.map(move) },
  starts: samplePlan.starts.map(move),
  plots: samplePlan.plots.map(move),
  zones: samplePlan.zones.map((z) => ({
    ...z,
    polygons: z.polygons.map((p) => p.map((r) => r.map(([x, y]) => [x + EAST, y + NORTH]))),
  })),
};
const cells = Float32Array.from({ length: 1200 }, (_, i) => 1 + (i % 7) / 20);
const tiff = (epsg: number | null, east = EAST): Uint8Array =>
  writeTiff(40, 30, cells, { tags: geoTags(east, NORTH + 30, 1, 1, epsg) });
const withTerrain = (bytes: Uint8Array, p: Plan = plan): Map<string, Uint8Array> =>
  sampleFiles({ "terrain.asc": null, [groundFile(p.terrain)!]: bytes }, p);
const read = (files: Map<string, Uint8Array>): Promise<ReadPlan> =>
  readPlan(files, { readyKits: [sampleKit] });
const found = (answer: ReadPlan): readonly Problem[] => (answer.ok ? answer.warnings : answer.problems);

test("a plan in UTM with its terrain in UTM is read, the grid exactly", async () => {
  const answer = await read(withTerrain(tiff(32618)));
  expect(found(answer)).toEqual([]);
  expect(answer).toMatchObject({ ok: true, plan, site: { crs: { kind: "epsg", code: 32618 } } });
});

test("GeoTIFF without a coordinate system: refused, and the mend that is named works", async () => {
  const answer = await read(withTerrain(tiff(null)));
  expect(found(answer)).toHaveLength(1);
  const [problem] = found(answer);
  expect(problem).toMatchObject({ file: "terrain.tif", place: "coordinate system", code: "crs-missing" });
  expect(problem!.mend).toContain('"crs_confirmed": true');
  expect(isHelpful(problem!)).toBe(true);
  const confirmed: Plan = { ...plan, terrain: { ...gridTerrain("terrain.tif"), crs_confirmed: true } };
  expect(await read(withTerrain(tiff(null), confirmed))).toMatchObject({ ok: true });
});

test("terrain of another system than the plan's names both", async () => {
  const [problem, ...others] = found(await read(withTerrain(tiff(26918))));
  expect(problem).toMatchObject({ file: "terrain.tif", code: "crs-mismatch", value: "EPSG:26918" });
  expect(problem!.message).toContain("EPSG:32618");
  expect(others).toEqual([]);
});

test("terrain with a system for a plan on a local grid is refused too", async () => {
  const local: Plan = { ...plan, crs: { local: "Fen grid" } };
  expect(found(await read(withTerrain(tiff(32618), local)))[0]).toMatchObject({ code: "crs-mismatch" });
});

const ascii = (): Map<string, Uint8Array> => {
  const rows = Array.from({ length: 30 }, () => Array<string>(40).fill("1.5").join(" ")).join("\n");
  const text = `ncols 40\nnrows 30\nxllcorner ${EAST}\nyllcorner ${NORTH}\ncellsize 1\n${rows}\n`;
  return sampleFiles({ "terrain.asc": text }, { ...plan, terrain: gridTerrain("terrain.asc") });
};
const prj = (meridian: number): Uint8Array =>
  new TextEncoder().encode(
    `PROJCS["WGS_1984_UTM",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",${meridian}],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]`,
  );

test("an ASCII grid needs its .prj, or the owner's word; a .prj of another zone is refused", async () => {
  const files = ascii();
  expect(found(await read(files))[0]).toMatchObject({ file: "terrain.asc", code: "crs-missing" });
  files.set("terrain.prj", prj(-75));
  expect(await read(files)).toMatchObject({ ok: true });
  files.set("terrain.prj", prj(-69));
  expect(found(await read(files))[0]).toMatchObject({ code: "crs-mismatch", place: "terrain.prj" });
});

test("places in longitude and latitude land where the same places on the grid do", async () => {
  const back = toLonLat(await crsFromEpsg(32618));
  const files = withTerrain(tiff(32618));
  const text = new TextDecoder().decode(files.get("places.geojson"));
  const file = JSON.parse(text) as { crs?: unknown; features: { geometry: { coordinates: number[] } }[] };
  delete file.crs;
  for (const f of file.features)
    f.geometry.coordinates = [...back(f.geometry.coordinates[0]!, f.geometry.coordinates[1]!)!];
  files.set("places.geojson", new TextEncoder().encode(JSON.stringify(file)));
  const answer = await read(files);
  if (!answer.ok) throw new Error("refused");
  answer.plan.plots.forEach((p, i) => {
    expect(p.x).toBeCloseTo(plan.plots[i]!.x, 3);
    expect(p.y).toBeCloseTo(plan.plots[i]!.y, 3);
  });
});

test("a grid that stretches lengths where the terrain lies is refused: UTM far outside its zone", async () => {
  const east = 2_000_000;
  const files = withTerrain(tiff(32618, east), { ...plan, starts: [], plots: [], zones: [], visits: [] });
  const problem = found(await read(files)).find((p) => p.code === "crs-stretch");
  expect(problem!.message).toMatch(/1 m on the ground is 1\.0[2-4]\d m in EPSG:32618/);
});

test("a vertical system in the file that is called otherwise than the plan's datum is told", async () => {
  const keys = geoTags(EAST, NORTH + 30, 1, 1, 32618);
  const words = [1, 1, 0, 4, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 32618, 4096, 0, 1, 5703];
  const bytes = writeTiff(40, 30, cells, {
    tags: [keys[0]!, keys[1]!, { tag: 34735, type: 3, values: words }],
  });
  expect(found(await read(withTerrain(bytes)))).toMatchObject([
    { code: "datum-of-file", severity: "warning" },
  ]);
  const same = {
    ...plan,
    vertical_datum: "NAVD88",
    terrain: { ...plan.terrain, datum: "NAVD88" },
    levels: plan.levels.map((l) => ({ ...l, datum: "NAVD88" })),
  };
  expect(found(await read(withTerrain(bytes, same)))).toEqual([]);
});
