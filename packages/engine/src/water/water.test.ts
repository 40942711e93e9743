import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError, metres, qty } from "../units/index.ts";
import { levelFindings } from "./level-findings.ts";
import { makeSeries, type Series } from "./series.ts";
import { meanLevels } from "./mean-levels.ts";
import { sineLevel } from "./tide-relations.ts";
import { trueTurns } from "./true-turns.ts";
import { turningPoints, type TurningPoint } from "./turning-points.ts";
import type { WaterLevel } from "./types.ts";
import { dryWindows, spells, wetTime } from "./wet-time.ts";
import { wetShares } from "./wet-shares.ts";
import { wetness } from "./wetness.ts";

const readings = (t: readonly number[], z: readonly number[], kind: Series["kind"] = "readings"): Series =>
  makeSeries({ kind, basis: "recorded", t_s: Float64Array.from(t), z_m: Float64Array.from(z) });

/** A sine of one amplitude about zero, read every `step` seconds over whole periods. */
const PERIOD = 12 * 3600;
const sine = (step: number, periods = 4): Series => {
  const t = Array.from({ length: (periods * PERIOD) / step + 1 }, (_, i) => i * step);
  return readings(
    t,
    t.map((s) => Math.sin((2 * Math.PI * s) / PERIOD)),
  );
};

describe("time under water", () => {
  test("a straight rise and fall, by hand", () => {
    const w = wetTime(readings([0, 100, 200], [0, 1, 0]), 0.25);
    expect(w).toMatchObject({ wet_s: 150, covered_s: 200, wet_share: 0.75, floods: 1 });
    expect(w.longest_dry_s).toBe(25);
  });

  test("a gap is never bridged: nothing is counted across it", () => {
    const s = readings([0, 10, 20, 1000, 1010], [1, 1, 1, 1, 0]);
    expect(s.gaps).toEqual([{ from_s: 20, to_s: 1000 }]);
    expect(wetTime(s, 0.5)).toMatchObject({ covered_s: 30, wet_s: 25, longest_wet_s: 20 });
  });

  test("turning points: half a cosine lies above its middle for half of the time", () => {
    const tide = readings([0, 21_600, 43_200], [-1, 1, -1], "high-low");
    expect(wetTime(tide, 0).wet_share).toBeCloseTo(0.5, 12);
    // z = a + (b - a)(1 - cos(pi s))/2 reaches 0.5 at s = 2/3.
    expect(wetTime(tide, 0.5).wet_share).toBeCloseTo(1 / 3, 12);
  });

  test("a sine gives the analytic share: (1 - 2 asin(z) / pi) / 2 of the time above z", () => {
    fc.assert(
      fc.property(fc.double({ min: -0.95, max: 0.95, noNaN: true }), (z) => {
        expect(wetTime(sine(360), z).wet_share).toBeCloseTo((1 - (2 * Math.asin(z)) / Math.PI) / 2, 3);
      }),
    );
  });

  test("the sine's own formula names the height that a record of it wets for that share", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 0.9, noNaN: true }), (s) => {
        const z = sineLevel({ M: metres(0), A: metres(1), s: qty(s, "1") });
        expect(wetTime(sine(360), z).wet_share).toBeCloseTo(s, 3);
      }),
    );
  });

  test("hours of a year are told by a year of record, not by less, nor by one with a tenth missing", () => {
    const hourly = (days: number, leaveOut = 0): Series => {
      const t = Array.from({ length: days * 24 }, (_, i) => i * 3600).filter(
        (_, i) => i < 100 || i >= 100 + leaveOut * 24,
      );
      return readings(
        t,
        t.map((s) => Math.sin((2 * Math.PI * s) / PERIOD)),
      );
    };
    const year = wetTime(hourly(365), 0);
    expect(year.hours_per_year).toBeCloseTo(year.wet_share! * 8766, 9);
    expect(wetTime(hourly(360), 0).hours_per_year).toBeNull();
    expect(wetTime(hourly(400, 40), 0).hours_per_year).toBeNull();
    expect(wetTime(hourly(400, 10), 0).hours_per_year).not.toBeNull();
  });

  test("covered time and gaps fill the record; shifting every time changes no share", () => {
    const times = fc.uniqueArray(fc.integer({ min: 0, max: 5000 }), { minLength: 3, maxLength: 60 });
    fc.assert(
      fc.property(times, fc.boolean(), fc.integer({ min: -14, max: 14 }), (list, table, zone) => {
        const t = list.toSorted((a, b) => a - b).map((m) => m * 60);
        const z = t.map((s) => Math.sin(s / 7000));
        const kind = table ? "high-low" : "readings";
        const [here, there] = [
          readings(t, z, kind),
          readings(
            t.map((s) => s + zone * 3600),
            z,
            kind,
          ),
        ];
        const wet = wetTime(here, 0.2);
        expect(wet.covered_s + wet.gap_s).toBeCloseTo(t.at(-1)! - t[0]!, 6);
        expect(wetTime(there, 0.2).wet_s).toBeCloseTo(wet.wet_s, 6);
        expect(there.gaps).toHaveLength(here.gaps.length);
      }),
    );
  });

  test("a table that skips a low water has a gap there: the flood is not kept up between two highs", () => {
    const [H, day] = [6.21 * 3600, [-1, 1, -1, 1, -1, 1, -1]];
    const whole = readings(
      day.map((_, i) => i * H),
      day,
      "high-low",
    );
    expect(whole.gaps).toEqual([]);
    const t = [0, 1, 3, 4, 5, 6].map((i) => i * H);
    const short = readings(t, [-1, 1, 0.98, -1, 1, -1], "high-low");
    expect(short.gaps).toEqual([{ from_s: H, to_s: 3 * H }]);
    expect(wetTime(short, 0).longest_wet_s).toBeCloseTo(wetTime(whole, 0).longest_wet_s, 0);
    const points = turningPoints(short).map((p) => p.high);
    expect(points).toEqual([false, true, true, false, true, false]);
  });

  test("many heights in one pass are as wet as each alone", () => {
    const level = fc.integer({ min: -30, max: 30 }).map((z) => z / 10);
    const levels = fc.array(fc.tuple(level, fc.integer({ min: 1, max: 40 })), {
      minLength: 2,
      maxLength: 40,
    });
    fc.assert(
      fc.property(
        levels,
        fc.array(level, { minLength: 1, maxLength: 12 }),
        fc.boolean(),
        (rows, heights, table) => {
          let t = 0;
          const times = rows.map(([, apart]) => (t += apart * 1800));
          const series = readings(
            times,
            rows.map(([z]) => z),
            table ? "high-low" : "readings",
          );
          const shares = wetShares(series, heights);
          for (const z of heights) {
            const alone = wetTime(series, z).wet_share;
            if (alone === null) expect(shares).toBeNull();
            else expect(shares!.get(z)!).toBeCloseTo(alone, 9);
          }
        },
      ),
    );
  });

  test("higher ground is never wetter, and wet and dry fill the covered time", () => {
    const levels = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(levels, fc.double({ min: -2, max: 2, noNaN: true }), fc.boolean(), (z, height, table) => {
        const series = readings(
          z.map((_, i) => i * 600),
          z,
          table ? "high-low" : "readings",
        );
        const low = wetTime(series, height);
        expect(wetTime(series, height + 0.1).wet_s).toBeLessThanOrEqual(low.wet_s + 1e-6);
        const all = [...spells(series, height)].reduce((sum, s) => sum + s.to_s - s.from_s, 0);
        expect(all).toBeCloseTo((z.length - 1) * 600, 6);
      }),
    );
  });

  test("dry windows are the dry stretches of at least a length", () => {
    const windows = dryWindows(sine(60, 2), 0.5, 4 * 3600);
    expect(windows.every((w) => !w.wet && w.to_s - w.from_s >= 4 * 3600)).toBe(true);
    expect(windows.map((w) => (w.to_s - w.from_s) / 3600)).toEqual([
      expect.closeTo(8, 2),
      expect.closeTo(7, 2),
    ]);
  });

  test("times that do not ascend and heights that are no number are broken promises", () => {
    expect(() => readings([0, 0], [1, 2])).toThrow(DomainError);
    expect(() => wetTime(readings([0, 1], [1, 2]), Number.NaN)).toThrow(DomainError);
  });
});

describe("high and low waters", () => {
  test("a sine of 12 hours has one high and one low in each, where they are", () => {
    const points = turningPoints(sine(360));
    expect(points.map((p) => p.high)).toEqual([true, false, true, false, true, false, true, false]);
    points.forEach((p, i) => expect(Math.abs(p.t_s - (PERIOD / 4 + (i * PERIOD) / 2))).toBeLessThan(400));
  });

  test("hourly readings: the extreme is placed between them, to within a centimetre", () => {
    const t = Array.from({ length: 50 }, (_, i) => i * 3600);
    const level = (s: number): number => Math.cos((2 * Math.PI * (s - 1500)) / 44_714);
    const high = turningPoints(readings(t, t.map(level))).find((p) => p.high)!;
    expect(high.z_m).toBeGreaterThan(0.99);
    expect(high.z_m).toBeLessThan(1.001);
  });

  test("ripples below 3 cm are no tides", () => {
    const t = Array.from({ length: 385 }, (_, i) => i * 900);
    const z = t.map((s, i) => Math.sin((2 * Math.PI * s) / PERIOD) + (i % 2 === 0 ? 0.01 : -0.01));
    expect(turningPoints(readings(t, z)).length).toBe(turningPoints(sine(900, 8)).length);
  });
});

/** The rule as it is written: search all neighbours for the smallest rise that is none, take it out, again. */
function turnsByTheRule(points: readonly TurningPoint[]): TurningPoint[] {
  const list = [...points];
  for (;;) {
    const faults = list
      .slice(1)
      .map((q, i) => ({ i, rise: Math.abs(q.z_m - list[i]!.z_m), apart: q.t_s - list[i]!.t_s }))
      .filter((f) => f.rise < 0.03 || f.apart < 7200)
      .toSorted((a, b) => a.rise - b.rise);
    const worst = faults[0];
    if (!worst) return list;
    if (worst.i === 0) list.shift();
    else if (worst.i === list.length - 2) list.pop();
    else list.splice(worst.i, 2);
  }
}

describe("the true highs and lows among many turns", () => {
  const turns = fc
    .array(
      fc.record({ apart: fc.integer({ min: 600, max: 20_000 }), rise: fc.integer({ min: 1, max: 100_000 }) }),
      {
        minLength: 1,
        maxLength: 40,
      },
    )
    .map((steps) => {
      let [t, z] = [0, 0];
      return steps.map(({ apart, rise }, i): TurningPoint => {
        t += apart;
        z += ((i % 2 === 0 ? 1 : -1) * (rise + i / 1000)) / 200_000;
        return { t_s: t, z_m: z, high: i % 2 === 0 };
      });
    });

  test("are those that the rule leaves when it is followed step by step", () => {
    fc.assert(
      fc.property(turns, (points) => {
        expect(trueTurns(points)).toEqual(turnsByTheRule(points));
      }),
    );
  });

  test("still alternate, differ by 0.03 m and lie two hours apart", () => {
    fc.assert(
      fc.property(turns, (points) => {
        const left = trueTurns(points);
        left.slice(1).forEach((q, i) => {
          const p = left[i]!;
          expect(q.high).toBe(!p.high);
          expect(Math.abs(q.z_m - p.z_m)).toBeGreaterThanOrEqual(0.03);
          expect(q.t_s - p.t_s).toBeGreaterThanOrEqual(7200);
        });
      }),
    );
  });
});

describe("mean levels", () => {
  const tide = (level: (s: number) => number, days = 60, step = 900): Series => {
    const t = Array.from({ length: (days * 86_400) / step }, (_, i) => i * step);
    return readings(t, t.map(level));
  };
  const M2 = (s: number): number => Math.cos((2 * Math.PI * s) / (12.4206 * 3600));

  test("a tide of two a day: means, ranges, no inequality, and the short record is said", () => {
    const m = meanLevels(tide((s) => 0.3 + M2(s)));
    expect(m.mhw_m).toBeCloseTo(1.3, 2);
    expect(m.mlw_m).toBeCloseTo(-0.7, 2);
    expect(m.mn_m).toBeCloseTo(2, 2);
    expect(m.dhq_m).toBeCloseTo(0, 2);
    expect(m.cautions).toEqual([expect.stringContaining("60 days")]);
  });

  test("a tide with a daily inequality: the higher high and the lower low of each tidal day", () => {
    const m = meanLevels(tide((s) => M2(s) + 0.1 * Math.cos((2 * Math.PI * s) / (24.8412 * 3600))));
    expect(m.dhq_m).toBeCloseTo(0.1, 2);
    expect(m.gt_m! - m.mn_m!).toBeCloseTo(m.dhq_m! + m.dlq_m!, 9);
  });

  test("lows that stop at a sill give no low-water mean, nor a range; the highs stay", () => {
    const m = meanLevels(tide((s) => Math.max(M2(s), -0.4)));
    expect(m).toMatchObject({ mlw_m: null, mllw_m: null, mn_m: null, gt_m: null, dlq_m: null });
    expect(m.mhw_m).toBeCloseTo(1, 2);
    expect(m.cautions.some((c) => c.includes("sill"))).toBe(true);
  });

  test("one tide a day is said", () => {
    const m = meanLevels(tide((s) => Math.cos((2 * Math.PI * s) / (24.8412 * 3600))));
    expect(m.cautions.some((c) => c.includes("one tide a day"))).toBe(true);
  });
});

describe("named levels", () => {
  const level = (some: Partial<WaterLevel>): WaterLevel => ({
    id: some.role ?? "x",
    name: some.role ?? "x",
    role: "other",
    basis: "mean",
    z_m: 0,
    datum: "D",
    source: "gauge",
    epoch: "2002 to 2020",
    ...some,
  });

  test("order, unknown years, and a prediction that calls itself a record", () => {
    const found = levelFindings([
      level({ role: "mlw", z_m: 0.9 }),
      level({ role: "mhw", z_m: 0.5, epoch: "" }),
      level({ role: "highest-recorded", z_m: 2, basis: "predicted" }),
    ]);
    expect(found.map((f) => f.level)).toEqual(["mhw", "highest-recorded", "mhw"]);
    expect(found[2]!.message).toContain("lies below");
  });

  test("a level on another datum than the plan's is flagged, not converted", () => {
    const found = levelFindings([level({ role: "mhw", datum: "MLLW" })], null, "NAVD88");
    expect(found).toHaveLength(1);
    expect(found[0]!.message).toMatch(/MLLW.*NAVD88/);
    expect(levelFindings([level({ role: "mhw", datum: "NAVD88" })], null, "NAVD88")).toEqual([]);
  });

  test("an extreme that the plan's own record goes beyond is flagged by a series of the same basis only", () => {
    const storm = level({ role: "highest-recorded", basis: "recorded", z_m: 0.8 });
    expect(levelFindings([storm], sine(360))[0]!.message).toContain("goes above");
    expect(levelFindings([{ ...storm, z_m: 1.2 }], sine(360))).toEqual([]);
    expect(levelFindings([storm], { ...sine(360), basis: "predicted" })).toEqual([]);
    const low = level({ role: "lowest-recorded", basis: "recorded", z_m: -0.5 });
    expect(levelFindings([low], sine(360))[0]!.message).toContain("goes below");
  });

  test("each level is held against all that may not lie above it, springs and records too", () => {
    const found = (levels: readonly WaterLevel[]) => levelFindings(levels).map((f) => f.level);
    const mhw = level({ role: "mhw", z_m: 1 });
    expect(found([mhw, level({ role: "mhws", z_m: 0.9 })])).toEqual(["mhws"]);
    expect(found([mhw, level({ role: "highest-recorded", basis: "recorded", z_m: 0.5 })])).toEqual([
      "highest-recorded",
    ]);
    // Two mean high waters of two epochs: the lower one is below mean sea level.
    const [old, sea] = [level({ id: "old", role: "mhw", z_m: 0.1 }), level({ role: "msl", z_m: 0.2 })];
    expect(found([mhw, old, sea])).toEqual(["old"]);
  });

  test("sound levels have no finding; a predicted extreme alone asks for the recorded one", () => {
    const sound = [level({ role: "mlw", z_m: -1 }), level({ role: "mhw", z_m: 1 })];
    expect(levelFindings(sound)).toEqual([]);
    const predicted = level({ role: "highest-predicted", basis: "predicted", z_m: 2 });
    expect(levelFindings([...sound, predicted])[0]!.message).toContain("without wind");
  });
});

describe("how wet the walkway is", () => {
  test("the lowest ground of the line is named, with its dry and wet spells; a prediction warns of wind", () => {
    const line = [
      { id: "A", ground_m: 0.9, deck_m: 1.2 },
      { id: "B", ground_m: 0, deck_m: 1.2 },
    ];
    const w = wetness({
      levels: [],
      series: { ...sine(360), basis: "predicted" },
      joints: line,
      height_band_m: 0.1,
    });
    expect(w.lowest).toMatchObject({ joint: "B", ground_m: 0 });
    expect(w.lowest!.longest_dry_h).toBeCloseTo(6, 1);
    expect(w.lowest!.longest_wet_h).toBeCloseTo(6, 1);
    expect(w.cautions[0]).toMatch(/wind set-up.*river/);
    // Two days of record tell no hours of a year.
    expect(w.joints[0]!.ground.hours_per_year).toBeNull();
    expect(w.cautions.some((c) => c.includes("less than a year"))).toBe(true);
  });

  const joints = [{ id: "J1", ground_m: 0, deck_m: 0.5 }];

  test("without a record nothing is told, and that is said", () => {
    const w = wetness({ levels: [], series: null, joints, height_band_m: 0.05 });
    expect(w).toMatchObject({ record: null, joints: [], lowest: null, longest_dry_h: null, residuals: null });
    expect(w.cautions[0]).toContain("cannot be told");
    // Points too far apart to read between: no share of nothing.
    const lone = readings([0, 200_000, 400_000], [-1, 1, -1], "high-low");
    const none = wetness({ levels: [], series: lone, joints, height_band_m: 0.05 });
    expect(none).toMatchObject({ record: null, joints: [] });
    expect(none.cautions[0]).toContain("close enough");
  });

  test("the band of the ground becomes a range of the share; without one the range is not known", () => {
    const [j] = wetness({ levels: [], series: sine(360), joints, height_band_m: 0.1 }).joints;
    expect(j!.ground.low!).toBeLessThan(j!.ground.share);
    expect(j!.ground.high!).toBeGreaterThan(j!.ground.share);
    expect(j!.deck.share).toBeCloseTo(1 / 3, 3);
    const [k] = wetness({ levels: [], series: sine(360), joints, height_band_m: null }).joints;
    expect(k!.ground.low).toBeNull();
  });
});
