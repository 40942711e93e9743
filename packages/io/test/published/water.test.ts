import { meanLevels, spells, wetTime, type Series, type SeriesFile } from "@causey/engine/water";
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

describe.skipIf(!hasOpenData("water"))("NOAA 8571421 Bishops Head, hourly 2019 to 2021", () => {
  test("mean range, great diurnal range and inequalities within 0.010 m of the published datums (MN 0.538, GT 0.629, DHQ 0.050, DLQ 0.042)", () => {
    const { series } = readSeries(
      openData("water/bishops-head-8571421-hourly-2019-2021.csv"),
      choice({ columns: { time: "time_utc", level: "verified_m", flag: null } }),
      "D",
    );
    const m = meanLevels(series);
    expect(Math.abs(m.mn_m! - 0.538)).toBeLessThan(0.01);
    expect(Math.abs(m.gt_m! - 0.629)).toBeLessThan(0.01);
    expect(Math.abs(m.dhq_m! - 0.05)).toBeLessThan(0.01);
    expect(Math.abs(m.dlq_m! - 0.042)).toBeLessThan(0.01);
    expect(m.cautions.some((c) => /gaps/.test(c))).toBe(true);
  });

  test("174 missing hours are counted; shares of hours above 0.00, 0.26 and 0.60 m NAVD88 are 64.3, 30.0 and 1.55 % (worked out beside the data)", () => {
    const { series, counts } = readSeries(
      openData("water/bishops-head-8571421-hourly-2019-2021.csv"),
      choice({ columns: { time: "time_utc", level: "verified_m", flag: null } }),
      "D",
    );
    expect(counts.empty).toBe(174);
    // The count of hours and the time along the line between them differ by a few tenths of a per cent.
    expect(wetTime(series, 0).wet_share! * 100).toBeCloseTo(64.3, 0);
    expect(wetTime(series, 0.26).wet_share! * 100).toBeCloseTo(30.0, 0);
    expect(wetTime(series, 0.6).wet_share! * 100).toBeCloseTo(1.55, 0);
    expect(wetTime(series, 0.26).hours_per_year! / 8766).toBeCloseTo(0.3, 2);
  });

  test("predicted and recorded levels of one file are two series: each tells its basis, and the prediction has no storm in it", () => {
    const read = (level: string, basis: Series["basis"]): Series =>
      readSeries(
        openData("water/bishops-head-8571421-hourly-2019-2021.csv"),
        choice({ basis, columns: { time: "time_utc", level, flag: null } }),
        "D",
      ).series;
    const [predicted, recorded] = [read("predicted_m", "predicted"), read("verified_m", "recorded")];
    expect([meanLevels(predicted).basis, meanLevels(recorded).basis]).toEqual(["predicted", "recorded"]);
    expect(meanLevels(recorded).highest_m!).toBeGreaterThan(meanLevels(predicted).highest_m! + 0.2);
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
    expect(Math.max(...march) - 0.304).toBeCloseTo(1.396, 3);
  });

  test("against a pressure logger: mean error +1.6 cm, spread 15.6 cm, wet or dry told right in 97.8 % of 1,501 minutes (bed -1.421 m)", () => {
    const { series } = table();
    const rows = new TextDecoder()
      .decode(openData("hydroperiod-ria-formosa/data_depths.csv"))
      .trim()
      .split(/\r?\n/)
      .slice(1)
      .map((line) => line.split(","));
    const minutes = rows.map((cells) => {
      const t = Date.parse(`${cells[4]!.replace(" ", "T")}Z`) / 1000;
      return { table: Math.max(0, levelAt(series, t) + 1.421), logger: Number(cells[7]) };
    });
    expect(minutes).toHaveLength(1501);
    const right = minutes.filter((m) => m.table > 0 === m.logger > 0).length;
    const errors = minutes.map((m) => m.table - m.logger);
    const mean = errors.reduce((a, e) => a + e, 0) / errors.length;
    const spread = Math.sqrt(errors.reduce((a, e) => a + (e - mean) ** 2, 0) / errors.length);
    expect(right / 1501).toBeCloseTo(0.978, 3);
    expect(mean).toBeCloseTo(0.016, 3);
    expect(spread).toBeCloseTo(0.156, 3);
  });

  test("hours under water of a point at 0.304 m in March: 293.3 h by the stated formula (worked out beside the data)", () => {
    const { series } = table();
    const [from, to] = [Date.UTC(2017, 2, 1) / 1000, Date.UTC(2017, 3, 1) / 1000];
    const wet = [...spells(series, 0.304)]
      .filter((s) => s.wet)
      .reduce((sum, s) => sum + Math.max(0, Math.min(s.to_s, to) - Math.max(s.from_s, from)), 0);
    expect(wet / 3600).toBeCloseTo(293.3, 1);
  });

  test("local times with their zone words give the instants of the UTC column, across the change to summer time", () => {
    const data = openData("hydroperiod-ria-formosa/data_heights.csv");
    const local = choice({
      kind: "high-low",
      basis: "predicted",
      columns: { time: "datetime_official_portugal + time zone", level: "height_zh", flag: null },
    });
    const zoned = readSeries(data, local, "D");
    expect([...zoned.series.t_s]).toEqual([...table().series.t_s]);
    expect(zoned.series.t_s).toHaveLength(126);
    const place = {
      ...local,
      zone: "Europe/Lisbon",
      columns: { ...local.columns, time: "datetime_official_portugal" },
    };
    expect([...readSeries(data, place, "D").series.t_s]).toEqual([...table().series.t_s]);
    // Read as UTC, the table would be an hour off from 26 March on: refused.
    expect(() => readSeries(data, { ...place, zone: "UTC" }, "D")).toThrow();
  });
});

function levelAt(series: Series, t: number): number {
  const { t_s, z_m } = series;
  const i = t_s.findIndex((at) => at > t);
  const s = (t - t_s[i - 1]!) / (t_s[i]! - t_s[i - 1]!);
  return z_m[i - 1]! + ((z_m[i]! - z_m[i - 1]!) * (1 - Math.cos(Math.PI * s))) / 2;
}
