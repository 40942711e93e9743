import { meanLevels, meanRange, meanTideLevel, wetTime, type SeriesFile } from "@causey/engine/water";
import { metres } from "@causey/engine/units";
import { describe, expect, test } from "vitest";
import { readSeries } from "../../src/water/index.ts";
import { hasOpenData, openData } from "../support/open-data.ts";

/**
 * Published tidal datums, a published tide table and a published logger record. Data: NOAA CO-OPS station 8571421 and
 * the datums of stations 9414290 and 8571421 (public domain); Instituto Hidrografico, Portugal, table of Faro-Olhao,
 * and a pressure logger (repository estimatehydroperiod, CC0 1.0).
 */
const choice = (some: Partial<SeriesFile>): SeriesFile => ({
  file: "water.csv",
  kind: "readings",
  basis: "recorded",
  columns: { time: "time", level: "level", flag: null },
  unit: "m",
  zone: "UTC",
  datum: "D",
  offset_m: 0,
  offset_source: "",
  attribution: "",
  ...some,
});

test("NOAA datums of San Francisco: MTL 2.792 and MN 1.248 from MHW 3.416 and MLW 2.168 (station record)", () => {
  const datums = { MHW: metres(3.416), MLW: metres(2.168) };
  expect(meanTideLevel(datums)).toBeCloseTo(2.792, 3);
  expect(meanRange(datums)).toBeCloseTo(1.248, 3);
});

describe.skipIf(!hasOpenData("water"))("NOAA 8571421 Bishops Head, hourly 2019 to 2021", () => {
  test("mean range, great diurnal range and inequalities within 0.010 m of the published datums (MN 0.538, GT 0.629, DHQ 0.050, DLQ 0.042)", () => {
    const { series } = readSeries(
      openData("water/bishops-head-8571421-hourly-2019-2021.csv"),
      choice({ columns: { time: "time_utc", level: "verified_m", flag: null } }),
      "D",
    );
    const m = meanLevels(series);
    expect(Math.abs(m.mhw_m! - m.mlw_m! - 0.538)).toBeLessThan(0.01);
    expect(Math.abs(m.mhhw_m! - m.mllw_m! - 0.629)).toBeLessThan(0.01);
    expect(Math.abs(m.mhhw_m! - m.mhw_m! - 0.05)).toBeLessThan(0.01);
    expect(Math.abs(m.mlw_m! - m.mllw_m! - 0.042)).toBeLessThan(0.01);
  });
});

const table = (): ReturnType<typeof readSeries> =>
  readSeries(
    openData("hydroperiod-ria-formosa/data_heights.csv"),
    choice({
      kind: "high-low",
      basis: "predicted",
      columns: { time: "datetime", level: "height_zh", flag: null },
      datum: "hydrographic zero",
      offset_m: -2.1 + 0.1,
      offset_source: "mean sea level, and 0.10 m that the observed levels ran higher",
    }),
    "mean sea level",
  );

describe.skipIf(!hasOpenData("hydroperiod-ria-formosa"))("Faro-Olhao, March 2017", () => {
  test("tide table plus 0.10 m: greatest depth 1.396 m over a point at 0.304 m (published tool's own case)", () => {
    const { series } = table();
    const march = [...series.z_m].filter((_, i) => {
      const day = new Date(series.t_s[i]! * 1000).toISOString();
      return day >= "2017-03-01" && day < "2017-04-01";
    });
    expect(Math.max(...march) - 0.304).toBeCloseTo(1.396, 2);
  });

  test("against a pressure logger: wet or dry told right in 97.8 % of 1,501 minutes (logger at bed -1.421 m)", () => {
    const { series } = table();
    const text = new TextDecoder().decode(openData("hydroperiod-ria-formosa/data_depths.csv"));
    const rows = text
      .trim()
      .split(/\r?\n/)
      .slice(1)
      .map((line) => line.split(","));
    const right = rows.filter((cells) => {
      const t = Date.parse(`${cells[4]!.replace(" ", "T")}Z`) / 1000;
      return levelAt(series, t) > -1.421 === Number(cells[7]) > 0;
    }).length;
    expect(rows).toHaveLength(1501);
    expect(right / rows.length).toBeGreaterThan(0.97);
  });

  test("hours under water of a point at 0.304 m over the table: 293.3 h by the stated formula (worked out beside the data)", () => {
    const { series } = table();
    const hours = wetTime(series, 0.304).wet_s / 3600;
    const days = (series.t_s.at(-1)! - series.t_s[0]!) / 86_400;
    expect((hours / days) * 31).toBeGreaterThan(270);
    expect((hours / days) * 31).toBeLessThan(310);
  });
});

function levelAt(series: ReturnType<typeof table>["series"], t: number): number {
  const { t_s, z_m } = series;
  const i = t_s.findIndex((at) => at > t);
  const s = (t - t_s[i - 1]!) / (t_s[i]! - t_s[i - 1]!);
  return z_m[i - 1]! + ((z_m[i]! - z_m[i - 1]!) * (1 - Math.cos(Math.PI * s))) / 2;
}
