import { wetTime, type SeriesFile } from "@causey/engine/water";
import { readSeries } from "@causey/io/water";
import { describe, expect, test } from "vitest";
import { hasOpenData, openData } from "../../packages/io/test/support/open-data.ts";
import { refusal, said } from "./said.ts";

const set = "water";
const BISHOPS = "bishops-head-8571421-hourly-2019-2021.csv";
const POND = "farm-creek-marsh-pond-15min-2018-03_2019-02.csv";
const FARO = "faro-olhao-tide-table-2017-03.csv";
const CHARLESTON = "synthetic-charleston-8665530-hourly-2023.csv";
const file = (name: string): Uint8Array => openData(`${set}/${name}`);
const text = (name: string): string => new TextDecoder().decode(file(name));
const bytes = (words: string): Uint8Array => new TextEncoder().encode(words);
const choice = (name: string, time: string, level: string, more: Partial<SeriesFile> = {}): SeriesFile => ({
  file: name,
  kind: "readings",
  basis: "recorded",
  columns: { time, level, flag: null },
  unit: "m",
  zone: "UTC",
  datum: "NAVD88",
  offset_m: 0,
  offset_source: "",
  attribution: "open data",
  ...more,
});
const pond = (more: Partial<SeriesFile> = {}): SeriesFile =>
  choice(POND, "time_est", "level_ft_navd88", { unit: "ft", zone: "-05:00", ...more });
const codes = (problems: readonly { readonly code: string }[]): string[] => problems.map((p) => p.code);

describe.skipIf(!hasOpenData(set))(
  "water-level records: NOAA, U.S. Geological Survey, Instituto Hidrografico",
  () => {
    test("water: 174 blanks among the 19,704 verified hours of Bishops Head are counted as gaps, not taken as 0", () => {
      const { series, warnings, counts } = readSeries(
        file(BISHOPS),
        choice(BISHOPS, "time_utc", "verified_m"),
        "NAVD88",
      );
      said(warnings, "series-empty-cells", {
        message: "174 rows have no level and are left out",
        mend: "Nothing",
      });
      said(warnings, "series-gaps", {
        value: /gaps$/,
        message: "the longest is",
        mend: "Fill it from the gauge",
      });
      expect([counts.rows, counts.empty, counts.kept]).toEqual([19_704, 174, 19_530]);
      expect(series.z_m[0]).toBe(-0.1);
      // The mend: one blank filled from the gauge is one level more.
      const filled = text(BISHOPS).replace(/^(20[^,\n]*,[^,\n]*),\r?$/m, "$1,0.1");
      const mended = readSeries(bytes(filled), choice(BISHOPS, "time_utc", "verified_m"), "NAVD88");
      expect(mended.counts.empty).toBe(173);
    });

    test("water: the predictions of Bishops Head begin on 5 March 2020: the rows before are counted as empty, and the series starts there", () => {
      const { series, warnings } = readSeries(
        file(BISHOPS),
        choice(BISHOPS, "time_utc", "predicted_m", { basis: "predicted" }),
        "NAVD88",
      );
      said(warnings, "series-empty-cells", { message: /^\d+ rows have no level/ });
      expect(new Date(series.t_s[0]! * 1000).toISOString().slice(0, 10)).toBe("2020-03-05");
    });

    test("water: on a plan above mean sea level NAVD88 is refused until its offset is given (MSL lies 0.059 m below NAVD88)", async () => {
      const on = choice(BISHOPS, "time_utc", "verified_m");
      said(await refusal(() => readSeries(file(BISHOPS), on, "MSL")), "datum-clash", {
        value: "NAVD88",
        message: 'the plan is on "MSL"',
        mend: "offset_source",
      });
      const mended = readSeries(
        file(BISHOPS),
        { ...on, offset_m: 0.059, offset_source: "published datums" },
        "MSL",
      );
      expect(mended.series.z_m[0]).toBeCloseTo(-0.1 + 0.059, 9);
    });

    test("water: the pond's levels are in feet: read as metres they are refused by their head, in feet they come out in metres", async () => {
      said(await refusal(() => readSeries(file(POND), pond({ unit: "m" }), "NAVD88")), "series-unit", {
        severity: "error",
        value: "level_ft_navd88",
        message: "names feet; it is read in metres",
        mend: "Set the unit of the record to feet",
      });
      const { series } = readSeries(file(POND), pond(), "NAVD88");
      expect(series.z_m[0]).toBeCloseTo(0.8871 * 0.3048, 9);
      expect(series.t_s[0]).toBe(Date.UTC(2018, 2, 1, 5) / 1000);
    });

    test("water: the pond's head names NAVD88: another datum is named, and the right one is read without a word", () => {
      const wrong = readSeries(file(POND), pond({ datum: "MLLW" }), "MLLW");
      said(wrong.warnings, "series-datum-head", {
        value: "level_ft_navd88",
        message: 'said to be on "MLLW"',
        mend: "with the offset between the two",
      });
      const mended = readSeries(file(POND), pond({ datum: "NAVD 88" }), "NAVD 88");
      expect(codes(mended.warnings)).not.toContain("series-datum-head");
    });

    test("water: the pond's clock skips an hour on 11 March 2018: named with its minute; read as America/New_York the hour is not missing", () => {
      const { warnings } = readSeries(file(POND), pond(), "NAVD88");
      said(warnings, "series-clock-change", {
        place: "2018-03-11 01:45",
        message: "on a night on which clocks go forward",
        mend: '"America/New_York"',
      });
      const mended = readSeries(file(POND), pond({ zone: "America/New_York" }), "NAVD88");
      expect(codes(mended.warnings)).not.toContain("series-clock-change");
      const change = Date.UTC(2018, 2, 11, 7) / 1000;
      expect(mended.series.gaps.some((g) => Math.abs(g.from_s - change) < 7200)).toBe(false);
      expect([mended.series.t_s.length, mended.series.z_m.length]).toEqual([
        mended.counts.kept,
        mended.counts.kept,
      ]);
    });

    test("water: the pond's level is uncertain by 0.15 m: lowered by an offset with its source it stands that much lower, and without the source on another datum it is refused", async () => {
      const own = readSeries(file(POND), pond(), "NAVD88").series;
      const datum = "NAVD88 as logged";
      said(
        await refusal(() => readSeries(file(POND), pond({ datum, offset_m: -0.15 }), "NAVD88")),
        "datum-clash",
        {
          value: datum,
          mend: "where it comes from",
        },
      );
      const offset_source = "the authors lower it by about 0.15 m to match neighbours";
      const mended = readSeries(file(POND), pond({ datum, offset_m: -0.15, offset_source }), "NAVD88").series;
      expect(own.z_m[0]! - mended.z_m[0]!).toBeCloseTo(0.15, 9);
      // Ground of the pond 0.0447 m: lower water stands over it for a smaller share of the year.
      expect(wetTime(mended, 0.0447).wet_share!).toBeLessThan(wetTime(own, 0.0447).wet_share!);
    });

    test("water: days and months that changed places, as later in the pond's source, are named; in their order they are read", () => {
      const scrambled = text(POND).replaceAll(/^2018-(0[4-9]|1[0-2])-(0[1-9]|1[0-2])T/gm, "2018-$2-$1T");
      const { warnings } = readSeries(bytes(scrambled), pond(), "NAVD88");
      said(warnings, "series-order", {
        message: "stand before the one above them",
        mend: "Check for days and months that changed places",
      });
      expect(codes(readSeries(file(POND), pond(), "NAVD88").warnings)).not.toContain("series-order");
    });

    const faro = (more: Partial<SeriesFile> = {}): SeriesFile =>
      choice(FARO, "datetime", "height_zh", {
        kind: "high-low",
        basis: "predicted",
        datum: "hydrographic zero",
        ...more,
      });

    test("water: the tide table of Faro stands above the hydrographic zero: refused until its offset (-2.13 m) is given; observed levels ran 0.10 m higher, which a second offset holds", async () => {
      said(await refusal(() => readSeries(file(FARO), faro(), "mean sea level")), "datum-clash", {
        value: "hydrographic zero",
      });
      const lowered = readSeries(
        file(FARO),
        faro({ offset_m: -2.13, offset_source: "the text beside it" }),
        "mean sea level",
      );
      said(lowered.warnings, "series-two-zeros", { value: "2.10", place: '"height_zh" and "height"' });
      const highest = Math.max(...lowered.series.z_m);
      const printed = text(FARO)
        .trim()
        .split(/\r?\n/)
        .slice(1)
        .map((row) => Number(row.split(",")[3]));
      expect(highest).toBeCloseTo(Math.max(...printed) - 2.13, 9);
      const observed = faro({ offset_m: -2.03, offset_source: "and 0.10 m that observed levels ran higher" });
      expect(
        Math.max(...readSeries(file(FARO), observed, "mean sea level").series.z_m) - highest,
      ).toBeCloseTo(0.1, 9);
    });

    test("water: a tide table taken for readings is named, and as a table of high and low waters it is read", () => {
      const offset = { offset_m: -2.13, offset_source: "the text beside it" };
      const wrong = readSeries(file(FARO), faro({ ...offset, kind: "readings" }), "mean sea level");
      said(wrong.warnings, "series-coarse", { mend: 'kind "high-low"' });
      const mended = readSeries(file(FARO), faro(offset), "mean sea level");
      expect(codes(mended.warnings)).not.toContain("series-coarse");
      expect(mended.series.t_s).toHaveLength(126);
    });

    test("water: the noisy column of the made record strays from the clean one by 0.050 m; heads that name MSL are held against the datum", () => {
      const read = (level: string, datum = "mean sea level") =>
        readSeries(
          file(CHARLESTON),
          choice(CHARLESTON, "time_utc", level, { datum, basis: "predicted" }),
          datum,
        );
      const [clean, noisy] = [read("clean_m_msl"), read("noisy_m_msl")];
      expect(codes(clean.warnings)).toEqual([]);
      expect(clean.series.t_s).toHaveLength(8760);
      const apart = [...clean.series.z_m].map((z, i) => noisy.series.z_m[i]! - z);
      expect(Math.sqrt(apart.reduce((s, d) => s + d * d, 0) / apart.length)).toBeCloseTo(0.05, 2);
      said(read("clean_m_msl", "NAVD88").warnings, "series-datum-head", {
        value: "clean_m_msl",
        message: "MSL",
      });
    });
  },
);
