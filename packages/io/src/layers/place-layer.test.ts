import { expect, test } from "vitest";
import type { Crs } from "@causey/engine/site";
import { problemsOf, isHelpful } from "../../test/support/problems.ts";
import { utm19, utm19Prj } from "../../test/support/vector-files.ts";
import { crsFromEpsg, toGrid } from "../crs/index.ts";
import type { LayerCrs, VectorLayer } from "../layer-form/index.ts";
import { placeLayer } from "./index.ts";

const at = (crs: LayerCrs, x: number, y: number): VectorLayer => ({
  name: "spots",
  file: "spots.zip",
  crs,
  features: [{ id: "a", properties: {}, geometry: { type: "Point", coordinates: [x, y] } }],
});
const local: Crs = { kind: "local", name: "Fen grid" };

const placed = async (
  layer: VectorLayer,
  crs: Crs,
  assume?: { epsg: number } | { local: string } | "lon-lat",
) => {
  const answer = await placeLayer(layer, crs, assume === undefined ? {} : { assume });
  return { point: answer.layer.features[0]!.geometry.coordinates, warnings: answer.warnings };
};

test.each([[{ epsg: 26919 }], [{ wkt: utm19Prj }]])(
  "the site's own system stays to the last digit: %j",
  async (crs) => {
    const { point, warnings } = await placed(at(crs, 412_345.678_912_3, 4_612_345.123_4), utm19);
    expect(point).toEqual([412_345.678_912_3, 4_612_345.123_4]);
    expect(warnings).toEqual([]);
  },
);

test("without a system: an error that says what to give, until the user says it", async () => {
  const layer = at(null, 412_345, 4_612_345);
  const [problem] = await problemsOf(() => placeLayer(layer, utm19));
  expect(problem).toMatchObject({ code: "layer-crs", file: "spots.zip" });
  expect(problem!.mend).toMatch(/EPSG:26919/);
  expect(problem!.message).toMatch(/\.prj/);
  expect((await placed(layer, utm19, { epsg: 26919 })).point).toEqual([412_345, 4_612_345]);
});

test("an assumption against the file's own word is refused; the same word twice is not", async () => {
  const layer = at({ epsg: 32619 }, 412_345, 4_612_345);
  const problems = await problemsOf(() => placeLayer(layer, utm19, { assume: { epsg: 26919 } }));
  expect(problems.map((p) => p.code)).toEqual(["layer-crs-twice"]);
  expect((await placed(layer, utm19, { epsg: 32619 })).warnings.map((w) => w.code)).toEqual([
    "layer-reprojected",
  ]);
});

test("another declared system is reprojected, and a warning says how far off that may be", async () => {
  const grid = await crsFromEpsg(27700);
  const { point, warnings } = await placed(at("lon-lat", 1.2311, 51.9566), grid);
  const [x, y] = toGrid(grid)(1.2311, 51.9566)!;
  expect(Math.hypot(Number(point[0]) - x, Number(point[1]) - y)).toBeLessThan(1e-6);
  expect(warnings[0]!.message).toMatch(/about 5 m off/);
  const modern = await placed(at("lon-lat", -70, 41.6), utm19);
  expect(modern.warnings[0]!.message).toMatch(/a metre or two/);
});

test("degrees on the site's own datum, and the zone beside it: exact, and said so", async () => {
  const grid = await crsFromEpsg(27700);
  const { point, warnings } = await placed(at({ epsg: 4277 }, -2, 49), grid);
  expect(Number(point[0])).toBeCloseTo(400_000, 3);
  expect(Number(point[1])).toBeCloseTo(-100_000, 3);
  expect(warnings[0]!.message).toMatch(/exact to a millimetre/);
  const beside = await placed(at({ epsg: 26918 }, 747_000, 4_612_000), utm19);
  expect(beside.warnings[0]!.message).toMatch(/exact to a millimetre/);
});

test("a grid in feet comes out in metres: EPSG:2249, the origin of its false easting, 200,000 m", async () => {
  const { point } = await placed(
    at({ epsg: 2249 }, 656_166.666_666_667, 2_460_625),
    await crsFromEpsg(26986),
  );
  expect(Number(point[0])).toBeCloseTo(200_000, 3);
  expect(Number(point[1])).toBeCloseTo(750_000, 3);
});

test("a well-known text of another system is reprojected like its code", async () => {
  const wkt = utm19Prj.replace("Zone_19N", "Zone_18N").replace("-69.0", "-75.0");
  const [a, b] = [at({ wkt }, 747_000, 4_612_000), at({ epsg: 26918 }, 747_000, 4_612_000)];
  const [p, q] = [(await placed(a, utm19)).point, (await placed(b, utm19)).point];
  expect(Math.hypot(Number(p[0]) - Number(q[0]), Number(p[1]) - Number(q[1]))).toBeLessThan(0.001);
});

test.each([
  ["words that are no system", { wkt: 'PROJCS["Odd",GEOGCS[]]' }],
  ["a file path in place of a text", { wkt: "see readme" }],
  ["a code that is not registered", { epsg: 999_999 }],
  ["a height system", { epsg: 5703 }],
  ["a datum without a known shift", { epsg: 4267 }],
  ["a local grid", { local: "Fen grid" }],
] as const)("refused in words that help: %s", async (_title, crs) => {
  const problems = await problemsOf(() => placeLayer(at(crs, 1, 2), utm19));
  expect(problems.every(isHelpful)).toBe(true);
  expect(problems[0]!.mend).toMatch(/EPSG:26919/);
});

test("positions that do not fit the stated system are all named", async () => {
  const layer = { ...at("lon-lat", 412_345, 4_612_345), crs: "lon-lat" as const };
  const problems = await problemsOf(() => placeLayer(layer, utm19));
  expect(problems.filter((p) => p.severity === "error").map((p) => [p.code, p.place])).toEqual([
    ["layer-position", 'layer "spots", feature 1 ("a")'],
  ]);
});

test("a site on a local grid takes layers of that grid only", async () => {
  expect((await placed(at({ local: "" }, 3, 4), local)).point).toEqual([3, 4]);
  expect((await placed(at({ local: "Fen grid" }, 3, 4), local)).point).toEqual([3, 4]);
  expect((await placed(at(null, 3, 4), local, { local: "Fen grid" })).point).toEqual([3, 4]);
  const [unknown] = await problemsOf(() => placeLayer(at(null, 3, 4), local));
  expect(unknown!.mend).toMatch(/site's own grid, "Fen grid"/);
  for (const crs of ["lon-lat", { epsg: 26919 }, { local: "Other" }] as const) {
    const [problem] = await problemsOf(() => placeLayer(at(crs, 3, 4), local));
    expect(problem!.code).toBe("layer-local");
  }
});

test("web maps' own system (EPSG:3857; IOGP guidance note 7-2, method 1024) lies where longitude and latitude lie", async () => {
  const [lon, lat, R] = [-70.557, 43.328, 6_378_137];
  const [lambda, phi] = [lon, lat].map((degrees) => (degrees * Math.PI) / 180) as [number, number];
  const web = at({ epsg: 3857 }, R * lambda, R * Math.log(Math.tan(Math.PI / 4 + phi / 2)));
  const [a, b] = [await placed(web, utm19), await placed(at("lon-lat", lon, lat), utm19)];
  const [p, q] = [a.point, b.point] as [[number, number], [number, number]];
  expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeLessThan(0.001);
  expect(a.warnings.map((w) => w.code)).toEqual(["layer-reprojected"]);
});
