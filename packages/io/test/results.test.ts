import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { auditLayout } from "@causey/engine/audit";
import { DomainError } from "@causey/engine/units";
import { readCsv, undefuse } from "../src/csv/index.ts";
import { Findings } from "../src/problem/index.ts";
import { resultFiles, resultsJsonSchema, resultsSchema, withoutHidden } from "../src/results/index.ts";
import { samplePlan, sampleTerrain } from "./support/sample-plan.ts";
import { planWithSecret, sampleResults, secret } from "./support/sample-results.ts";
import { readTerrain } from "../src/terrain/index.ts";

const files = resultFiles(sampleResults, planWithSecret);
const text = (name: string): string => new TextDecoder().decode(files.get(name));
const json = (name: string): Record<string, unknown> => JSON.parse(text(name)) as Record<string, unknown>;
const table = (name: string): Record<string, string>[] => {
  const { heads, rows } = readCsv(new Findings(name), files.get(name)!, 1e7, 1e5);
  return rows.map((r) => Object.fromEntries(heads.map((h, i) => [h, undefuse(r.cells[i] ?? "")])));
};

test("the seven files, each ending in a line end", () => {
  expect([...files.keys()]).toEqual([
    "results.json",
    "layout.geojson",
    "joints.csv",
    "checks.csv",
    "order.csv",
    "budget.csv",
    "cutting.csv",
  ]);
  for (const name of files.keys()) expect(text(name).endsWith("\n")).toBe(true);
});

test("results.json follows its published schema (JSON Schema 2020-12, held by the package ajv)", () => {
  const validate = new Ajv2020({ allErrors: true, strict: false }).compile(resultsJsonSchema());
  expect(validate(json("results.json")), JSON.stringify(validate.errors)).toBe(true);
  expect(resultsSchema.safeParse(sampleResults).success).toBe(true);
  expect(validate({ ...json("results.json"), cost: null })).toBe(false);
  expect(validate({ ...json("results.json"), extra: 1 })).toBe(false);
});

test("equal results give equal bytes, however they were put together", () => {
  const turned = Object.fromEntries(
    Object.entries(sampleResults).reverse(),
  ) as unknown as typeof sampleResults;
  expect(resultFiles(turned, planWithSecret)).toEqual(files);
});

test("a hidden zone appears in no file: not its id, not its name, in no case; its sums stay", () => {
  for (const name of files.keys()) {
    expect(text(name).toLowerCase(), name).not.toContain("z-orchid");
    expect(text(name).toLowerCase(), name).not.toContain("fen orchid");
  }
  const shown = withoutHidden(sampleResults, planWithSecret.zones);
  expect(shown.evaluation.shaded_m2).toBe(sampleResults.evaluation.shaded_m2);
  expect(shown.evaluation.shaded_by_zone.map((z) => z.zone)).toEqual(["fen"]);
  expect(shown.evaluation.crossings.map((z) => z.zone)).toEqual(["ditch"]);
  expect(shown.layout.parts[0]!.bridges).toEqual(["ditch"]);
  expect(shown.layout.unreached).toEqual([
    { plot: "P2", because: "a withheld area lies in the way", gap: null },
  ]);
  expect(shown.cautions).toEqual(["Keep out of a withheld area."]);
});

test("a hidden habitat without a check shot is not listed; the others are", () => {
  const { survey } = withoutHidden(sampleResults, planWithSecret.zones);
  expect(survey.unchecked_habitats).toEqual([{ zone: "fen", name: "Fen" }]);
  expect(survey.terrain!.note).toBe("Taken off in a withheld area too.");
  expect(survey.shear[0]!.readings[0]!.source).toBe("hand vane by a withheld area");
});

test("a zone that is not hidden is shown, and nothing is rewritten", () => {
  const open = { ...planWithSecret, zones: [{ ...secret, hidden: false }] };
  expect(withoutHidden(sampleResults, open.zones)).toBe(sampleResults);
  expect(new TextDecoder().decode(resultFiles(sampleResults, open).get("results.json"))).toContain(
    "Fen orchid",
  );
});

test("a hidden zone whose id is a word of the format does not spoil the format", () => {
  const odd = { ...planWithSecret, zones: [{ ...secret, id: "module", name: "pass" }] };
  const shown = withoutHidden(sampleResults, odd.zones);
  expect(resultsSchema.safeParse(shown).success).toBe(true);
  expect(shown.layout.parts[0]!.kind).toBe("module");
});

interface GeoFeature {
  readonly properties: Record<string, unknown>;
  readonly geometry: { readonly type: string; readonly coordinates: unknown };
}

test("layout.geojson is read by the audit, which shares no code with it, without a fault of format", async () => {
  const { raster } = await readTerrain("t.asc", sampleTerrain(), { unit: "m" });
  const { kit, laying, layout, starts, plots, zones } = samplePlan;
  const report = auditLayout({
    layout: json("layout.geojson"),
    terrain: raster,
    zones,
    starts,
    plots,
    kit,
    module_depth_m: 0.2,
    laying,
    max_grade: layout.max_grade,
    min_clear_mm: layout.min_clear_mm,
  });
  const format = report.rules.find((r) => r.rule === "format")!;
  expect(format.problems).toEqual([]);
  expect(format.tested).toBe(2 + 3 + 6 + 12 + 1);
});

test("layout.geojson names its grid, its datum and the same totals as the results", () => {
  const layout = json("layout.geojson");
  expect(layout["crs"]).toEqual({ type: "name", properties: { name: "local" } });
  expect(layout["vertical_datum"]).toBe("Gate bench mark");
  const { evaluation, cost } = sampleResults;
  expect(layout["figures"]).toEqual({
    length_m: evaluation.length_m,
    shaded_m2: evaluation.shaded_m2,
    contact_m2: evaluation.contact_m2,
    cost: cost.total,
    currency: "USD",
  });
  const features = layout["features"] as GeoFeature[];
  const kinds = features.map((f) => `${String(f.properties["kind"])} ${f.geometry.type}`);
  expect([...new Set(kinds)]).toEqual([
    "branch LineString",
    "module Polygon",
    "platform Polygon",
    "joint Point",
    "foot Polygon",
  ]);
  expect(
    new Set(features.map((f) => `${String(f.properties["kind"])} ${String(f.properties["id"])}`)).size,
  ).toBe(features.length);
  const epsg = JSON.parse(
    new TextDecoder().decode(
      resultFiles(sampleResults, { ...samplePlan, crs: { epsg: 27700 } }).get("layout.geojson"),
    ),
  ) as Record<string, unknown>;
  expect(epsg["crs"]).toEqual({ type: "name", properties: { name: "urn:ogc:def:crs:EPSG::27700" } });
});

test("corners are written to the millimetre and rings closed; a branch runs from joint to joint", () => {
  const features = json("layout.geojson")["features"] as GeoFeature[];
  const numbers = JSON.stringify(features.map((f) => f.geometry.coordinates)).match(/-?\d+\.\d+/g)!;
  expect(numbers.every((n) => n.split(".")[1]!.length <= 3)).toBe(true);
  const [ring] = features.find((f) => f.properties["kind"] === "module")!.geometry
    .coordinates as number[][][];
  expect(ring).toHaveLength(5);
  expect(ring![4]).toEqual(ring![0]);
  expect(features[0]!.geometry.coordinates).toEqual([
    [5, 5],
    [8.658, 5],
    [9.572, 5],
  ]);
});

test("joints.csv: one row a joint, heads with units", () => {
  expect(table("joints.csv")).toHaveLength(6);
  expect(table("joints.csv")[1]).toEqual({
    id: "A/1",
    branch: "A",
    along_m: "3.658",
    x_m: "8.658",
    y_m: "5",
    heading_deg: "90",
    ground_m: "1.05",
    deck_m: "1.52",
    support: "sleeper",
    support_height_m: "0.229",
  });
});

test("checks.csv: one row for each check and part, every state, formula cells defused", () => {
  const rows = table("checks.csv");
  expect(rows.map((r) => `${r["kind"]} ${r["part"]} ${r["status"]}`)).toEqual([
    "stringer-bending A-1 pass",
    "stringer-bending B-1 pass",
    "uplift A-1 fail",
    "lifting  not-applicable",
    "bearing A/0 cannot-check",
    "bearing A/1 cannot-check",
  ]);
  expect(rows[0]).toMatchObject({
    demand: "1234.57",
    capacity: "2345.6",
    unit: "N*m",
    rule: "NDS 2018, 3.3.1",
    source_status: "memory",
  });
  expect(rows[0]!["note"]).toContain("rests on values from memory, confirm");
  expect(rows[2]).toMatchObject({
    utilisation_1: "1.25",
    governs: "=storm",
    note: "a flood of 1.2 m; two stakes more",
  });
  expect(text("checks.csv")).toContain("'=storm");
  expect(rows[4]!["note"]).toBe("missing: strength near a withheld area");
});

test("order.csv adds up to the cost, and what has no price is in it without an amount", () => {
  const rows = table("order.csv");
  const sum = rows.reduce((total, r) => total + Number(r["amount_usd"]), 0);
  expect(sum).toBeCloseTo(sampleResults.cost.total, 9);
  expect(rows.map((r) => r["line"])).toEqual(["materials", "materials", "materials", "tax", "labour"]);
  expect(rows[2]).toMatchObject({
    item: "mesh-clip",
    needed: "4",
    amount_usd: "",
    note: "no price in the list: not in the total",
  });
  expect(text("order.csv")).toContain("'=2x6 treated");
  expect(text("order.csv").split("\r\n")[0]).toContain("unit_price_USD,amount_USD");
});

test("amounts that do not add up, and numbers that are none, are never written", () => {
  const { cost, evaluation } = sampleResults;
  expect(() => resultFiles({ ...sampleResults, cost: { ...cost, total: 300 } }, samplePlan)).toThrow(
    DomainError,
  );
  expect(() =>
    resultFiles({ ...sampleResults, evaluation: { ...evaluation, length_m: NaN } }, samplePlan),
  ).toThrow(DomainError);
});

test("cutting.csv: what is sawn from each stick, and what is left of it", () => {
  expect(table("cutting.csv")).toEqual([
    { size: "2x6", pattern: "1", stock_mm: "3657", sticks: "6", cuts_mm: "1 x 3645 + 2 x 5", offcut_mm: "2" },
  ]);
});
