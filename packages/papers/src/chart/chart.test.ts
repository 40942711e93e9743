import { DomainError } from "@causey/engine/units";
import fc from "fast-check";
import { expect, test } from "vitest";
import { chartFrame, curve, linearScale, niceTicks } from "./index.ts";

test("ticks are round, even, inside the range, and about as many as asked", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.double({ min: 0.01, max: 1e4, noNaN: true }),
      fc.integer({ min: 3, max: 10 }),
      (low, span, about) => {
        const ticks = niceTicks(low, low + span, about);
        expect(ticks.length).toBeGreaterThanOrEqual(Math.floor(about / 3));
        expect(ticks.length).toBeLessThanOrEqual(about * 2.5 + 1);
        const slack = span * 1e-6;
        for (const t of ticks) expect(t >= low - slack && t <= low + span + slack).toBe(true);
        const steps = ticks.slice(1).map((t, i) => t - ticks[i]!);
        for (const step of steps) {
          expect(step).toBeCloseTo(steps[0]!, 6);
          const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
          expect([1, 2, 5].some((k) => Math.abs(lead - k) < 1e-6)).toBe(true);
        }
      },
    ),
  );
});

test("round ends are ticks themselves and zero is never minus zero", () => {
  expect(niceTicks(0, 1, 5)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
  expect(Object.is(niceTicks(-1, 1, 4)[2], 0)).toBe(true);
});

test("a scale that has no length is refused", () => {
  expect(() => linearScale([2, 2], [0, 10])).toThrow(DomainError);
  expect(() => linearScale([0, NaN], [0, 10])).toThrow(DomainError);
});

test("y runs upward on the sheet and a gap in the values breaks the curve", () => {
  const chart = chartFrame(
    { x: 0, y: 0, width: 100, height: 60 },
    { title: "day", range: [0, 4] },
    { title: "level, m", range: [0, 2] },
  );
  expect(chart.y.at(2)).toBeLessThan(chart.y.at(0));
  const points = [0, 1, null, 1, 2].map((y, x) => ({ x, y }));
  const runs = curve(chart, points, { ink: "water", width: 0.3 });
  expect(runs).toHaveLength(2);
});
