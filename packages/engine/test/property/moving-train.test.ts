import * as fc from "fast-check";
import { expect, test } from "vitest";
import {
  largestDeflection,
  largestJointReaction,
  largestMoment,
  largestReaction,
  leverShares,
  trainDeflection,
  trainMoment,
  worstShare,
  type Train,
} from "../../src/structure/index.ts";

const span = fc.double({ min: 1, max: 8, noNaN: true });
const train: fc.Arbitrary<Train> = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 6, noNaN: true }),
    weight: fc.double({ min: 1, max: 2000, noNaN: true }),
  }),
  { minLength: 1, maxLength: 5 },
);
const runs = { numRuns: 60, seed: 7 };

/** Largest value of f over a dense grid of places of the train and sections of the span. */
function sweep(
  t: Train,
  L: number,
  steps: number,
  f: (t: Train, L: number, o: number, s: number) => number,
): number {
  let best = 0;
  const low = -Math.max(...t.map((l) => l.at));
  for (let i = 0; i <= steps; i++)
    for (let j = 1; j < 48; j++) best = Math.max(best, f(t, L, low + (i / steps) * (L - low), (j / 48) * L));
  return best;
}

test("the largest moment is never below a dense sweep and is taken at a place where the train really stands", () => {
  fc.assert(
    fc.property(train, span, (t, L) => {
      const exact = largestMoment(t, L);
      const dense = sweep(t, L, 300, trainMoment);
      expect(exact.value).toBeGreaterThanOrEqual(dense * (1 - 1e-9));
      expect(dense).toBeGreaterThanOrEqual(exact.value * 0.95);
      expect(trainMoment(t, L, exact.origin, exact.section)).toBeCloseTo(exact.value, 6);
    }),
    runs,
  );
});

test("the largest deflection is within 0.1 % of a denser sweep", () => {
  fc.assert(
    fc.property(train, span, (t, L) => {
      const dense = sweep(t, L, 500, trainDeflection);
      expect(largestDeflection(t, L).value).toBeGreaterThanOrEqual(dense * 0.999);
    }),
    { ...runs, numRuns: 40 },
  );
});

test("the largest end reaction is never below a dense sweep of the train over the support", () => {
  fc.assert(
    fc.property(train, span, (t, L) => {
      const exact = largestReaction(t, L).value;
      for (let i = 0; i <= 400; i++) {
        const o = -6 + (i / 400) * (L + 6);
        const on = t.filter((l) => o + l.at >= 0 && o + l.at <= L);
        const left = on.reduce((sum, l) => sum + l.weight * (1 - (o + l.at) / L), 0);
        expect(exact).toBeGreaterThanOrEqual(left - 1e-6);
      }
    }),
    runs,
  );
});

test("the largest joint reaction is never below a dense sweep over both spans, nor below either end reaction", () => {
  fc.assert(
    fc.property(train, span, span, (t, left, right) => {
      const exact = largestJointReaction(t, left, right).value;
      expect(exact).toBeGreaterThanOrEqual(largestReaction(t, right).value - 1e-6);
      expect(exact).toBeGreaterThanOrEqual(largestReaction(t, left).value - 1e-6);
      for (let i = 0; i <= 400; i++) {
        const o = -left - 6 + (i / 400) * (left + right + 6);
        const sum = t.reduce((s, l) => {
          const x = o + l.at;
          return s + l.weight * Math.max(0, x < 0 ? 1 + x / left : 1 - x / right);
        }, 0);
        expect(exact).toBeGreaterThanOrEqual(sum - 1e-6);
      }
    }),
    runs,
  );
});

test("more load or one load more never lowers moment, reaction or deflection", () => {
  fc.assert(
    fc.property(train, span, fc.nat(4), (t, L, i) => {
      const heavier = t.map((l, k) => (k === i % t.length ? { ...l, weight: l.weight * 1.3 } : l));
      const longer = [...t, { at: 2.5, weight: 100 }];
      for (const more of [heavier, longer]) {
        expect(largestMoment(more, L).value).toBeGreaterThanOrEqual(largestMoment(t, L).value * (1 - 1e-9));
        expect(largestReaction(more, L).value).toBeGreaterThanOrEqual(
          largestReaction(t, L).value * (1 - 1e-9),
        );
        expect(largestDeflection(more, L).value).toBeGreaterThanOrEqual(
          largestDeflection(t, L).value * 0.999,
        );
      }
    }),
    runs,
  );
});

test("a train that runs the other way gives the same extremes", () => {
  fc.assert(
    fc.property(train, span, (t, L) => {
      const back = t.map((l) => ({ ...l, at: -l.at }));
      expect(largestMoment(back, L).value).toBeCloseTo(largestMoment(t, L).value, 6);
      expect(largestReaction(back, L).value).toBeCloseTo(largestReaction(t, L).value, 6);
    }),
    runs,
  );
});

test("lever shares sum to 1 and balance about the load, between stringers and outside them", () => {
  const positions = fc.constantFrom([-0.3, 0.3], [-0.4, 0, 0.4], [-0.5, 0.1, 0.45]);
  fc.assert(
    fc.property(positions, fc.double({ min: -0.7, max: 0.7, noNaN: true }), (p, at) => {
      const shares = leverShares(p, at);
      expect(shares.reduce((a, b) => a + b)).toBeCloseTo(1, 9);
      expect(shares.reduce((sum, s, i) => sum + s * p[i]!, 0)).toBeCloseTo(at, 9);
    }),
    runs,
  );
});

test("the worst share of a two-wheeled cart is never below a dense sweep of its middle", () => {
  const positions = fc.constantFrom([-0.3, 0.3], [-0.4, 0, 0.4]);
  const reach = fc.double({ min: 0, max: 0.4, noNaN: true });
  const track = fc.double({ min: 0.1, max: 0.8, noNaN: true });
  fc.assert(
    fc.property(positions, reach, track, fc.nat(1), (p, r, w, i) => {
      const wheels = [
        { offset: -w / 2, part: 0.5 },
        { offset: w / 2, part: 0.5 },
      ];
      const worst = worstShare(p, i, wheels, r);
      expect(Math.abs(worst.at)).toBeLessThanOrEqual(r + 1e-12);
      for (let k = 0; k <= 100; k++) {
        const at = -r + (k / 50) * r;
        const share = wheels.reduce((s, { offset, part }) => s + part * leverShares(p, at + offset)[i]!, 0);
        expect(worst.share).toBeGreaterThanOrEqual(share - 1e-9);
      }
    }),
    runs,
  );
});
