import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { hasOpenData, openData } from "../packages/io/test/support/open-data.ts";
import { zipOf } from "../packages/io/test/support/shapefile.ts";
import { causey, demoFolder, folderOf, temporaryFolder } from "./support/shell.ts";

const names = ["plan.json", "terrain.asc", "zones.geojson", "places.geojson", "prices.csv", "tide-table.csv"];
const demo = (): Map<string, string | Uint8Array> =>
  new Map(names.map((name) => [name, readFileSync(join(demoFolder, name))]));
interface Feature {
  readonly properties: { readonly id: string; readonly use: string; readonly source: string };
}
const zonesIn = (folder: string): readonly Feature[] =>
  (JSON.parse(readFileSync(join(folder, "zones.geojson"), "utf8")) as { features: readonly Feature[] })
    .features;

const square = (id: string | null, name: string | null, x: number, y: number): object => ({
  type: "Feature",
  ...(id === null ? {} : { id }),
  properties: name === null ? { kind: "wet" } : { name, kind: "wet" },
  geometry: {
    type: "Polygon",
    coordinates: [
      [
        [x, y],
        [x + 4, y],
        [x + 4, y + 3],
        [x, y + 3],
        [x, y],
      ],
    ],
  },
});
const collection = (...features: readonly object[]): string =>
  JSON.stringify({ type: "FeatureCollection", features });

const near = (): readonly [number, number] => {
  const places = JSON.parse(readFileSync(join(demoFolder, "places.geojson"), "utf8")) as {
    features: { geometry: { coordinates: [number, number] } }[];
  };
  return places.features[0]!.geometry.coordinates;
};

test("causey import adds areas to a copy of the folder, which then checks; the folder itself stays as it was", () => {
  const [x, y] = near();
  const folder = folderOf(demo());
  const file = join(
    folderOf(
      new Map([
        [
          "pools.geojson",
          collection(
            square("pool-1", "Salt pan", x + 10, y + 10),
            square("pool-2", "Old pan", x + 20, y + 10),
          ),
        ],
      ]),
    ),
    "pools.geojson",
  );
  const out = join(temporaryFolder(), "with-pools");
  const args = [
    "import",
    folder,
    file,
    "--as",
    "areas",
    "--use",
    "pool",
    "--source",
    "Walked in 2026",
    "--system",
    "site",
  ];
  const before = zonesIn(folder);
  const ran = causey([...args, "--out", out]);
  expect(ran.error + ran.out).toContain("2 areas");
  expect(ran.code).toBe(0);
  expect(zonesIn(folder)).toEqual(before);
  const after = zonesIn(out);
  expect(after).toHaveLength(before.length + 2);
  expect(after.slice(-2).map((f) => [f.properties.id, f.properties.use, f.properties.source])).toEqual([
    ["pool-1", "pool", "Walked in 2026"],
    ["pool-2", "pool", "Walked in 2026"],
  ]);
  expect(causey(["check", out]).code).toBe(0);
  const again = causey(["import", out, file, ...args.slice(3), "--out", join(temporaryFolder(), "again")]);
  expect(again.code).toBe(2);
  expect(again.error).toContain('The plan holds "pool-1" already');
  expect(again.error).toContain('The plan holds "pool-2" already');
  const replaced = join(temporaryFolder(), "replaced");
  expect(causey(["import", out, file, ...args.slice(3), "--out", replaced, "--replace"]).code).toBe(0);
  expect(zonesIn(replaced)).toEqual(after);
});

test("a file without a system is not guessed, a lacking name and an unknown use are told, and nothing is written", () => {
  const [x, y] = near();
  const folder = folderOf(demo());
  const file = join(
    folderOf(
      new Map([
        [
          "a.kml",
          '<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Placemark><name>Gate</name><Point><coordinates>-70,41</coordinates></Point></Placemark></kml>',
        ],
        ["b.geojson", collection(square(null, null, x, y))],
      ]),
    ),
    "a.kml",
  );
  const out = join(temporaryFolder(), "none");
  const local = causey(["import", folder, file, "--as", "starts", "--out", out]);
  expect(local.code).toBe(2);
  expect(local.error).toMatch(/a\.kml/);
  const other = file.replace("a.kml", "b.geojson");
  const bare = causey([
    "import",
    folder,
    other,
    "--as",
    "areas",
    "--use",
    "pool",
    "--system",
    "site",
    "--out",
    out,
  ]);
  expect(bare.code).toBe(2);
  expect(bare.error).toContain('no field "name"');
  const wrong = causey(["import", folder, other, "--as", "areas", "--use", "swamp", "--out", out]);
  expect(wrong.error).toContain("no such use. There are");
  expect(() => readFileSync(join(out, "zones.geojson"))).toThrow();
});

test.skipIf(!hasOpenData("marsh-dem-stour"))(
  "marsh-dem-stour: the zipped shapefile of the platform goes into a fresh plan in EPSG:27700 (Goodwin, Mudd and Clubb 2018, doi 10.5194/esurf-6-239-2018)",
  () => {
    const fresh = join(temporaryFolder(), "stour");
    expect(causey(["new", fresh]).code).toBe(0);
    const plan = JSON.parse(readFileSync(join(fresh, "plan.json"), "utf8")) as Record<string, unknown>;
    const folder = folderOf(
      new Map([
        ["plan.json", JSON.stringify({ ...plan, crs: { epsg: 27700 } })],
        ["zones.geojson", '{"type":"FeatureCollection","features":[]}'],
      ]),
    );
    const parts = Object.fromEntries(
      ["shp", "shx", "dbf", "prj"].map((e) => [`platform.${e}`, openData(`marsh-dem-stour/platform.${e}`)]),
    );
    const file = join(folderOf(new Map([["platform.zip", zipOf(parts)]])), "platform.zip");
    const out = join(temporaryFolder(), "with-platform");
    const ran = causey([
      "import",
      folder,
      file,
      "--as",
      "areas",
      "--use",
      "habitat",
      "--sensitivity",
      "4",
      "--id-field",
      "id",
      "--name-field",
      "id",
      "--out",
      out,
    ]);
    expect(ran.error + ran.out).toContain("5 areas");
    expect(zonesIn(out).map((f) => f.properties.use)).toEqual(Array.from({ length: 5 }, () => "habitat"));
  },
);

test("plots brought in by their names can be named by a visit: ids are words, names stay", () => {
  const [x, y] = near();
  const plot = (name: string, east: number): object => ({
    type: "Feature",
    properties: { name },
    geometry: { type: "Point", coordinates: [x + east, y] },
  });
  const file = join(
    folderOf(new Map([["plots.geojson", collection(plot("Plot A", 4), plot("Plot B", 8))]])),
    "plots.geojson",
  );
  const out = join(temporaryFolder(), "with-plots");
  const args = ["--as", "plots", "--id-field", "name", "--keep-off", "1", "--reach", "2", "--system", "site"];
  const ran = causey(["import", folderOf(demo()), file, ...args, "--out", out]);
  expect(ran.code, ran.error).toBe(0);
  const places = JSON.parse(readFileSync(join(out, "places.geojson"), "utf8")) as {
    features: { properties: { id: string; name: string } }[];
  };
  expect(places.features.slice(-2).map(({ properties: p }) => [p.id, p.name])).toEqual([
    ["plot-a", "Plot A"],
    ["plot-b", "Plot B"],
  ]);
  const plan = JSON.parse(readFileSync(join(out, "plan.json"), "utf8")) as { visits: { plots: string[] }[] };
  const problemsFor = (id: string): { place: string; value: string; message: string; severity: string }[] => {
    plan.visits[0]!.plots = [id];
    writeFileSync(join(out, "plan.json"), JSON.stringify(plan));
    const read = JSON.parse(causey(["check", out, "--json"]).out) as { problems: never[] };
    return read.problems;
  };
  expect(problemsFor("plot-a").filter((p) => p.severity === "error")).toEqual([]);
  const [told] = problemsFor("Plot A");
  expect(told).toMatchObject({ place: "visits[0].plots[0]", value: "Plot A" });
  expect(told!.message).toMatch(/^Entry 1 of "plots" must be one word/);
});
