import type { Problem } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import type { Zone } from "@causey/engine/site";
import { expect, test } from "vitest";
import type { PlanFiles } from "../src/files/index.ts";
import { migrate, readPlan, writePlan, type Migration, type ReadPlan } from "../src/plan/index.ts";
import { Findings } from "../src/problem/index.ts";
import { isHelpful, problemsOf } from "./support/problems.ts";
import { planJson, sampleFiles, sampleKit, samplePlan, sampleTerrain } from "./support/sample-plan.ts";

const read = (files: PlanFiles): Promise<ReadPlan> => readPlan(files, { readyKits: [sampleKit] });

async function problems(files: PlanFiles): Promise<readonly Problem[]> {
  const answer = await read(files);
  if (answer.ok) throw new Error("the folder was accepted");
  expect(answer.problems.every(isHelpful)).toBe(true);
  return answer.problems;
}

async function plan(files: PlanFiles): Promise<Extract<ReadPlan, { ok: true }>> {
  const answer = await read(files);
  if (!answer.ok)
    throw new Error(answer.problems.map((p) => `${p.file} ${p.place}: ${p.message}`).join("\n"));
  return answer;
}

test("a sound folder gives the plan, its site and its prices, without a word", async () => {
  const { plan: got, site, prices, warnings } = await plan(sampleFiles());
  expect(got).toEqual(samplePlan);
  expect(site).toMatchObject({
    crs: { kind: "local", name: "Fen grid" },
    datum: "Gate bench mark",
    zones: samplePlan.zones,
    starts: samplePlan.starts,
    plots: samplePlan.plots,
    levels: samplePlan.levels,
    readings: samplePlan.ground.readings,
    terrain: { cols: 40, rows: 30, x0: 0.5, y0: 0.5 },
  });
  expect(prices).toHaveLength(1);
  expect(warnings).toEqual([]);
});

const edited = (edit: (document: Record<string, unknown>) => void): PlanFiles =>
  sampleFiles({ "plan.json": planJson(edit) });
const places = (edit: (plan: Plan) => Partial<Plan>): PlanFiles =>
  sampleFiles({}, { ...samplePlan, ...edit(samplePlan) });
const shut = (zone: Pick<Zone, "use" | "from" | "to">): PlanFiles =>
  places((p) => ({
    zones: [
      ...p.zones,
      {
        id: "x",
        name: "Tern colony",
        polygons: [
          [
            [
              [25, 15],
              [35, 15],
              [35, 25],
              [25, 25],
            ],
          ],
        ],
        hidden: false,
        source: "warden",
        ...zone,
      },
    ],
  }));

/** The bad inputs that a planner meets: each must name file, place, value and how to mend it. */
const rows: readonly (readonly [
  title: string,
  files: () => PlanFiles,
  wanted: Partial<Problem>,
  says: RegExp,
  mend: RegExp,
])[] = [
  [
    "terrain that misses a plot",
    () => places((p) => ({ plots: [{ ...p.plots[0]!, x: 130 }, p.plots[1]!] })),
    { file: "places.geojson", place: 'plot "Trap 1" (P1)', value: "130.0, 20.0" },
    /outside the terrain of terrain.asc \(east 0.0 to 40.0, north 0.0 to 30.0\)/,
    /swapped/,
  ],
  [
    "a plot on cells without data",
    () => places((p) => ({ plots: [{ ...p.plots[0]!, x: 39, y: 29 }, p.plots[1]!] })),
    { file: "places.geojson", value: "39.0, 29.0" },
    /hold no data/,
    /survey/,
  ],
  [
    "a plot in a closed zone",
    () => shut({ use: "closed" }),
    { file: "places.geojson", place: 'plot "Trap 1" (P1)' },
    /in the zone "Tern colony" \(closed\), which is shut during the laying, 2027-05-10 to 2027-05-21/,
    /Move it/,
  ],
  ["a plot in a buffer", () => shut({ use: "buffer" }), { file: "places.geojson" }, /\(buffer\)/, /Move it/],
  [
    "a plot in a closure in season",
    () => shut({ use: "seasonal-closure", from: "04-15", to: "08-31" }),
    { file: "places.geojson" },
    /seasonal-closure, 04-15 to 08-31/,
    /outside the closure/,
  ],
  [
    "a start in a channel",
    () => places(() => ({ starts: [{ id: "S1", name: "Gate", x: 21, y: 5 }] })),
    { file: "places.geojson", place: 'start "Gate" (S1)', value: "21.0, 5.0" },
    /lies in the channel "Ditch"/,
    /firm ground/,
  ],
  [
    "two plots of one name",
    () => places((p) => ({ plots: p.plots.map((q) => ({ ...q, name: "Trap" })), visits: [] })),
    { file: "places.geojson", place: 'feature 3 ("P2")', value: "Trap" },
    /same name/,
    /own name/,
  ],
  [
    "a no-data value that is not declared",
    () =>
      sampleFiles({
        "terrain.asc": new TextDecoder().decode(sampleTerrain(999)).replace("NODATA_value 999\n", ""),
      }),
    { file: "terrain.asc", value: "999" },
    /looks like a value for "no data"/,
    /NODATA_value 999/,
  ],
  [
    "truncated terrain",
    () => sampleFiles({ "terrain.asc": sampleTerrain().subarray(0, 3000) }),
    { file: "terrain.asc", code: "terrain-truncated" },
    /byte 3000/,
    /Copy or export/,
  ],
  [
    "a 1 kB terrain that claims 2 GB",
    () =>
      sampleFiles({
        "terrain.asc": "ncols 30000\nnrows 20000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n",
      }),
    { file: "terrain.asc", value: "30000 x 20000 = 600000000 cells" },
    /at most 25000000/,
    /Cut the terrain/,
  ],
  [
    "terrain on another datum",
    () => edited((d) => Object.assign(d["terrain"] as object, { datum: "Chart datum" })),
    { file: "plan.json", place: "terrain.datum", value: "Chart datum" },
    /"Chart datum", the plan on "Gate bench mark"/,
    /difference between the two datums/,
  ],
  [
    "a water level on another datum",
    () => edited((d) => Object.assign((d["levels"] as object[])[0]!, { datum: "gate benchmark" })),
    { file: "plan.json", place: "levels[0].datum" },
    /"Winter flood" is on the vertical datum "gate benchmark"/,
    /If they are the same, write "Gate bench mark"/,
  ],
  [
    "a plan of a newer program",
    () => edited((d) => (d["schema"] = 7)),
    { file: "plan.json", place: "schema", value: "7" },
    /made by a newer Causey/,
    /Update Causey/,
  ],
  [
    "a plan without a schema",
    () => edited((d) => delete d["schema"]),
    { file: "plan.json", place: "schema" },
    /which schema/,
    /"schema": 3/,
  ],
  [
    "a price list without currency",
    () => sampleFiles({ "prices.csv": "item,price,date,source\n2x6,18.5,2026-10-05,Yard\n" }),
    { file: "prices.csv", place: "line 1" },
    /lacks the column "currency"/,
    /USD, GBP or EUR/,
  ],
  [
    "prices in another currency",
    () => edited((d) => Object.assign(d["money"] as object, { currency: "GBP" })),
    { file: "prices.csv", value: "USD" },
    /in USD, the plan reckons in GBP/,
    /money.currency to USD/,
  ],
  [
    "a visit to nowhere",
    () => edited((d) => Object.assign((d["visits"] as object[])[0]!, { plots: ["P1", "P9"] })),
    { file: "plan.json", place: "visits[0].plots[1]", value: "P9" },
    /no plot in places.geojson/,
    /P1, P2/,
  ],
  [
    "a visit without an end",
    () => edited((d) => delete (d["visits"] as Record<string, unknown>[])[0]!["to"]),
    { file: "plan.json", place: "visits[0].to" },
    /"to" is missing/,
    /2027-04-30/,
  ],
  [
    "a visit that ends before it begins",
    () => edited((d) => Object.assign((d["visits"] as object[])[0]!, { to: "2027-01-01" })),
    { file: "plan.json", place: "visits[0].to" },
    /ends before it begins/,
    /two days/,
  ],
  [
    "no removal",
    () => edited((d) => (d["removal"] = {})),
    { file: "plan.json", place: "removal.by" },
    /missing/,
    /Add "by"/,
  ],
  [
    "removal before laying",
    () => edited((d) => (d["removal"] = { by: "2027-05-01" })),
    { file: "plan.json", place: "removal.by" },
    /before it is laid/,
    /two days/,
  ],
  [
    "a day that does not exist",
    () => edited((d) => (d["removal"] = { by: "2029-02-30" })),
    { file: "plan.json", place: "removal.by", value: "2029-02-30" },
    /day of the calendar/,
    /2027-04-30/,
  ],
  [
    "an unknown flood level",
    () => edited((d) => (d["flood_level"] = "storm")),
    { file: "plan.json", place: "flood_level", value: "storm" },
    /no water level/,
    /flood/,
  ],
  [
    "two water levels of one id",
    () => edited((d) => (d["levels"] as unknown[]).push((d["levels"] as unknown[])[0])),
    { file: "plan.json", place: "levels[1].id" },
    /already has the id/,
    /own id/,
  ],
  [
    "a misspelt entry",
    () => edited((d) => (d["flod_level"] = "flood")),
    { file: "plan.json", place: "document" },
    /"flod_level" is not known/,
    /spelling/,
  ],
  [
    "a number in quotes",
    () => edited((d) => (d["water_kg_m3"] = "1000")),
    { file: "plan.json", place: "water_kg_m3", value: "1000" },
    /must be a number/,
    /a number/,
  ],
  [
    "a share above one",
    () => edited((d) => Object.assign(d["money"] as object, { tax_share: 6.25 })),
    { file: "plan.json", place: "money.tax_share", value: "6.25" },
    /at most 1/,
    /at most 1/,
  ],
  [
    "a coordinate system in no form",
    () => edited((d) => (d["crs"] = "EPSG:27700")),
    { file: "plan.json", place: "crs" },
    /none of the forms/,
    /"epsg": 27700.*"local"/,
  ],
  [
    "degrees as a design system",
    () => edited((d) => (d["crs"] = { epsg: 4326 })),
    { file: "plan.json", place: "crs.epsg", value: "4326" },
    /not a projected system/,
    /projected one/,
  ],
  [
    "a kit that is not ready",
    () => edited((d) => (d["kit"] = { ready: "other" })),
    { file: "plan.json", place: "kit.ready", value: "other" },
    /no ready kit/,
    /test-boards/,
  ],
  [
    "a support that the kit lacks",
    () => edited((d) => (d["kit"] = { ready: "test-boards", supports: [{ id: "raft" }] })),
    { file: "plan.json", place: "kit.supports[0].id", value: "raft" },
    /no support/,
    /sleeper, crate/,
  ],
  [
    "a kit without supports",
    () =>
      edited(
        (d) =>
          (d["kit"] = {
            ready: "test-boards",
            supports: [
              { id: "sleeper", use: false },
              { id: "crate", use: false },
            ],
          }),
      ),
    { file: "plan.json", place: "kit.supports" },
    /stand on nothing/,
    /true/,
  ],
  [
    "a deck of no kind",
    () => edited((d) => Object.assign((d["kit"] as { deck: object }).deck, { kind: "planks" })),
    { file: "plan.json", place: "kit.deck.kind", value: "planks" },
    /none of the forms/,
    /"boards", "mesh"/,
  ],
  [
    "plan.json that is no JSON",
    () => sampleFiles({ "plan.json": '{\n  "schema": 1,\n  "id" "fen"\n}' }),
    { file: "plan.json", place: "line 3, column 8" },
    /":" was expected/,
    /Mend the file/,
  ],
  [
    "no plan at all",
    () => sampleFiles({ "plan.json": null }),
    { file: "plan.json" },
    /not in the folder/,
    /causey new/,
  ],
  [
    "no zones",
    () => sampleFiles({ "zones.geojson": null }),
    { file: "zones.geojson" },
    /not in the folder/,
    /"features": \[\]/,
  ],
  [
    "no terrain",
    () => sampleFiles({ "terrain.asc": null }),
    { file: "terrain.asc" },
    /not in the folder/,
    /GeoTIFF/,
  ],
  [
    "terrain under another spelling",
    () => {
      const f = sampleFiles({ "terrain.asc": null });
      f.set("Terrain.ASC", sampleTerrain());
      return f;
    },
    { file: "terrain.asc", value: "Terrain.ASC" },
    /not in the folder/,
    /Rename Terrain.ASC/,
  ],
];
test.each(rows)("refused with file, place, value and mend: %s", async (_title, files, wanted, says, mend) => {
  const all = await problems(files());
  const match = all.filter((p) => Object.entries(wanted).every(([key, v]) => p[key as keyof Problem] === v));
  expect(match.map((p) => p.message).join("\n"), JSON.stringify(all, null, 1)).toMatch(says);
  expect(match.find((p) => says.test(p.message))!.mend).toMatch(mend);
});

test("a closure out of season does not stop the plan", async () => {
  const { warnings } = await plan(shut({ use: "seasonal-closure", from: "06-01", to: "04-15" }));
  expect(warnings).toEqual([]);
});

test("problems of all files are told in one reading", async () => {
  const files = sampleFiles({
    "plan.json": planJson((d) => {
      d["flood_level"] = 5;
      delete d["money"];
    }),
    "zones.geojson": '{"type": "FeatureCollection", "features": []}',
    "places.geojson":
      '{"type": "FeatureCollection", "crs": {"type": "name", "properties": {"name": "local"}}, "features": [{}]}',
    "prices.csv": "item\n",
    "terrain.asc": "ncols 3\n1 2 3\n",
  });
  const all = await problems(files);
  expect([...new Set(all.map((p) => p.file))].sort()).toEqual([
    "places.geojson",
    "plan.json",
    "prices.csv",
    "terrain.asc",
    "zones.geojson",
  ]);
  expect(
    all
      .filter((p) => p.file === "plan.json")
      .map((p) => p.place)
      .sort(),
  ).toEqual(["flood_level", "money"]);
});

test("a ready kit keeps what the plan does not mention and takes what it does", async () => {
  const { plan: got } = await plan(
    edited(
      (d) =>
        (d["kit"] = {
          ready: "test-boards",
          supports: [
            { id: "crate", ground_above_m: 1.2, height_max_mm: 300 },
            { id: "sleeper", use: false },
          ],
        }),
    ),
  );
  const crate = sampleKit.supports[1]!;
  expect(got.kit).toEqual({
    ...sampleKit,
    supports: [{ ...crate, height_max_mm: 300, stands: { ...crate.stands, ground_above_m: 1.2 } }],
  });
});

test("the kit's own checks are told with the rest, and its warnings do not stop the plan", async () => {
  const fault = (severity: Problem["severity"]): Problem => ({
    code: "kit-x",
    severity,
    file: "plan.json",
    place: "kit.deck",
    value: "x",
    message: "Too thin.",
    mend: "Use thicker boards.",
  });
  const stopped = await readPlan(sampleFiles(), { readyKits: [], validateKit: () => [fault("error")] });
  expect(stopped).toEqual({ ok: false, problems: [fault("error")] });
  const warned = await readPlan(sampleFiles(), { readyKits: [], validateKit: () => [fault("warning")] });
  expect(warned).toMatchObject({ ok: true, warnings: [fault("warning")] });
});

test("a load rule or a grade of used timber that the tables lack is an error at its place", async () => {
  const missing: Problem = {
    code: "input",
    severity: "error",
    file: "input",
    place: "proof.load_rules",
    value: "nobody-asks",
    message: 'There is no load rule with the id "nobody-asks"',
    mend: "Use one of: asce-walkway.",
  };
  const asked: unknown[] = [];
  const got = await readPlan(sampleFiles(), {
    readyKits: [],
    validateProof: (proof) => {
      asked.push(proof);
      return [missing];
    },
  });
  expect(asked).toEqual([samplePlan.proof]);
  expect(got).toEqual({
    ok: false,
    problems: [{ ...missing, code: "plan-unknown-id", file: "plan.json", message: `${missing.message}.` }],
  });
});

test("an unfinished plan can be read: no plots, no visits, no prices, a zone far off are warnings", async () => {
  const far = {
    ...samplePlan.zones[1]!,
    id: "far",
    polygons: [
      [
        [
          [900, 0],
          [901, 0],
          [901, 1],
        ],
      ],
    ],
  } as Plan["zones"][number];
  const files = sampleFiles(
    { "prices.csv": "item,price,currency,date,source\n" },
    { ...samplePlan, plots: [], visits: [], zones: [far] },
  );
  const { warnings } = await plan(files);
  expect(warnings.map((w) => w.code).sort()).toEqual(["no-places", "prices-empty", "zone-off-terrain"]);
});

test("plot_defaults stand in for distances that a plot does not give", async () => {
  const bare = {
    type: "Feature",
    properties: { kind: "plot", id: "P1", name: "Trap 1" },
    geometry: { type: "Point", coordinates: [30, 20] },
  };
  const files = sampleFiles({
    "plan.json": planJson((d) =>
      Object.assign(d, { visits: [], plot_defaults: { keep_off_m: 2, reach_m: 3 } }),
    ),
    "places.geojson": JSON.stringify({
      type: "FeatureCollection",
      crs: { type: "name", properties: { name: "local" } },
      features: [bare],
    }),
  });
  expect((await plan(files)).plan.plots).toEqual([
    { id: "P1", name: "Trap 1", x: 30, y: 20, keep_off_m: 2, reach_m: 3 },
  ]);
});

test("migrations lead an old document up one number at a time; a gap is told", async () => {
  const found = new Findings("plan.json");
  const steps = new Map<number, Migration>([
    [1, (d) => ({ ...d, b: 2 })],
    [2, (d) => ({ ...d, c: 3 })],
  ]);
  expect(migrate(found, { schema: 1, a: 1 }, 3, steps)).toEqual({ schema: 3, a: 1, b: 2, c: 3 });
  expect(migrate(found, { schema: 3 }, 3, steps)).toEqual({ schema: 3 });
  const [problem] = await problemsOf(() => migrate(new Findings("plan.json"), { schema: 0 }, 3, steps));
  expect(problem).toMatchObject({ code: "plan-too-old", value: "0" });
});

test("names as HTML come through as text", async () => {
  const name = '<script>alert("1")</script>';
  const { plan: got } = await plan(edited((d) => (d["name"] = name)));
  expect(got.name).toBe(name);
});

test("plan.json is written for a person to read: from the top down, not by the alphabet", () => {
  const lines = new TextDecoder().decode(writePlan(samplePlan).get("plan.json")).split("\n");
  expect(lines.slice(1, 5).map((l) => l.trim().split(":")[0])).toEqual([
    '"schema"',
    '"id"',
    '"name"',
    '"site_name"',
  ]);
  expect(lines.at(-1)).toBe("");
});
