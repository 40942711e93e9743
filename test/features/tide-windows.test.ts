// Rows 14 and 15 of the feature list: dry hours day by day, and how far the tide departs from its prediction.
import type { Plan, Results } from "@causey/engine/plan";
import type { SeriesFile } from "@causey/engine/water";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { beforeAll, describe, expect, test } from "vitest";
import { Residuals } from "../../packages/web/src/water-page/residuals.tsx";
import { DATUM, flatPlan, folderFiles, planned, problemsIn, type Planned } from "../support/feature-plan.ts";

const [MEAN_M, HALF_RANGE_M, PERIOD_H] = [0.9, 0.6, 12];
const FIRST = Date.UTC(2027, 3, 3);
/** High water at 0, 12 and 24 o'clock UTC. */
const tideAt = (h: number): number => MEAN_M + HALF_RANGE_M * Math.cos((2 * Math.PI * h) / PERIOD_H);

function file(days: number, level: (h: number) => number): string {
  const rows = Array.from({ length: days * 240 + 1 }, (_, i) => i / 10).map(
    (h) => `${new Date(FIRST + h * 3_600_000).toISOString().slice(0, 16)}Z,${level(h).toFixed(6)}`,
  );
  return ["time,level", ...rows].join("\n");
}
const series = (name: string, basis: SeriesFile["basis"]): SeriesFile => ({
  file: name,
  kind: "readings",
  basis,
  columns: { time: "time", level: "level", flag: null },
  unit: "m",
  zone: "UTC",
  datum: DATUM,
  offset_m: 0,
  offset_source: "",
  attribution: "worked out for the test",
});

/** Ground that falls from 1.30 m at the start to about 0.96 m at the plot. */
const falling = (x: number): number => 1.35 - x / 100;
const laid: Plan["laying"] = { from: "2027-04-05", to: "2027-04-08", carry_m: 60, carriers: 2 };
const tidal = flatPlan({
  laying: laid,
  water: { exposure: "salt", series: series("tide.csv", "predicted") },
});

describe("14 list dry-ground hours and safe windows per day per station (lifeboat officer, north Norfolk marshes: back four hours before high water)", () => {
  let water: Results["water"];
  beforeAll(async () => {
    ({ water } = (await planned(folderFiles(tidal, { "tide.csv": file(10, tideAt) }, falling))).results);
  });
  /** Half the time for which a sine tide stands above a height, about each high water [h]. */
  const halfWet = (z: number): number => (PERIOD_H * Math.acos((z - MEAN_M) / HALF_RANGE_M)) / (2 * Math.PI);

  test("14 a known sine tide gives the analytic dry hours at every station on every day", () => {
    expect(water.days.length).toBeGreaterThan(8);
    const grounds = water.days.map((s) => s.ground_m);
    expect(Math.max(...grounds) - Math.min(...grounds)).toBeGreaterThan(0.25);
    for (const { ground_m, days, station } of water.days) {
      expect(days.map((d) => d.day)).toEqual(["2027-04-05", "2027-04-06", "2027-04-07", "2027-04-08"]);
      for (const d of days) {
        expect(d.covered_h, station).toBe(24);
        expect(Math.abs(d.dry_h - (24 - 4 * halfWet(ground_m))), `${station} ${d.day}`).toBeLessThan(0.02);
      }
    }
  });

  test("14 windows run from the ebb past the lowest ground on the way to the flood over it, and end four hours before high water", () => {
    const minutes = (iso: string): number => Number(iso.slice(11, 13)) * 60 + Number(iso.slice(14, 16));
    const ways = water.days.map((s) => s.way_m);
    expect(ways).toEqual(
      water.days.map((_, i) => Math.min(...water.days.slice(0, i + 1).map((s) => s.ground_m))),
    );
    for (const { way_m, days } of water.days)
      for (const { windows } of days) {
        expect(windows).toHaveLength(2);
        const opens = halfWet(way_m) * 60;
        for (const [i, w] of windows.entries()) {
          expect(Math.abs(minutes(w.from) - (720 * i + opens))).toBeLessThan(2);
          expect(Math.abs((minutes(w.to) || 1440) - (720 * (i + 1) - opens))).toBeLessThan(2);
          expect(w.back_by!.slice(11)).toBe(i === 0 ? "08:00Z" : "20:00Z");
          expect(Math.abs(w.safe_h - (8 - halfWet(way_m)))).toBeLessThan(0.03);
        }
      }
  });

  test("14 days of laying that the table does not cover are not told, and said not to be", async () => {
    const { results } = await planned(
      folderFiles(
        { ...tidal, laying: { ...laid, from: "2027-06-07", to: "2027-06-09" } },
        { "tide.csv": file(10, tideAt) },
      ),
    );
    expect(results.water.days).toEqual([]);
    expect(results.water.cautions.join(" ")).toContain(
      "does not cover the days of laying (2027-06-07 to 2027-06-09)",
    );
  });
});

describe("15 state uncertainty of prediction vs observed; wind set-up caution (University of Liverpool fieldwork safety 2019: wind shifts tide times)", () => {
  const compared: Plan = {
    ...tidal,
    water: { ...tidal.water, compare: series("gauge.csv", "recorded") },
  };
  /** Half the readings 0.05 m over the prediction, half 0.15 m, one storm reading 0.90 m. */
  const surge = (h: number): number => (h === 100 ? 0.9 : Math.round(h * 10) % 2 === 0 ? 0.05 : 0.15);
  let done: Planned;
  beforeAll(async () => {
    const files = { "tide.csv": file(10, tideAt), "gauge.csv": file(10, (h) => tideAt(h) + surge(h)) };
    done = await planned(folderFiles(compared, files));
  });

  test("15 residual statistics by hand: mean 0.1 m, spread 0.05 m but for the storm, span, highest and its time", () => {
    const r = done.results.water.residuals!;
    const n = 2401;
    const sum = 1200 * 0.05 + 1200 * 0.15 + 0.9;
    expect(r.n).toBe(n);
    expect(r.mean_m).toBeCloseTo(sum / n, 5);
    const squares = 1200 * 0.05 ** 2 + 1200 * 0.15 ** 2 + 0.9 ** 2;
    expect(r.sd_m).toBeCloseTo(Math.sqrt((squares - sum ** 2 / n) / (n - 1)), 5);
    expect([r.low_m, r.high_m]).toEqual([expect.closeTo(0.05, 5), expect.closeTo(0.15, 5)]);
    expect(r.most_m).toBeCloseTo(0.9, 5);
    expect(r.most_at).toBe("2027-04-07T04:00Z");
  });

  test("15 the statistics and the wind set-up caution are shown", () => {
    const { water } = done.results;
    expect(water.cautions.join(" ")).toContain("Wind set-up");
    expect(water.cautions.join(" ")).toContain("Predicted, no wind");
    const html = renderToStaticMarkup(
      createElement(Residuals, { residuals: water.residuals, plan: done.plan }),
    );
    expect(html).toContain("2027-04-07 04:00 UTC");
    expect(html).toContain("900 mm");
    expect(html).toContain("2,401 times");
  });

  test("15 with a prediction alone the uncertainty is said to be unknown; two of one kind are refused", async () => {
    const alone = await planned(folderFiles(tidal, { "tide.csv": file(10, tideAt) }));
    expect(alone.results.water.residuals).toBeNull();
    expect(alone.results.water.cautions.join(" ")).toContain("departs from its prediction is not known");
    const twice = { ...tidal, water: { ...tidal.water, compare: series("tide.csv", "predicted") } };
    const problems = await problemsIn(folderFiles(twice, { "tide.csv": file(10, tideAt) }));
    expect(problems.map((p) => [p.code, p.place])).toContainEqual(["series-compare", "water.compare"]);
  });
});
