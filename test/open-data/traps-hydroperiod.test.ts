import type { SeriesFile } from "@causey/engine/water";
import { crsFromEpsg, toLonLat } from "@causey/io/crs";
import { readPoints } from "@causey/io/points";
import { readSeries } from "@causey/io/water";
import { describe, expect, test } from "vitest";
import { hasOpenData, openData } from "../../packages/io/test/support/open-data.ts";
import { readGroundPlan } from "./said-plan.ts";
import { refusal, said } from "./said.ts";

const set = "hydroperiod-ria-formosa";
const source =
  "Faro-Olhao, Instituto Hidrografico, and cbdelossantos/estimatehydroperiod (0eff074), March 2017";
const file = (name: string): Uint8Array => openData(`${set}/${name}`);
const rowsOf = (name: string): string[][] =>
  new TextDecoder()
    .decode(file(name))
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(",").map((cell) => cell.replaceAll('"', "")));
const LOCAL = "datetime_official_portugal";
const MSL = "mean sea level";
const tides = (
  more: Partial<SeriesFile> & { readonly time?: string; readonly level?: string } = {},
): SeriesFile => {
  const { time = "datetime", level = "height", ...rest } = more;
  return {
    file: "data_heights.csv",
    kind: "high-low",
    basis: "predicted",
    columns: { time, level, flag: null },
    unit: "m",
    zone: "UTC",
    datum: MSL,
    offset_m: 0,
    offset_source: "",
    attribution: "Instituto Hidrografico, Faro-Olhao",
    ...rest,
  };
};
const utc = (cell: string): number => Date.parse(`${cell.replace(" ", "T")}Z`) / 1000;
/** Instants of the column in UTC. */
const instants = (): number[] =>
  rowsOf("data_heights.csv")
    .slice(1)
    .map((cells) => utc(cells[2]!));

describe.skipIf(!hasOpenData(set))(source, () => {
  const heights = () => file("data_heights.csv");

  test("hydroperiod-ria-formosa: summer time starts on 26 March: local times read as UTC are named by their first line and refused; with their zone words, or as Europe/Lisbon, all 126 are right", async () => {
    const first = rowsOf("data_heights.csv").findIndex((cells) => cells[1] === "WEST") + 1;
    const problems = await refusal(() => readSeries(heights(), tides({ time: LOCAL }), MSL));
    said(problems, "series-zone-words", {
      severity: "error",
      place: `line ${first}`,
      value: /^2017-03-26 .* WEST$/,
      message: "off by 1.0 hours",
      mend: `Name "${LOCAL} + time zone" as the column of times`,
    });
    for (const mended of [
      tides({ time: `${LOCAL} + time zone` }),
      tides({ time: LOCAL, zone: "Europe/Lisbon" }),
      tides(),
    ]) {
      const { series } = readSeries(heights(), mended, MSL);
      expect([...series.t_s]).toEqual(instants());
    }
    expect(instants()).toHaveLength(126);
  });

  test("hydroperiod-ria-formosa: the UTC column read in local time is named as well", async () => {
    const problems = await refusal(() => readSeries(heights(), tides({ zone: "Europe/Lisbon" }), MSL));
    said(problems, "series-zone-words", { message: "off by -1.0 hours", mend: "(Europe/Lisbon)" });
    expect(readSeries(heights(), tides(), MSL).series.t_s[0]).toBe(utc("2017-02-27 21:07"));
  });

  test("hydroperiod-ria-formosa: height_zh and height are one water over two zeros, 2.10 m apart: named; chart zero on a plan above mean sea level is refused until its offset is given", async () => {
    const { warnings, series } = readSeries(heights(), tides(), MSL);
    said(warnings, "series-two-zeros", {
      severity: "warning",
      place: '"height" and "height_zh"',
      value: "2.10",
      message: 'as heights on "mean sea level"',
      mend: 'Make sure that "mean sea level" is the zero of "height"',
    });
    const chart = tides({ level: "height_zh", datum: "hydrographic zero" });
    said(await refusal(() => readSeries(heights(), chart, MSL)), "datum-clash", {
      value: "hydrographic zero",
      message: 'the plan is on "mean sea level"',
      mend: "offset_m",
    });
    const mended = readSeries(
      heights(),
      { ...chart, offset_m: -2.1, offset_source: "the file's two columns" },
      MSL,
    );
    expect([...mended.series.z_m].map((z) => z.toFixed(3))).toEqual([...series.z_m].map((z) => z.toFixed(3)));
    // The text beside the data says 2.13: a plan that takes this offset is 3 cm lower, and says why.
    const text = readSeries(heights(), { ...chart, offset_m: -2.13, offset_source: "the readme" }, MSL);
    expect(series.z_m[0]! - text.series.z_m[0]!).toBeCloseTo(0.03, 9);
  });

  test("hydroperiod-ria-formosa: columns named latitude and longitude hold metres: named; exchanged as their names ask, the points lie in the sea (EPSG:3763) and that is named; as x and y they lie at 36.983 N, 7.888 W", async () => {
    const columns = (x: string, y: string) => ({
      id: "point",
      x,
      y,
      z: "elevation",
      code: "habitat",
      accuracy: null,
      date: null,
    });
    const how = { unit: "m", decimal: "point", date_order: "ymd" } as const;
    const { points, warnings } = readPoints("data_points.csv", file("data_points.csv"), {
      ...how,
      columns: columns("latitude", "longitude"),
    });
    said(warnings, "points-heads-degrees", {
      place: 'columns "latitude" and "longitude"',
      value: "21781.889, -298079.316",
      message: "hold lengths, too large for degrees",
      mend: "east and north are not exchanged",
    });
    expect(points.z).toHaveLength(40);
    const [lon, lat] = toLonLat(await crsFromEpsg(3763))(points.x[0]!, points.y[0]!)!;
    expect(lat).toBeCloseTo(36.983, 3);
    expect(lon).toBeCloseTo(-7.888, 3);
    const ground = (x: string, y: string, at: readonly [number, number]) => ({
      crs: { epsg: 3763 },
      datum: MSL,
      terrain: {
        ...how,
        kind: "points",
        file: "data_points.csv",
        columns: columns(x, y),
        datum: MSL,
        cell_m: 1,
        longest_edge_m: 60,
      } as const,
      start: at,
      plot: at,
      files: { "data_points.csv": file("data_points.csv") },
    });
    const exchanged = await readGroundPlan(ground("longitude", "latitude", [-298_070, 21_790]));
    said(exchanged.problems, "crs-area", {
      severity: "warning",
      message: "outside the area that this system is made for: Portugal - mainland",
      mend: "east and north are not exchanged",
    });
    const mended = await readGroundPlan(ground("latitude", "longitude", [21_790, -298_070]));
    expect(mended.problems.map((p) => p.code)).not.toContain("crs-area");
  });

  const logger = (level: string): SeriesFile => ({
    ...tides({ level }),
    file: "data_depths.csv",
    kind: "readings",
    basis: "recorded",
    datum: "bed at Zn3_0",
    offset_m: -1.421,
    offset_source: "bed of the logger, surveyed",
  });

  test("hydroperiod-ria-formosa: the logger's depth is cut off at 0 when the bed lies dry: named; the corrected column goes on below, and lies 0.11 m under the raw one", () => {
    const data = file("data_depths.csv");
    const dry = rowsOf("data_depths.csv").filter((cells) => Number(cells[7]) === 0).length;
    const cut = readSeries(data, logger("depth"), MSL);
    said(cut.warnings, "series-cut-off", {
      severity: "warning",
      place: 'column "depth"',
      value: `${dry} of 1501 readings`,
      message: "or anywhere below",
      mend: "a column that is not cut off",
    });
    const mended = readSeries(data, logger("corrected_depth"), MSL);
    expect(mended.warnings.map((w) => w.code)).not.toContain("series-cut-off");
    expect(mended.series.t_s).toHaveLength(1501);
    expect(Math.min(...mended.series.z_m)).toBeLessThan(-1.421);
    said(mended.warnings, "series-two-zeros", { value: "0.11", place: '"corrected_depth" and "raw_depth"' });
    expect(Math.max(...cut.series.z_m)).toBeCloseTo(Math.max(...mended.series.z_m), 2);
  });
});
