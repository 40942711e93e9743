import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../units/index.ts";
import { levelFindings } from "./level-findings.ts";
import { makeSeries, type Series } from "./series.ts";
import { turningPoints } from "./turning-points.ts";
import type { WaterLevel } from "./types.ts";
import { dryWindows, spells, wetTime } from "./wet-time.ts";
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

  test("sound levels have no finding; a predicted extreme alone asks for the recorded one", () => {
    const sound = [level({ role: "mlw", z_m: -1 }), level({ role: "mhw", z_m: 1 })];
    expect(levelFindings(sound)).toEqual([]);
    const predicted = level({ role: "highest-predicted", basis: "predicted", z_m: 2 });
    expect(levelFindings([...sound, predicted])[0]!.message).toContain("without wind");
  });
});

describe("how wet the walkway is", () => {
  const joints = [{ id: "J1", ground_m: 0, deck_m: 0.5 }];

  test("without a record nothing is told, and that is said", () => {
    const w = wetness({ levels: [], series: null, joints, height_band_m: 0.05 });
    expect(w).toMatchObject({ record: null, joints: [], longest_dry_h: null });
    expect(w.cautions[0]).toContain("cannot be told");
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
