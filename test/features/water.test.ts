// Rows 12 and 13 of the feature list: gauge files, and the lines of the water.
import type { Plan } from "@causey/engine/plan";
import type { SeriesFile, WaterLevel } from "@causey/engine/water";
import { PERMIT_SET } from "@causey/papers/set";
import { describe, expect, test } from "vitest";
import { DATUM, flatPlan, folderFiles, paperWords, planned, problemsIn } from "../support/feature-plan.ts";

const gauge: SeriesFile = {
  file: "gauge.csv",
  kind: "readings",
  basis: "recorded",
  columns: { time: "time", level: "level", flag: null },
  unit: "m",
  zone: "UTC",
  datum: DATUM,
  offset_m: 0,
  offset_source: "",
  attribution: "Sluice gauge",
};
const withGauge = (some: Partial<SeriesFile> = {}): Plan =>
  flatPlan({ water: { exposure: "salt", series: { ...gauge, ...some } } });

/** Readings every six minutes over three days, those from 30:00 h to 36:30 h missing; local clock times. */
function gaugeFile(offset_h: number): string {
  const rows = Array.from({ length: 721 }, (_, i) => i / 10)
    .filter((h) => h <= 30 || h >= 36.5)
    .map((h) => {
      const time = new Date(Date.UTC(2027, 2, 1) + (h + offset_h) * 3_600_000).toISOString().slice(0, 16);
      return `${time.replace("T", " ")},${(0.8 + 0.5 * Math.cos((2 * Math.PI * h) / 12)).toFixed(4)}`;
    });
  return ["time,level", ...rows].join("\n");
}

describe("12 read tide-gauge CSV with gaps, time zone, datum (common practice, no source)", () => {
  test("12 the gap is listed with its two ends, and left out of the covered time", async () => {
    const { warnings, results } = await planned(folderFiles(withGauge(), { "gauge.csv": gaugeFile(0) }));
    const gaps = warnings.find((w) => w.code === "series-gaps");
    expect(gaps!.message).toContain("2027-03-02T06:00Z to 2027-03-02T12:30Z");
    expect(results.water.record).toMatchObject({ gaps: 1, covered_h: 65.5, attribution: "Sluice gauge" });
    expect(results.water.record!.gap_h).toBeCloseTo(6.5, 9);
  });

  test("12 UTC shift: the same water written on a clock five hours behind is the same record", async () => {
    const [utc, local] = await Promise.all([
      planned(folderFiles(withGauge(), { "gauge.csv": gaugeFile(0) })),
      planned(folderFiles(withGauge({ zone: "-05:00" }), { "gauge.csv": gaugeFile(-5) })),
    ]);
    expect(local.site.series!.t_s).toEqual(utc.site.series!.t_s);
    expect(local.site.series!.z_m).toEqual(utc.site.series!.z_m);
    expect(local.results.water.record!.from).toBe("2027-03-01T00:00Z");
    expect(local.results.water.record!.zone_note).toContain("-05:00");
    const wrong = await planned(folderFiles(withGauge(), { "gauge.csv": gaugeFile(-5) }));
    expect(wrong.site.series!.t_s[0]! - utc.site.series!.t_s[0]!).toBe(-5 * 3600);
  });

  test("12 another datum is refused by both names until the difference at the site and its source are given", async () => {
    const files = (some: Partial<SeriesFile>) =>
      folderFiles(withGauge({ datum: "chart datum", ...some }), { "gauge.csv": gaugeFile(0) });
    const [problem] = await problemsIn(files({}));
    expect(problem).toMatchObject({ code: "datum-clash", place: "water.series.datum" });
    expect(problem!.message).toContain('"chart datum"');
    expect(problem!.message).toContain(`"${DATUM}"`);
    const { site } = await planned(files({ offset_m: -0.4, offset_source: "levelled 2027-02-20" }));
    expect(site.series!.z_m[0]).toBeCloseTo(1.3 - 0.4, 9);
  });
});

const line = (
  id: string,
  name: string,
  role: WaterLevel["role"],
  z_m: number,
  epoch: string,
): WaterLevel => ({
  id,
  name,
  role,
  basis: role === "mhw" || role === "mlw" ? "mean" : "recorded",
  z_m,
  datum: DATUM,
  source: `Source of the ${id}`,
  epoch,
});
const lines = [
  line("mlw", "Mean low water", "mlw", 0.2, "2002 to 2020"),
  line("mhw", "Mean high water", "mhw", 0.9, "2002 to 2020"),
  line("htl", "High tide line", "high-tide-line", 1.3, "2024"),
  line("ohwm", "Ordinary high water mark", "ordinary-high-water", 1.2, ""),
];

describe("13 give MHW, MLW, HTL/OHWM lines as separate things with source and epoch (33 CFR 329.12, 328.4)", () => {
  test("13 each line prints its level, datum, years and source in the permit set", async () => {
    const { plan, papers } = await planned(folderFiles(flatPlan({ levels: lines })));
    expect(plan.levels).toEqual(lines);
    const words = paperWords(papers, "route");
    for (const { name, source } of lines) {
      expect(words).toContain(name);
      expect(words).toContain(source);
    }
    for (const value of ["0.20 m", "0.90 m", "1.30 m", "1.20 m", "2002 to 2020", "2024", DATUM])
      expect(words).toContain(value);
    expect(PERMIT_SET).toContain("route");
    expect(paperWords(papers, "site-plan")).toContain("High tide line 1.30 m");
  });

  test("13 unknown years are flagged beside the line, on the page and on the paper; known ones are not", async () => {
    const { results, papers } = await planned(folderFiles(flatPlan({ levels: lines })));
    const years = results.water.findings.filter((f) => f.message.includes("for which years it holds"));
    expect(years.map((f) => f.level)).toEqual(["ohwm"]);
    expect(paperWords(papers, "route").match(/years not known/g)).toHaveLength(1);
  });
});
