import { describe, expect, test } from "vitest";
import type { Trace } from "../formula/index.ts";
import { normalBelow, randomStream, studentBelow, studentQuantile } from "../statistics/index.ts";
import {
  chanceBelow,
  halfWidth,
  jointsTogether,
  likeness,
  lineStrength,
  readingsAround,
  readingsBelow,
  strengthField,
  usualSettings,
  type BandJoint,
  type LineReading,
} from "./index.ts";

const reading = (at_m: number, su_kpa: number, depth_m = 0.2): LineReading => ({
  at_m,
  off_m: 0,
  depth_m,
  su_pa: su_kpa * 1000,
});
const joint = (at_m: number, pressure_kpa: number | null = null): BandJoint => ({
  id: `at ${at_m}`,
  at_m,
  off_m: 0,
  factor: 6,
  pressure_pa: pressure_kpa === null ? null : pressure_kpa * 1000,
});
const some = [reading(0, 6), reading(8, 9), reading(8, 7.5), reading(21, 12), reading(40, 8), reading(55, 5)];

describe("depth of influence", () => {
  const foot = { width_m: 0.4, depth_m: 0.1 };
  const list = [0.05, 0.1, 0.3, 0.69, 0.71, 1.2].map((d) => reading(0, 8, d));
  const depths = (r: readonly LineReading[]): number[] => r.map((x) => x.depth_m);

  test("1.5 widths below the foot count, what lies above it or deeper does not", () => {
    const found = readingsBelow(list, foot, null);
    expect(depths(found.ground)).toEqual([0.1, 0.3, 0.69]);
    expect(found).toMatchObject({ mat: [], outside: 3 });
  });

  test("readings in the mat stand apart; below it the spread load reaches deeper", () => {
    // Mat to 0.35 m: 0.25 m of it under the foot, the load 0.65 m wide on the mud, felt to 0.35 + 0.975 m.
    const found = readingsBelow(list, foot, 0.35);
    expect(depths(found.mat)).toEqual([0.1, 0.3]);
    expect(depths(found.ground)).toEqual([0.69, 0.71, 1.2]);
    expect(found.outside).toBe(1);
  });
});

describe("the field", () => {
  test("where no two places are alike it is the plain Student interval s^2 (1 + 1/n), by hand", () => {
    const apart = { ...usualSettings, correlation_m: 1e-3, scatter_share: 0.01 };
    const readings = [reading(0, 6), reading(50, 9), reading(100, 12)];
    const { mean, sigma, df, shape } = strengthField(readings, [joint(25)], null, apart)!;
    const logs = [6, 9, 12].map((v) => Math.log(v * 1000));
    const middle = logs.reduce((a, b) => a + b, 0) / 3;
    const squares = logs.reduce((s, v) => s + (v - middle) ** 2, 0);
    expect(df).toBe(5);
    expect(mean[0]).toBeCloseTo(middle, 12);
    expect(sigma ** 2).toBeCloseTo((3 * 0.35 ** 2 + squares) / 5, 12);
    expect(shape.values[0]).toBeCloseTo(0.99 + 1 / 3, 12);
  });

  test("one reading at the joint and one far away, by hand: weights and scale of two-point kriging", () => {
    const { weights, shape, mean } = strengthField(
      [reading(0, 6), reading(1e4, 9)],
      [joint(0)],
      null,
      usualSettings,
    )!;
    // Difference of the two weights times its variance 2 equals the covariance 0.7 with the near reading.
    const near = 0.5 + 0.35;
    expect(weights[0]![0]).toBeCloseTo(near, 12);
    expect(weights[0]![1]).toBeCloseTo(1 - near, 12);
    expect(mean[0]).toBeCloseTo(near * Math.log(6000) + (1 - near) * Math.log(9000), 12);
    expect(shape.values[0]).toBeCloseTo(0.7 - 2 * near * 0.7 + near ** 2 + (1 - near) ** 2, 12);
  });

  test("the weights of the readings at every joint add up to 1 and give its mean; near ones weigh more than far ones", () => {
    const joints = [0, 10, 33, 90].map((at) => joint(at));
    const { weights, mean } = strengthField(some, joints, null, usualSettings)!;
    weights.forEach((row, i) => {
      expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 10);
      expect(row.reduce((a, w, k) => a + w * Math.log(some[k]!.su_pa), 0)).toBeCloseTo(mean[i]!, 10);
    });
    expect(weights[0]![0]).toBeGreaterThan(Math.max(...weights[0]!.slice(1)));
  });

  test("no reading: the plan's value with the usual spread, said so, as wide as with one far reading; nothing known: null", () => {
    const joints = [joint(0)];
    const plan = lineStrength([], joints, 8000, usualSettings)!;
    expect(plan.joints[0]!.su_pa.median).toBeCloseTo(8000, 8);
    expect(plan.words.join(" ")).toMatch(/No reading counts/);
    const far = lineStrength([reading(1e5, 8)], joints, 5000, usualSettings)!;
    expect(far.joints[0]!.su_pa.low).toBeCloseTo(plan.joints[0]!.su_pa.low, 6);
    expect(lineStrength([], joints, null, usualSettings)).toBeNull();
  });

  test("a strength of 0 is a broken promise, not a band", () => {
    expect(() => strengthField([reading(0, 0)], [joint(0)], null, usualSettings)).toThrow(
      "strength-not-over-0",
    );
    expect(() => strengthField([], [joint(0)], -1, usualSettings)).toThrow("strength-not-over-0");
  });
});

describe("readings around a joint", () => {
  test("equal distances count whole, a far one hardly; the nearest is told", () => {
    const around = readingsAround({ at_m: 10, off_m: 0 }, [reading(0, 6), reading(20, 9)], usualSettings)!;
    expect(around.effective).toBeCloseTo(2, 12);
    expect(around.mean_ln).toBeCloseTo((Math.log(6000) + Math.log(9000)) / 2, 12);
    expect(around.nearest_m).toBe(10);
    const w = likeness(usualSettings, 20) / likeness(usualSettings, 0);
    const two = readingsAround({ at_m: 0, off_m: 0 }, [reading(0, 6), reading(20, 9)], usualSettings)!;
    expect(two.effective).toBeCloseTo((1 + w) ** 2 / (1 + w * w), 12);
    const lone = readingsAround({ at_m: 0, off_m: 0 }, [reading(0, 6), reading(9e4, 9)], usualSettings)!;
    expect(lone).toMatchObject({ effective: 1, sd_ln: null });
    expect(readingsAround({ at_m: 0, off_m: 0 }, [], usualSettings)).toBeNull();
  });
});

describe("strength and the formula's error together", () => {
  test("without an error it is Student's t; with a narrow strength it is the normal error alone", () => {
    const base = { mean: 1, df: 4, scale: 0.3 };
    expect(chanceBelow(0.7, { ...base, model_sd: 0 })).toBeCloseTo(studentBelow(-1, 4), 14);
    expect(chanceBelow(0.7, { ...base, scale: 1e-5, model_sd: 0.3 })).toBeCloseTo(normalBelow(-1), 4);
    expect(chanceBelow(0.7, { ...base, df: 1e5, model_sd: 0.4 })).toBeCloseTo(normalBelow(-0.6), 5);
    expect(halfWidth(0.95, { ...base, df: 1e5, model_sd: 0.4 })).toBeCloseTo(
      0.5 * studentQuantile(0.95, 1e5),
      5,
    );
  });

  test("half width and chance are each other's inverse, and simulation agrees", () => {
    const spread = { mean: 0, df: 5, scale: 0.25, model_sd: 0.2 };
    const half = halfWidth(0.95, spread);
    expect(chanceBelow(half, spread)).toBeCloseTo(0.95, 10);
    expect(chanceBelow(-half, spread)).toBeCloseTo(0.05, 10);
    const random = randomStream(4);
    let below = 0;
    const n = 40_000;
    for (let i = 0; i < n; i++) {
      const t = random.normal() * Math.sqrt(5 / random.chiSquare(5));
      if (0.25 * t + 0.2 * random.normal() < -half) below++;
    }
    expect(Math.abs(below / n - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / n));
  });

  test("more load is never less likely to exceed", () => {
    const at = (kpa: number): number =>
      lineStrength(some, [joint(10, kpa)], null, usualSettings)!.joints[0]!.chance!;
    let last = 0;
    for (let kpa = 2; kpa < 120; kpa += 7) {
      expect(at(kpa)).toBeGreaterThan(last);
      last = at(kpa);
    }
    expect(lineStrength(some, [joint(10)], null, usualSettings)!.joints[0]!.chance).toBeNull();
  });
});

test("the working of the band shows the weakest joint, and its figures are those of the answer", () => {
  const trace: Trace = [];
  const found = lineStrength(
    some,
    [0, 33, 55].map((at) => joint(at, 10)),
    null,
    usualSettings,
    trace,
  )!;
  const weakest = found.joints.reduce((a, b) => (b.su_pa.low < a.su_pa.low ? b : a));
  const step = (id: string) => trace.find((s) => s.id === id)!;
  expect(step("ground.strength.df").value).toBe(found.field.df);
  expect(step("ground.strength.low").value).toBeCloseTo(weakest.su_pa.low, 6);
  expect(step("ground.strength.low").note).toContain(String(weakest.at_m));
  expect(step("ground.strength.capacity").value).toBeCloseTo(weakest.capacity_pa.median, 6);
});

describe("joints together", () => {
  const together = (joints: readonly BandJoint[], trials = 20_000, seed = 1) => {
    const { field } = lineStrength(some, joints, null, usualSettings)!;
    return jointsTogether(field, joints, usualSettings, trials, seed);
  };

  test("one joint alone: the simulation meets the chance that was worked out", () => {
    const joints = [joint(10, 25)];
    const exact = lineStrength(some, joints, null, usualSettings)!.joints[0]!.chance!;
    const found = together(joints)!;
    expect(Math.abs(found.any - exact)).toBeLessThan(4 * found.any_error);
    expect(found.expected).toBeCloseTo(exact, 12);
  });

  test("at least one lies between the worst joint's chance and the sum of all, and near joints share their luck", () => {
    const near = [80, 80.1, 80.2, 80.3].map((at) => joint(at, 20));
    const apart = [80, 1080, 2080, 3080].map((at) => joint(at, 20));
    for (const joints of [near, apart]) {
      const worst = Math.max(
        ...lineStrength(some, joints, null, usualSettings)!.joints.map((j) => j.chance!),
      );
      const found = together(joints)!;
      expect(found.any).toBeGreaterThan(worst - 4 * found.any_error);
      expect(found.any).toBeLessThan(found.expected + 4 * found.any_error);
    }
    expect(together(near)!.any).toBeLessThan(together(apart)!.any);
  });

  test("the same seed gives the same figures, another one others; joints without load are left out, none leaves null", () => {
    const joints = [joint(10, 25), joint(30), joint(60, 25)];
    expect(together(joints, 500, 7)).toEqual(together(joints, 500, 7));
    expect(together(joints, 500, 7)!.any).not.toBe(together(joints, 500, 8)!.any);
    expect(together(joints, 500)!.left_out).toBe(1);
    expect(together([joint(1)], 500)).toBeNull();
  });
});
