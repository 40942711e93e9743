import { ProblemError, type Problem } from "@causey/engine/formula";
import { wetTime, type SeriesFile } from "@causey/engine/water";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readSeries, readTime, zoneOf } from "../src/water/index.ts";
import { hasOpenData, openData } from "./support/open-data.ts";

const choice = (some: Partial<SeriesFile> = {}): SeriesFile => ({
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
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const read = (text: string, some: Partial<SeriesFile> = {}) => readSeries(bytes(text), choice(some), "D");
function problems(work: () => unknown): readonly Problem[] {
  try {
    work();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
  throw new Error("nothing was refused");
}
const codes = (list: readonly Problem[]): string[] => list.map((p) => p.code);

describe("times", () => {
  const utc = zoneOf("UTC")!;
  const at = (text: string, zone = utc): number => {
    const t = readTime(text, zone);
    if (!t.ok) throw new Error(t.why);
    return t.t_s;
  };

  test("an offset shifts by exactly itself, and a zone behind the time wins", () => {
    expect(at("2027-04-30 14:05", zoneOf("-05:00")!) - at("2027-04-30 14:05")).toBe(5 * 3600);
    expect(at("2027-04-30T14:05Z", zoneOf("-05:00")!)).toBe(at("2027-04-30 14:05"));
    expect(at("2027/4/30 14:05:30+02:00")).toBe(at("2027-04-30 12:05:30"));
  });

  test("a place knows its summer time; the hour that is skipped and the one that is doubled have no instant", () => {
    const lisbon = zoneOf("Europe/Lisbon")!;
    expect(at("2017-03-25 12:00", lisbon)).toBe(at("2017-03-25 12:00"));
    expect(at("2017-03-26 12:00", lisbon)).toBe(at("2017-03-26 11:00"));
    expect(readTime("2017-03-26 01:30", lisbon)).toMatchObject({ ok: false });
    expect(readTime("2017-10-29 01:30", lisbon)).toMatchObject({ ok: false, why: /twice/ });
  });

  test.each(["2027-02-30 10:00", "2027-13-01", "30.04.2027 10:00", "", "2027-04-30 25:00", "=1+1"])(
    "%s is no time",
    (text) => expect(readTime(text, utc).ok).toBe(false),
  );
  test("no zone of that name", () => expect(zoneOf("Middle/Earth")).toBeNull());
});

describe("records with faults", () => {
  test("feet become metres, the offset is added, semicolons bring decimal commas", () => {
    const { series } = read("time;level\n2027-01-01 00:00;1,5\n2027-01-01 01:00;2\n", {
      unit: "ft",
      offset_m: 0.1,
    });
    expect([...series.z_m]).toEqual([expect.closeTo(0.5572, 9), expect.closeTo(0.7096, 9)]);
  });

  test("gaps are listed, empty, flagged and doubled rows are counted", () => {
    const rows = [
      "time,level,flag",
      "2027-01-01 00:00,1,<0>",
      "2027-01-01 00:15,,<0>",
      "2027-01-01 00:30,1.2,<-3>",
      "2027-01-01 00:45,1.1,<0>",
      "2027-01-01 01:00,1.1,<0>",
      "2027-01-01 01:00,1.2,<0>",
      "2027-01-01 01:15,1.1,<0>",
    ];
    const { series, warnings, counts } = read(rows.join("\n"), {
      columns: { time: "time", level: "level", flag: "flag" },
    });
    expect(counts).toEqual({ rows: 7, kept: 4, empty: 1, flagged: 1, doubled: 1 });
    expect(series.gaps).toHaveLength(1);
    expect(codes(warnings)).toEqual([
      "series-empty-cells",
      "series-flagged",
      "series-doubled",
      "series-gaps",
    ]);
  });

  test("another datum without an offset and its source is refused, naming both", () => {
    const found = problems(() => read("time,level\n2027-01-01,1\n2027-01-02,1\n", { datum: "MLLW" }));
    expect(found[0]).toMatchObject({ code: "datum-clash", value: "MLLW" });
    expect(found[0]!.message).toMatch(/MLLW.*"D"/);
    expect(
      read("time,level\n2027-01-01,1\n2027-01-02,1\n", { datum: "MLLW", offset_source: "levelled" }).series
        .z_m,
    ).toHaveLength(2);
  });

  test("every bad cell is named with its line; nothing is repaired in silence", () => {
    const found = problems(() =>
      read("time,level\n2027-01-01,1\nyesterday,1\n2027-01-03,=1+1\n2027-01-04,1\n"),
    );
    expect(found.map((p) => [p.code, p.place])).toEqual([
      ["series-time", "line 3"],
      ["series-level", "line 4"],
    ]);
  });

  test("columns that are not there are named with those that are", () => {
    const found = problems(() => read("t,z\n1,2\n"));
    expect(codes(found)).toEqual(["series-column", "series-column"]);
    expect(found[0]!.mend).toContain("t, z");
  });

  test("rows out of order are sorted and said; a step no tide makes is named", () => {
    const { warnings, series } = read(
      "time,level\n2027-01-01 02:00,1\n2027-01-01 00:00,1\n2027-01-01 01:00,9\n",
    );
    expect(series.t_s[0]! < series.t_s[1]!).toBe(true);
    expect(codes(warnings)).toEqual(expect.arrayContaining(["series-order", "series-jump"]));
  });

  test("an empty file, one of heads alone, and bytes that are no text", () => {
    expect(codes(problems(() => read("")))).toContain("series-column");
    expect(codes(problems(() => read("time,level\n")))).toContain("series-empty");
    expect(problems(() => readSeries(Uint8Array.of(0xff, 0xfe, 0, 0xd8), choice(), "D")).length).toBe(1);
  });
});

test("files with bytes changed, cut or repeated: refused or read, never broken", () => {
  const whole = bytes(
    `time,level\n${Array.from({ length: 40 }, (_, i) => `2027-01-01 ${String(i % 24).padStart(2, "0")}:${i < 24 ? "00" : "30"},${(i / 10).toFixed(2)}`).join("\n")}\n`,
  );
  const change = fc.tuple(fc.nat(whole.length - 1), fc.integer({ min: 0, max: 255 }), fc.nat(3));
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
      let file = Uint8Array.from(whole);
      for (const [at, byte, how] of changes) {
        if (how === 0) file = file.slice(0, at);
        else if (how === 1) file = Uint8Array.from([...file.slice(0, at), ...file.slice(at >> 1)]);
        else if (at < file.length) file[at] = byte;
      }
      try {
        const { series } = readSeries(file, choice(), "D");
        expect(series.z_m.every(Number.isFinite)).toBe(true);
      } catch (error) {
        expect(error).toBeInstanceOf(ProblemError);
      }
    }),
    { numRuns: Number(process.env["CAUSEY_FUZZ"] ?? 300) },
  );
});

describe.skipIf(!hasOpenData("water-level-apalachicola"))(
  "a reserve's logger, half a year of quarter hours",
  () => {
    test("9 missing depths, flags read, no datum: the offset must be given", () => {
      const at = {
        file: "apacpwq.csv",
        zone: "-05:00",
        columns: { time: "datetimestamp", level: "depth", flag: "f_depth" },
        datum: "over the sensor",
        offset_source: "for the test",
      };
      const data = openData("water-level-apalachicola/apacpwq-2012-06-to-11.csv");
      const { counts, series } = readSeries(data, choice(at), "D");
      expect(counts.rows).toBe(17_568);
      expect(counts.empty).toBe(9);
      expect(Math.min(...series.z_m)).toBeGreaterThanOrEqual(0.73);
      expect(codes(problems(() => readSeries(data, choice({ ...at, offset_source: "" }), "D")))).toEqual([
        "datum-clash",
      ]);
    });
  },
);

describe.skipIf(!hasOpenData("water"))("a marsh pond in local time", () => {
  test("the jump at the clock change is a gap, in feet that become metres", () => {
    const { series, warnings } = readSeries(
      openData("water/farm-creek-marsh-pond-15min-2018-03_2019-02.csv"),
      choice({
        columns: { time: "time_est", level: "level_ft_navd88", flag: null },
        unit: "ft",
        zone: "-05:00",
      }),
      "D",
    );
    const change = Date.UTC(2018, 2, 11, 7) / 1000;
    expect(series.gaps.some((g) => Math.abs(g.from_s - change) < 7200)).toBe(true);
    expect(codes(warnings)).toContain("series-gaps");
    expect(wetTime(series, 0.0447).wet_share).toBeGreaterThan(0.5);
  });
});
