import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { randomStream, studentQuantile } from "../statistics/index.ts";
import {
  judgeReading,
  lineStrength,
  readingWorth,
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

describe("worth of a reading", () => {
  const joints = [0, 15, 30, 48, 90].map((at) => joint(at, 22));
  const { field } = lineStrength(some, joints, null, usualSettings)!;

  test("on average a reading leaves the chance where it is: every outcome is followed with its due share", () => {
    joints.forEach((j, i) => {
      const { mean } = judgeReading(field, j, i, usualSettings, 0.05);
      expect(Math.abs(mean.one - mean.now)).toBeLessThan(1e-3 * mean.now);
      expect(Math.abs(mean.two - mean.now)).toBeLessThan(1e-3 * mean.now);
    });
  });

  test("the expected band is what readings drawn from the field give when all is worked out again", () => {
    const random = randomStream(12);
    const i = 4;
    const at = joints[i]!;
    const own = field.shape.values[i * joints.length + i]!;
    const n = 4000;
    const sums = { one: 0, two: 0 };
    for (let t = 0; t < n; t++) {
      const spread = field.sigma * Math.sqrt(field.df / random.chiSquare(field.df));
      const level = field.mean[i]! + spread * Math.sqrt(own) * random.normal();
      const more = [0, 1].map(() => {
        const ln = level + spread * Math.sqrt(usualSettings.scatter_share) * random.normal();
        return { at_m: at.at_m, off_m: 0, depth_m: 0.2, su_pa: Math.exp(ln) };
      });
      const width = (k: number): number => {
        const found = strengthField([...some, ...more.slice(0, k)], [at], null, usualSettings)!;
        return 2 * studentQuantile(0.95, found.df) * found.sigma * Math.sqrt(found.shape.values[0]!);
      };
      sums.one += width(1) / n;
      sums.two += width(2) / n;
    }
    const { ratio } = readingWorth(field, joints, usualSettings, 0.05).find((w) => w.id === at.id)!;
    expect(sums.one / Math.log(ratio.one)).toBeCloseTo(1, 1.7);
    expect(sums.two / Math.log(ratio.two)).toBeCloseTo(1, 1.7);
  });

  test("two readings are worth more than one, none is worth less than nothing, and the list is in order", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 120, noNaN: true }), { minLength: 1, maxLength: 5 }),
        fc.double({ min: 3, max: 60, noNaN: true }),
        fc.double({ min: 0.01, max: 0.4, noNaN: true }),
        (places, kpa, accepted) => {
          const all = places.map((at) => joint(at, kpa));
          const list = readingWorth(
            lineStrength(some, all, null, usualSettings)!.field,
            all,
            usualSettings,
            accepted,
          );
          for (const { ratio, ratio_all, risk } of list) {
            for (const r of [ratio, ratio_all]) {
              expect(r.one).toBeLessThan(r.now);
              expect(r.two).toBeLessThan(r.one);
            }
            expect(risk!.one).toBeLessThanOrEqual(risk!.now * 1.001 + 1e-6);
            expect(risk!.two).toBeLessThanOrEqual(risk!.one * 1.01 + 1e-6);
          }
          const gains = list.map((w) => w.risk!.now - w.risk!.one).filter((g) => g > 1e-6);
          expect(gains).toEqual([...gains].sort((a, b) => b - a));
        },
      ),
      { numRuns: 30 },
    );
  });

  test("without loads the joint farthest from all readings comes first, and the words name the figures", () => {
    const free = [5, 12, 30, 400].map((at) => joint(at));
    const list = readingWorth(
      lineStrength(some, free, null, usualSettings)!.field,
      free,
      usualSettings,
      0.05,
    );
    expect(list[0]!.at_m).toBe(400);
    expect(list[0]).toMatchObject({ risk: null, turns: null });
    expect(list[0]!.words).toContain(list[0]!.ratio.one.toFixed(2));
  });
});
