import { describe, expect, test } from "vitest";
import type { Raster, StrengthReading, Zone } from "../site/index.ts";
import { correctedTerrain } from "./corrected-terrain.ts";
import type { GroundEvidence } from "./evidence.ts";
import { surveyResults, type SurveyInput } from "./survey-results.ts";
import type { CheckShot, Station, Survey } from "./types.ts";

const DATUM = "Gate bench mark";
const flat: Raster = {
  cols: 41,
  rows: 41,
  x0: 0,
  y0: 0,
  dx: 1,
  dy: 1,
  values: new Float32Array(1681).fill(2),
};
const habitat = (id: string, west: number, east: number): Zone => ({
  id,
  name: id.toUpperCase(),
  use: "habitat",
  sensitivity: 1,
  polygons: [
    [
      [
        [west, 0],
        [east, 0],
        [east, 40],
        [west, 40],
      ],
    ],
  ],
  hidden: false,
  source: "test",
});
const shot = (id: string, x: number, z_m: number): CheckShot => ({
  id,
  x,
  y: 10,
  z_m,
  accuracy_m: 0.01,
  date: null,
});
const station = (id: string, x: number, y: number, more: Partial<Station> = {}): Station => ({
  id,
  x,
  y,
  ground_m: 2,
  probe_m: null,
  water_m: null,
  date: null,
  ...more,
});
const survey: Survey = {
  benchmarks: [
    { id: "B1", name: "Bolt", x: 0, y: 10, z_m: 1.9, datum: DATUM, source: "test" },
    { id: "B2", name: "Post", x: 0, y: 30, z_m: 2.5, datum: DATUM, source: "test" },
    { id: "B3", name: "Stone", x: 30, y: 30, z_m: 2.5, datum: "another", source: "test" },
  ],
  check_shots: [
    shot("C1", 4, 1.9),
    shot("C2", 8, 1.88),
    shot("C3", 12, 1.92),
    shot("C4", 16, 1.89),
    shot("C5", 6, 1.2),
    shot("C6", 0, 1.93),
  ],
  stations: [],
  correct_terrain: false,
  accuracy_m: 0.05,
  date: "2026-07-20",
};

function input(more: Partial<SurveyInput> = {}, kind: GroundEvidence["kind"] = "grid"): SurveyInput {
  const zones = more.zones ?? [habitat("reed", 0, 20)];
  const working: GroundEvidence["working"][number][] = [];
  const { bias, lowered_m, note, band_m } = correctedTerrain(flat, more.survey ?? survey, zones, working);
  return {
    survey,
    zones,
    datum: DATUM,
    readings: [],
    ground: { kind, bias, lowered_m, note, working, points: null },
    band_m,
    ...more,
  };
}

describe("the terrain held against the shots", () => {
  test("every shot has its residual, the wild one is marked and still counts", () => {
    const { terrain, band_m, band_working } = surveyResults(input());
    expect(terrain!.n).toBe(6);
    expect(terrain!.median_m).toBeCloseTo(0.105, 6);
    expect(terrain!.shots.map((s) => [s.id, Number(s.residual_m.toFixed(3)), s.outlier])).toEqual([
      ["C1", 0.1, false],
      ["C2", 0.12, false],
      ["C3", 0.08, false],
      ["C4", 0.11, false],
      ["C5", 0.8, true],
      ["C6", 0.07, false],
    ]);
    expect(terrain!.lowered_m).toBe(0);
    expect(band_working.at(-1)!.value).toBe(band_m);
    expect(band_working.map((s) => s.id)).toContain("survey.height-band");
  });

  test("shots outside the habitats that show a wider band are in its working", () => {
    const wild = [shot("D1", 25, 1.2), shot("D2", 30, 2.9), shot("D3", 35, 1.7)];
    const { terrain, band_m, band_working } = surveyResults(
      input({ survey: { ...survey, check_shots: [...survey.check_shots, ...wild] } }),
    );
    expect(terrain!.elsewhere).toEqual(["D1", "D2", "D3"]);
    const last = band_working.at(-1)!;
    expect([last.id, last.value]).toEqual(["survey.band", band_m]);
    expect(band_working.filter((s) => s.note === "shots outside the habitats").length).toBeGreaterThan(3);
  });

  test("habitats without a shot are named under terrain from the air and under no other", () => {
    const zones = [habitat("reed", 0, 20), habitat("sedge", 22, 40)];
    expect(surveyResults(input({ zones })).unchecked_habitats).toEqual([{ zone: "sedge", name: "SEDGE" }]);
    expect(surveyResults(input({ zones }, "points")).unchecked_habitats).toEqual([]);
    expect(surveyResults(input({ zones, ground: null })).unchecked_habitats).toEqual([]);
  });

  test("what is not known is null and said", () => {
    const bare = { ...survey, check_shots: [], benchmarks: [], accuracy_m: null, date: null };
    const r = surveyResults(input({ survey: bare, zones: [] }));
    expect([r.band_m, r.terrain!.median_m, r.closure.rms_m]).toEqual([null, null, null]);
    expect(r.cautions).toHaveLength(2);
    expect(r.cautions[0]).toMatch(/no band.*3 check shots/);
    expect(surveyResults(input({ ground: null })).terrain).toBeNull();
  });
});

test("closure: both heights, their difference, marks not visited and marks on another datum", () => {
  const { closure, cautions } = surveyResults(input());
  const [only] = closure.closures;
  expect(closure.closures).toHaveLength(1);
  expect([only!.benchmark, only!.shot, only!.mark_m, only!.closes]).toEqual(["B1", "C6", 1.9, false]);
  expect(only!.difference_m).toBeCloseTo(0.03, 9);
  expect(only!.shot_m).toBeCloseTo(1.93, 9);
  expect([closure.not_visited, closure.other_datum]).toEqual([["B2"], ["B3"]]);
  expect(cautions).toEqual([expect.stringMatching(/does not close on B1/)]);
});

test("stations: distance along, firm ground, water over ground; not read stays not known", () => {
  const stations = [
    station("T1", 0, 0, { probe_m: 1.5, water_m: 1.9 }),
    station("T2", 3, 4, { water_m: 2.2 }),
    station("T3", 3, 10, { probe_m: 0 }),
  ];
  const rows = surveyResults(input({ survey: { ...survey, stations } })).stations;
  expect(rows.map((r) => r.along_m)).toEqual([0, 5, 11]);
  expect(rows.map((r) => r.firm_m)).toEqual([0.5, null, 2]);
  expect(rows.map((r) => (r.water_over_m === null ? null : Number(r.water_over_m.toFixed(3))))).toEqual([
    -0.1,
    0.2,
    null,
  ]);
});

test("strength by station with its sensitivity, its working, and a caution where stirring costs most of it", () => {
  const reading = (x: number, su_kpa: number, remoulded_kpa?: number): StrengthReading => ({
    x,
    y: 0,
    depth_m: 0.3,
    su_kpa,
    source: "vane",
    ...(remoulded_kpa === undefined ? {} : { remoulded_kpa }),
  });
  const mild = surveyResults(input({ readings: [reading(1, 6, 3), reading(9, 8)] }));
  expect(mild.shear.map((s) => s.sensitivity)).toEqual([2, null]);
  expect(mild.shear_working.map((s) => [s.id, s.value])).toEqual([["survey.sensitivity", 2]]);
  const keen = surveyResults(input({ readings: [reading(1, 8, 2)] }));
  expect(keen.cautions.some((c) => c.includes("4 times the remoulded"))).toBe(true);
  expect(mild.cautions.some((c) => c.includes("remoulded"))).toBe(false);
});
