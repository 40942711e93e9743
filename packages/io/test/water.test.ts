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

  test("the other common ways of writing it: day or month first, half days, zone words, fractions", () => {
    const us = (text: string) => readTime(text, utc, "mdy");
    expect(us("04/30/2027 2:05 PM")).toMatchObject({ ok: true, t_s: at("2027-04-30 14:05") });
    expect(us("4/30/27 12:05:30 AM")).toMatchObject({ ok: true, t_s: at("2027-04-30 00:05:30") });
    expect(readTime("30.04.2027 14:05", utc, "dmy")).toMatchObject({ t_s: at("2027-04-30 14:05") });
    expect(at("2027-04-30 14:05 EST")).toBe(at("2027-04-30 19:05"));
    expect(at("2027-04-30T14:05:30.5Z")).toBe(at("2027-04-30 14:05:30") + 0.5);
    expect(us("04/30/2027 13:05 PM")).toMatchObject({ ok: false });
    expect(readTime("04/30/2027", utc)).toMatchObject({ ok: false, why: /which number is the day/ });
    expect(readTime("2027-04-30 14:05 IST", utc)).toMatchObject({ ok: false, why: /no zone/ });
  });

  test("a place's times agree with its own clock, hour by hour through a year", () => {
    const york = zoneOf("America/New_York")!;
    const clock = new Intl.DateTimeFormat("sv-SE", {
      timeZone: "America/New_York",
      dateStyle: "short",
      timeStyle: "short",
    });
    let told = 0;
    for (let t = Date.UTC(2018, 0, 1) / 1000; t < Date.UTC(2019, 0, 1) / 1000; t += 3600) {
      const read = readTime(clock.format(new Date(t * 1000)), york);
      if (read.ok) expect(read.t_s).toBe(t);
      else expect(read.clock).toBe("doubled");
      told += read.ok ? 1 : 0;
    }
    // 8760 hours, of which two share the one doubled hour on the clock.
    expect(told).toBe(8758);
  });

  test.each([
    "2027-00-01",
    "0000-00-00 00:00",
    "2027-01-00",
    "2027-02-30 10:00",
    "2027-13-01",
    "2027-01-01 00:00 +99:00",
    "30.04.2027 10:00",
    "",
    "2027-04-30 25:00",
    "=1+1",
  ])("%s is no time", (text) => expect(readTime(text, utc).ok).toBe(false));
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
    expect(counts).toEqual({ rows: 7, kept: 4, empty: 1, flagged: 1, doubled: 1, clockless: 0 });
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

  test("a formula cell is named as one; words for nothing are gaps, not zeros", () => {
    const rows = "time,level\n2027-01-01 00:00,1\n2027-01-01 01:00,=A1*2\n2027-01-01 02:00,1\n";
    expect(problems(() => read(rows))[0]!.message).toContain("formula");
    const empty = ["NaN", "NA", "", "-9999.00", "-999", "9999", "--"].map(
      (w, i) => `2027-01-02 0${i}:00,${w}`,
    );
    const { counts, series } = read(
      `time,level\n2027-01-01 00:00,1\n2027-01-01 01:00,1\n${empty.join("\n")}\n`,
    );
    expect(counts.empty).toBe(7);
    expect([...series.z_m]).toEqual([1, 1]);
  });

  test("tabs with decimal commas; a file that keeps points is read the same", () => {
    const rows = (z: string) => `time\tlevel\n2027-01-01 00:00\t${z}\n2027-01-01 01:00\t${z}\n`;
    expect([...read(rows("-0,25")).series.z_m]).toEqual([-0.25, -0.25]);
    expect([...read(rows("-0.25")).series.z_m]).toEqual([-0.25, -0.25]);
  });

  test("date, time of day and zone in columns of their own, below a gauge's notes and widths", () => {
    const file = [
      "# a note, with a comma",
      "#",
      "date\tclock\ttz_cd\tlevel",
      "10d\t5s\t6s\t14n",
      "2027-01-01\t00:00\tEST\t1",
      "2027-01-01\t01:00\tEST\t1.5",
      "2027-01-01\tnoon\tEST\t1.5",
    ];
    const columns = { time: "date + clock + tz_cd", level: "level", flag: null };
    const { series } = read(file.slice(0, -1).join("\n"), { columns });
    expect([...series.t_s]).toEqual([Date.UTC(2027, 0, 1, 5) / 1000, Date.UTC(2027, 0, 1, 6) / 1000]);
    expect(series.zone_note).toContain("their own zone");
    expect(problems(() => read(file.join("\n"), { columns }))[0]!.place).toBe("line 7");
  });

  test("the order of day and month is read off the rows, and refused where they do not show it or show both", () => {
    const rows = (...days: string[]) => `time,level\n${days.map((d) => `${d} 10:00,1`).join("\n")}\n`;
    const first = (text: string) => new Date(read(text).series.t_s[0]! * 1000).toISOString().slice(0, 10);
    expect(first(rows("03/04/2027", "13/04/2027"))).toBe("2027-04-03");
    expect(first(rows("03/04/2027", "03/13/2027"))).toBe("2027-03-04");
    expect(codes(problems(() => read(rows("03/04/2027", "04/04/2027"))))).toEqual(["series-date-order"]);
    const both = problems(() => read(rows("13/04/2027", "04/14/2027")))[0]!;
    expect(both).toMatchObject({ code: "series-date-order", place: "lines 2 and 3" });
  });

  test("the same instants in another zone are the same series: a shift of the clock moves every time and nothing else", () => {
    const rows = (zone: string) =>
      `time,level\n${Array.from({ length: 30 }, (_, i) => `2027-03-0${1 + Math.floor(i / 24)} ${String(i % 24).padStart(2, "0")}:00${zone},${i % 7}`).join("\n")}\n`;
    const [utc, east] = [read(rows("")), read(rows(""), { zone: "+05:30" })];
    expect([...east.series.t_s]).toEqual([...utc.series.t_s].map((t) => t - 5.5 * 3600));
    expect([...east.series.z_m]).toEqual([...utc.series.z_m]);
    expect([...read(rows("+05:30")).series.t_s]).toEqual([...east.series.t_s]);
  });

  test("rows with and without a zone in one file are said", () => {
    const { warnings } = read("time,level\n2027-01-01 00:00Z,1\n2027-01-01 01:00,1\n2027-01-01 02:00,1\n");
    expect(codes(warnings)).toContain("series-mixed-zones");
  });

  test("every flag that took rows out is told with its count", () => {
    const rows = ["<0>", "<1> (CSM)", "<-3>", "<-3>", "<0> (CRE)", "P"].map(
      (f, i) => `2027-01-01 0${i}:00,1,${f}`,
    );
    const { warnings, counts } = read(`time,level,flag\n${rows.join("\n")}\n`, {
      columns: { time: "time", level: "level", flag: "flag" },
    });
    expect(counts).toMatchObject({ flagged: 4, kept: 2 });
    expect(warnings.find((w) => w.code === "series-flagged")!.value).toBe("<-3>: 2; <1> (CSM): 1; P: 1");
  });

  test("an hour that a clock skips on its night is noticed, and one that it writes twice; other gaps are not", () => {
    const quarter = (from: number, count: number) =>
      Array.from({ length: count }, (_, i) => new Date((from + i * 900) * 1000).toISOString().slice(0, 16));
    const file = (times: readonly string[]) => `time,level\n${times.map((t) => `${t},1`).join("\n")}\n`;
    const night = (month: number, day: number, hour: number) => Date.UTC(2018, month, day, hour) / 1000;
    const changed = (times: readonly string[]) =>
      codes(read(file(times), { zone: "-05:00" }).warnings).filter((c) => c === "series-clock-change").length;
    expect(changed([...quarter(night(2, 11, 0), 8), ...quarter(night(2, 11, 3), 40)])).toBe(1);
    expect(changed([...quarter(night(10, 4, 0), 8), ...quarter(night(10, 4, 1), 40)])).toBe(1);
    expect(changed([...quarter(night(2, 12, 0), 8), ...quarter(night(2, 12, 3), 40)])).toBe(0);
    expect(changed(quarter(night(2, 11, 0), 96))).toBe(0);
  });

  test("readings called a table are refused, a table called readings is doubted, a table that skips a row has a gap there", () => {
    const hours = Array.from(
      { length: 30 },
      (_, i) =>
        `2027-01-0${1 + Math.floor(i / 24)} ${String(i % 24).padStart(2, "0")}:00,${Math.sin(i / 2).toFixed(3)}`,
    );
    const found = problems(() => read(`time,level\n${hours.join("\n")}\n`, { kind: "high-low" }));
    expect(codes(found)).toContain("series-not-turning");
    const turns = ["01 00:00,-1", "01 06:10,1", "01 12:25,-1", "01 18:40,1", "02 00:50,-1", "02 07:00,1"].map(
      (r) => `2027-01-${r}`,
    );
    const table = (rows: readonly string[], kind: SeriesFile["kind"] = "high-low") =>
      read(`time,level\n${rows.join("\n")}\n`, { kind });
    expect(codes(table(turns, "readings").warnings)).toContain("series-coarse");
    expect(table(turns).warnings).toEqual([]);
    const short = table(turns.with(3, "2027-01-01 18:40,0.9").toSpliced(2, 1));
    expect(codes(short.warnings)).toEqual(["series-not-turning", "series-gaps"]);
    expect(short.series.gaps).toHaveLength(1);
    expect(wetTime(short.series, 0.5).longest_wet_s).toBeLessThan(5 * 3600);
  });

  test("columns that are not there are named with those that are", () => {
    const found = problems(() => read("t,z\n1,2\n"));
    expect(codes(found)).toEqual(["series-column", "series-column"]);
    expect(found[0]!.mend).toContain('"t", "z"');
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

const hour = (i: number): string =>
  `2027-01-0${1 + Math.floor(i / 24)} ${String(i % 24).padStart(2, "0")}:00`;
const wholes: readonly (readonly [string, Partial<SeriesFile>])[] = [
  [
    `time,level\n${Array.from({ length: 40 }, (_, i) => `${hour(i)},${(i / 10).toFixed(2)}`).join("\n")}\n`,
    {},
  ],
  [
    `# note\ndate;clock;level;f\n${Array.from({ length: 30 }, (_, i) => `${13 + (i % 9)}.0${1 + Math.floor(i / 9)}.2027;0${1 + (i % 9)}:05 PM;-${i},5;<0>`).join("\n")}\n`,
    { columns: { time: "date + clock", level: "level", flag: "f" }, zone: "America/New_York", unit: "ft" },
  ],
  [
    `time,level\n${Array.from({ length: 20 }, (_, i) => `${hour(i * 6)},${i % 2}`).join("\n")}\n`,
    { kind: "high-low", zone: "Europe/Lisbon" },
  ],
];

test.each(wholes)(
  "files with bytes changed, cut or repeated: refused or read, never broken",
  (text, some) => {
    const whole = bytes(text);
    expect(readSeries(whole, choice(some), "D").series.t_s.length).toBeGreaterThan(10);
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
          const { series, counts, warnings } = readSeries(file, choice(some), "D");
          expect(series.z_m.every(Number.isFinite)).toBe(true);
          const { kept, empty, flagged, doubled, clockless } = counts;
          expect(kept + empty + flagged + doubled + clockless).toBe(counts.rows);
          expect(warnings.every((w) => w.severity === "warning")).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(ProblemError);
        }
      }),
      { numRuns: Number(process.env["CAUSEY_FUZZ"] ?? 300) },
    );
  },
);

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
      // Flags other than <0>: 758 + 196 rows rejected and 8 missing, of which nine have no depth anyway.
      expect(counts.flagged).toBe(953);
      expect(counts.kept + counts.flagged + counts.empty + counts.doubled).toBe(17_568);
      expect(series.gaps.length).toBeGreaterThan(5);
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
    const noticed = warnings.find((w) => w.code === "series-clock-change")!;
    expect(noticed.place).toBe("2018-03-11 01:45");
    const whole = wetTime(series, 0.3);
    expect(whole.gap_s).toBe(75 * 60);
    expect(whole.hours_per_year! / 8766).toBeCloseTo(whole.wet_share!, 9);
    expect(wetTime(series, 0.0447).wet_share).toBeGreaterThan(0.5);
  });
});
