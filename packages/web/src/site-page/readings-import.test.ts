import { BLANK_SECTIONS, type Plan } from "@causey/engine/plan";
import { describe, expect, test } from "vitest";
import { guessColumns } from "./import-kinds.ts";
import { previewImport, startChoice, stillMissing, type ImportChoice } from "./readings-import.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const plan = {
  vertical_datum: "Gate",
  levels: [],
  survey: {
    ...BLANK_SECTIONS.survey,
    stations: [
      { id: "T1", x: 0, y: 0, ground_m: 9, probe_m: null, water_m: null, date: null },
      { id: "T9", x: 9, y: 9, ground_m: 1, probe_m: null, water_m: null, date: null },
    ],
    benchmarks: [{ id: "B", name: "Bolt", x: 0, y: 0, z_m: 2, datum: "Gate", source: "test" }],
  },
  ground: {
    su_kpa: 4,
    source: "test",
    safety: 3,
    readings: [{ x: 1, y: 1, depth_m: 0.3, su_kpa: 5, source: "old" }],
  },
} as unknown as Plan;
const choice = (
  kind: Parameters<typeof guessColumns>[0],
  heads: string,
  more: Partial<ImportChoice> = {},
) => ({
  ...startChoice,
  columns: guessColumns(kind, heads.split(",")),
  ...more,
});

describe("columns by their heads", () => {
  test("common names are found, none is taken twice, the others stay open", () => {
    expect(guessColumns("check-shots", ["point", "easting", "northing", "elevation", "vrms"])).toEqual({
      id: "point",
      x: "easting",
      y: "northing",
      z: "elevation",
      accuracy: "vrms",
      date: null,
    });
    expect(guessColumns("stations", ["x", "y", "z", "depth"])["id"]).toBeNull();
  });

  test("what is missing is named before anything is read", () => {
    expect(stillMissing("stations", choice("stations", "x,y"))).toBe(
      "Choose the columns of: Name, Ground level.",
    );
    const shear = choice("shear", "x,y,depth,peak");
    expect(stillMissing("shear", shear)).toMatch(/correction/);
    expect(stillMissing("shear", { ...shear, correction: 0.5 })).toMatch(/who took/);
    expect(stillMissing("shear", { ...shear, correction: 0.5, source: "vane" })).toBeNull();
  });
});

describe("stations", () => {
  const heads = "id,x,y,ground,probe,water,date";
  const file = utf8(`${heads}\nT1,1,2,2.5,0.8,,2026-07-21\nT2,3,4,2.6,,2.4,\nT3,5,6,,,,\n`);

  test("equal names are replaced in their place, new ones come behind, empty cells stay not read", () => {
    const preview = previewImport("stations", "t.csv", file, choice("stations", heads), plan);
    expect([preview.count, preview.left_out.map((row) => row.line)]).toEqual([2, [4]]);
    expect(preview.edit).toMatchObject({ type: "set-section", section: "survey" });
    const { stations, benchmarks } = preview.edit!.value as Plan["survey"];
    expect(stations.map((s) => [s.id, s.ground_m, s.probe_m])).toEqual([
      ["T1", 2.5, 0.8],
      ["T9", 1, null],
      ["T2", 2.6, null],
    ]);
    expect(benchmarks).toBe(plan.survey.benchmarks);
  });

  test("or all that are there give way", () => {
    const all = choice("stations", heads, { replace: true, unit: "ft" });
    const { stations } = previewImport("stations", "t.csv", file, all, plan).edit!.value as Plan["survey"];
    expect(stations.map((s) => s.id)).toEqual(["T1", "T2"]);
    expect(stations[0]!.ground_m).toBeCloseTo(2.5 * 0.3048, 12);
  });

  test("faults are told with their lines, and nothing can be taken over", () => {
    const bad = utf8(`${heads}\nT1,1,2,2.5,-1,,\nT1,3,4,zwei,,,\n`);
    const preview = previewImport("stations", "t.csv", bad, choice("stations", heads), plan);
    expect(preview.edit).toBeNull();
    expect(preview.problems.map((p) => p.place)).toEqual(["line 2", "line 3"]);
  });
});

test("check shots: held against the marks of the plan", () => {
  const heads = "id,x,y,z";
  const good = previewImport(
    "check-shots",
    "c.csv",
    utf8(`${heads}\nC1,1,2,2.1\n`),
    choice("check-shots", heads),
    plan,
  );
  expect((good.edit!.value as Plan["survey"]).check_shots.map((s) => s.z_m)).toEqual([2.1]);
  const ellipsoid = utf8(`${heads}\nC1,1,2,48.1\nC2,3,4,48.2\nC3,9,4,48.3\n`);
  const bad = previewImport("check-shots", "c.csv", ellipsoid, choice("check-shots", heads), plan);
  expect([bad.edit, bad.problems.map((p) => p.code)]).toEqual([null, ["ellipsoid-heights"]]);
});

test("strength readings are added, with their correction in the source", () => {
  const heads = "x,y,depth,peak,remoulded";
  const more = { correction: 0.5, source: "Field vane, July" };
  const file = utf8(`${heads}\n1,2,0.4,12,4\n`);
  const preview = previewImport("shear", "v.csv", file, choice("shear", heads, more), plan);
  const { readings, su_kpa } = preview.edit!.value as Plan["ground"];
  expect([su_kpa, readings.length, readings[0]!.source]).toEqual([4, 2, "old"]);
  expect([readings[1]!.su_kpa, readings[1]!.remoulded_kpa]).toEqual([6, 2]);
  expect(readings[1]!.source).toBe("Field vane, July, vane reading x 0.5");
});

test("a file without any row that can be read gives nothing to take over", () => {
  const preview = previewImport(
    "stations",
    "t.csv",
    utf8("id,x,y,ground\n"),
    choice("stations", "id,x,y,ground"),
    plan,
  );
  expect([preview.count, preview.edit]).toEqual([0, null]);
});
