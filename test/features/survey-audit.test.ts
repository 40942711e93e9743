// Rows 6 to 8 of the feature list: datums, lidar over plants, accuracy and outliers.
import type { Plan } from "@causey/engine/plan";
import type { WaterLevel } from "@causey/engine/water";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { SurveyFindings } from "../../packages/web/src/site-page/survey-results.tsx";
import { DATUM, areaOf, flatPlan, folderFiles, planned, problemsIn } from "../support/feature-plan.ts";
import { causey, folderOf } from "../support/shell.ts";

const level = (datum: string): WaterLevel => ({
  id: "mhw",
  name: "Mean high water",
  role: "mhw",
  basis: "mean",
  z_m: 0.9,
  datum,
  source: "gauge",
  epoch: "2002 to 2020",
});
const mark = { id: "B1", name: "Bolt", x: 5, y: 20, z_m: 1, datum: "NAVD88", source: "levelled" };
const clashes: readonly (readonly [string, Partial<Plan>, string])[] = [
  ["a water level", { levels: [level("MLLW")] }, "MLLW"],
  ["the terrain", { terrain: { kind: "grid", file: "terrain.asc", unit: "m", datum: "NAVD88" } }, "NAVD88"],
  ["a bench mark", { survey: { ...flatPlan().survey, benchmarks: [mark] } }, "NAVD88"],
];

describe("6 carry vertical datum with every height; refuse to mix silently (MHW and NAVD88 on drawings)", () => {
  test.each(clashes)(
    "6 %s on another datum than the plan's: an error that names both",
    async (_, change, other) => {
      const plan = flatPlan(change);
      const [problem, ...more] = await problemsIn(folderFiles(plan));
      expect(more).toEqual([]);
      expect(problem).toMatchObject({ code: "datum-clash", severity: "error", value: other });
      expect(problem!.message).toContain(`"${other}"`);
      expect(problem!.message).toContain(`"${DATUM}"`);
      const ran = causey(["plan", folderOf(folderFiles(plan)), "--out", "/nowhere"]);
      expect(ran.code).toBe(2);
      expect(ran.error).toContain(other);
    },
  );

  test("6 on one datum the plan is taken, and the results carry it", async () => {
    const { results } = await planned(folderFiles(flatPlan({ levels: [level(DATUM)] })));
    expect(results.datum).toBe(DATUM);
  });
});

const zones = [
  areaOf("marsh", "habitat", [0, 10, 25, 39], { sensitivity: 3 }),
  areaOf("reed", "habitat", [25, 10, 55, 39], { sensitivity: 4 }),
  areaOf("glebe", "parcel", [0, 0, 59, 39]),
  areaOf("nests", "closed", [40, 0, 50, 8]),
  areaOf("mud", "soft-ground", [0, 0, 30, 8]),
];
const shot = (id: string, x: number, y: number, z_m: number, accuracy_m: number | null = 0.01) => ({
  id,
  x,
  y,
  z_m,
  accuracy_m,
  date: "2027-02-03",
});

describe("7 show lidar canopy-bias warning in marsh polygons (known bias of lidar in dense grass)", () => {
  const warned = async (shots: Plan["survey"]["check_shots"]): Promise<[string[], string[]]> => {
    const plan = flatPlan({ zones, survey: { ...flatPlan().survey, check_shots: shots } });
    const { warnings, results } = await planned(folderFiles(plan));
    const places = warnings.filter((w) => w.code === "terrain-unchecked-habitat").map((w) => w.place);
    return [places, results.survey.unchecked_habitats.map((h) => h.zone)];
  };

  test("7 the warning appears in those polygons only, not over parcels, closures and soft ground", async () => {
    expect(await warned([])).toEqual([
      ['zone "marsh" (marsh)', 'zone "reed" (reed)'],
      ["marsh", "reed"],
    ]);
  });

  test("7 a height taken on the ground itself inside a polygon ends the warning there, one outside does not", async () => {
    expect((await warned([shot("C1", 10, 20, 0.95)]))[1]).toEqual(["reed"]);
    expect((await warned([shot("C1", 10, 5, 0.95)]))[1]).toEqual(["marsh", "reed"]);
  });

  test("7 ground surveyed on foot carries no such warning", async () => {
    const stations = [10, 40].map((x, i) => ({
      id: `T${i}`,
      x,
      y: 20,
      ground_m: 1,
      probe_m: null,
      water_m: null,
      date: null,
    }));
    const plan = flatPlan({
      zones: zones.slice(0, 2),
      starts: [{ id: "gate", name: "Gate", x: 10, y: 20 }],
      terrain: { kind: "stations", datum: DATUM, cell_m: 1, reach_m: 4 },
      survey: { ...flatPlan().survey, stations },
    });
    const { warnings, results } = await planned(folderFiles(plan));
    expect(warnings.map((w) => w.code)).not.toContain("terrain-unchecked-habitat");
    expect(results.survey.unchecked_habitats).toEqual([]);
  });
});

/** Points every 5 m on level ground with a ripple of 1 cm; one stands `lift` above it. */
function rtk(lift: number): string {
  const ripple = (i: number): number => [0, 0.01, -0.01, 0.005, -0.005][(i * 7) % 5]!;
  const rows = Array.from({ length: 13 * 9 }, (_, i) => {
    const z = 1 + ripple(i) + (i === 58 ? lift : 0);
    return `P${i},${5 * (i % 13)},${5 * Math.floor(i / 13)},${z.toFixed(3)},${i === 58 ? "0.035" : "0.012"},2027-02-${i === 58 ? "04" : "03"}`;
  });
  return ["id,x,y,z,accuracy,date", ...rows].join("\n");
}
const surveyed = flatPlan({
  terrain: {
    kind: "points",
    file: "rtk.csv",
    columns: { id: "id", x: "x", y: "y", z: "z", code: null, accuracy: "accuracy", date: "date" },
    unit: "m",
    decimal: "point",
    date_order: "ymd",
    datum: DATUM,
    cell_m: 1,
    longest_edge_m: 15,
  },
});

describe("8 keep accuracy and date per point and outlier list (survey audit; three deviations: common practice, no source)", () => {
  test("8 a point beyond three deviations is listed with its line, accuracy and day; without it none is", async () => {
    const { results, plan } = await planned(folderFiles(surveyed, { "rtk.csv": rtk(0.12) }));
    const points = results.survey.points!;
    expect(points.outliers).toHaveLength(1);
    expect(points.outliers[0]).toMatchObject({ id: "P58", line: 60, accuracy_m: 0.035, date: "2027-02-04" });
    expect(points.outliers[0]!.sigmas).toBeGreaterThan(3);
    expect(points.accuracy).toMatchObject({ stated: 117 });
    expect(points.dates).toEqual({ stated: 117, first: "2027-02-03", last: "2027-02-04" });
    const html = renderToStaticMarkup(createElement(SurveyFindings, { survey: results.survey, plan }));
    expect(html).toMatch(/P58.*?2027-02-04/);
    const level = await planned(folderFiles(surveyed, { "rtk.csv": rtk(0) }));
    expect(level.results.survey.points!.outliers).toEqual([]);
  });

  test("8 check shots keep accuracy and day, and the one three deviations off is marked and still counts", async () => {
    const shots = [0.95, 0.96, 0.94, 0.95, 0.97, 0.55].map((z, i) =>
      shot(`C${i}`, 8 + 5 * i, 20, z, i / 100),
    );
    const plan = flatPlan({ survey: { ...flatPlan().survey, check_shots: shots } });
    const { plan: back, results } = await planned(folderFiles(plan));
    expect(back.survey.check_shots).toEqual(shots);
    const { terrain } = results.survey;
    expect(terrain!.shots.filter((s) => s.outlier).map((s) => s.id)).toEqual(["C5"]);
    expect(terrain!.n).toBe(6);
  });
});
