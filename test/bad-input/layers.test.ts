import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Problem } from "@causey/engine/formula";
import { areaGeoJson, badLayers, shapefileWithoutPrj } from "../support/bad-layers.ts";
import { causey, folderOf, temporaryFolder, type Ran } from "../support/shell.ts";
import { demoWith } from "../support/survey-plan.ts";
import { contentsOf } from "../support/unchanged.ts";

interface Tried extends Ran {
  readonly plan: string;
  readonly out: string;
  /** Everything that lies where the new folder should have come. */
  readonly made: readonly string[];
}

/** Brings a file into a copy of the demo's plan; fails when the plan itself changes. */
function bringIn(
  name: string,
  bytes: string | Uint8Array,
  more: readonly string[] = [],
  plan = demoWith(() => ({})),
): Tried {
  const file = join(folderOf(new Map([[name, bytes]])), name);
  const parent = temporaryFolder();
  const out = join(parent, "out");
  const before = contentsOf(plan);
  const ran = causey(["import", plan, file, "--as", "areas", "--use", "pool", "--out", out, ...more]);
  expect(contentsOf(plan)).toEqual(before);
  return { ...ran, plan, out, made: readdirSync(parent) };
}

test.each(badLayers.map((bad) => [bad.title, bad] as const))(
  "%s: refused with file, place, value and mend; nothing is written",
  (_title, bad) => {
    const { code, error, made } = bringIn(bad.name, bad.bytes());
    expect(code, error).toBe(2);
    const told = error.split("\n").find((l) => l.startsWith("error") && bad.message.test(l)) ?? error;
    expect(told).toContain(bad.name);
    for (const words of [bad.place, bad.value, bad.message, bad.mend]) expect(told).toMatch(words);
    expect(error).not.toMatch(/\bat .*\.(js|ts):\d+/);
    expect(made).toEqual([]);
  },
);

const inEpsg = (): string =>
  demoWith((own) => ({
    "plan.json": JSON.stringify({ ...(JSON.parse(own("plan.json")) as object), crs: { epsg: 26919 } }),
    "zones.geojson": '{"type":"FeatureCollection","features":[]}',
  }));

test("metres that claim to be longitude and latitude, on a plan in an EPSG system: asked for, not guessed", () => {
  const { code, error, made } = bringIn("pans.geojson", areaGeoJson(undefined, null), [], inEpsg());
  expect(code).toBe(2);
  expect(error).toMatch(/pans\.geojson, layer "pans".*does not say in which coordinate system.*EPSG:26919/);
  expect(made).toEqual([]);
});

test("a system that contradicts what the file says is refused", () => {
  const file = areaGeoJson(undefined, "urn:ogc:def:crs:EPSG::27700");
  const { code, error, made } = bringIn("pans.geojson", file, ["--system", "EPSG:26919"], inEpsg());
  expect(code).toBe(2);
  expect(error).toMatch(/is in EPSG:27700; you state EPSG:26919/);
  expect(made).toEqual([]);
});

test("a shapefile without .prj comes in once the user says that it is on the site's own grid", () => {
  const { code, out, error } = bringIn("pans.zip", shapefileWithoutPrj(), ["--system", "site"]);
  expect(code, error).toBe(0);
  const zones = JSON.parse(readFileSync(join(out, "zones.geojson"), "utf8")) as {
    features: { properties: { name: string } }[];
  };
  expect(zones.features.at(-1)!.properties.name).toBe("Salt pan");
});

test("outlines drawn from a mask 3 mm off the terrain's cells come in as they are, and the plan is sound", () => {
  const corners: [number, number][] = [
    [1000.003, 2190.003],
    [1010.003, 2190.003],
    [1010.003, 2200.003],
    [1000.003, 2200.003],
    [1000.003, 2190.003],
  ];
  const { code, out, error } = bringIn("mask.geojson", areaGeoJson(corners));
  expect(code, error).toBe(0);
  const zones = JSON.parse(readFileSync(join(out, "zones.geojson"), "utf8")) as {
    features: { geometry: { coordinates: [number, number][][] } }[];
  };
  expect(zones.features.at(-1)!.geometry.coordinates[0]).toEqual(
    expect.arrayContaining([[1010.003, 2190.003]]),
  );
  const check = causey(["check", out, "--json"]);
  expect(check.code, check.out).toBe(0);
});

test.each([
  ["a file that is not there", "nowhere.kml", /nowhere\.kml.*There is no such file.*Give the path of a file/],
  ["a folder in the place of a file", ".", /is a folder or a device, not a file.*Give the path of a file/],
])("%s: told in words", (_title, path, words) => {
  const ran = causey([
    "import",
    demoWith(() => ({})),
    join(temporaryFolder(), path),
    "--as",
    "plots",
    "--out",
    join(temporaryFolder(), "o"),
  ]);
  expect(ran.code).toBe(2);
  expect(ran.error).toMatch(words);
});

/** The plan's own files. */
const inPlan: readonly (readonly [
  string,
  string,
  (own: (name: string) => string) => string,
  RegExp,
  RegExp,
])[] = [
  [
    "zones.geojson in another coordinate system",
    "zones.geojson",
    (own) => own("zones.geojson").replace('"local"', '"urn:ogc:def:crs:EPSG::27700"'),
    /crs \(urn:ogc:def:crs:EPSG::27700\).*another system than the plan's/,
    /Export it in the local grid/,
  ],
  [
    "zones.geojson with an unclosed polygon",
    "zones.geojson",
    (own) => own("zones.geojson").replace("[[[1000,2113.8],", "[[[1000.5,2113.8],"),
    /feature 1 \("high-meadow"\), ring 1.*not closed/,
    /Repeat the first corner/,
  ],
  [
    "a formula among the prices",
    "prices.csv",
    (own) => own("prices.csv").replace(/,(\d+\.\d+),/, ",=1+1,"),
    /line 2, column price \(=1\+1\)/,
    /Write a plain number/,
  ],
  [
    "a formula among the water levels",
    "tide-table.csv",
    (own) => own("tide-table.csv").replace(/\n([^,]+),(-?[\d.]+)/, "\n$1,=A1"),
    /line 2 \(=A1\).*is a formula/,
    /values in place of formulas/,
  ],
];

test.each(inPlan)("%s: named, and nothing is written", (_title, name, change, says, mend) => {
  const plan = demoWith((own) => ({ [name]: change(own) }));
  const before = contentsOf(plan);
  const parent = temporaryFolder();
  const ran = causey(["plan", plan, "--out", join(parent, "out"), "--quiet"]);
  expect(ran.code).toBe(2);
  const told = ran.error.split("\n").find((l) => l.includes(name)) ?? "";
  expect(told).toMatch(says);
  expect(told).toMatch(mend);
  expect(readdirSync(parent)).toEqual([]);
  expect(contentsOf(plan)).toEqual(before);
});

test("a finished layout that is no JSON: the audit says so in words", () => {
  const out = folderOf(new Map([["layout.geojson", '{"type": "FeatureColl']]));
  const ran = causey(["audit", demoWith(() => ({})), out, "--json"]);
  expect(ran.code).toBe(2);
  expect(ran.error).toMatch(/error  layout\.geojson, .*JSON/);
});

test("a problem's list never shows a stack of the program", () => {
  const problems = JSON.parse(
    causey(["check", demoWith(() => ({ "zones.geojson": "[" })), "--json"]).out,
  ) as {
    problems: readonly Problem[];
  };
  expect(problems.problems.every((p) => p.mend.length > 0 && !/\bat \w+ \(/.test(p.message))).toBe(true);
});
