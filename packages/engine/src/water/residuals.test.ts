import fc from "fast-check";
import { expect, test } from "vitest";
import { makeSeries, residualsOf, type Series } from "./index.ts";

const series = (
  basis: Series["basis"],
  t: readonly number[],
  z: readonly number[],
  kind: Series["kind"] = "readings",
): Series => makeSeries({ kind, basis, t_s: Float64Array.from(t), z_m: Float64Array.from(z) });
const hours = (n: number, step = 3600): number[] => Array.from({ length: n }, (_, i) => i * step);
const sine = (t: number): number => Math.sin((2 * Math.PI * t) / 43_200);

test("a record a hand's breadth over its prediction: mean 0.1, no spread", () => {
  const t = hours(101);
  const r = residualsOf(
    series(
      "recorded",
      t,
      t.map((s) => sine(s) + 0.1),
    ),
    series("predicted", t, t.map(sine)),
  )!;
  expect([r.n, r.from, r.to]).toEqual([101, "1970-01-01T00:00Z", "1970-01-05T04:00Z"]);
  for (const v of [r.mean_m, r.low_m, r.high_m, r.most_m]) expect(v).toBeCloseTo(0.1, 12);
  expect(r.sd_m).toBeCloseTo(0, 12);
});

test("mean, spread and span of residuals 0 to 1 in steps of 0.01, by hand", () => {
  const t = hours(101);
  const r = residualsOf(
    series(
      "recorded",
      t,
      t.map((_, i) => i / 100),
    ),
    series(
      "predicted",
      t,
      t.map(() => 0),
    ),
  )!;
  expect(r.mean_m).toBeCloseTo(0.5, 12);
  // Variance of 0..100 with divisor n - 1 is 100 * 102 / 12 = 858.5.
  expect(r.sd_m).toBeCloseTo(Math.sqrt(858.5) / 100, 12);
  expect([r.low_m, r.high_m].map((v) => Number(v.toFixed(9)))).toEqual([0.025, 0.975]);
  expect([r.most_m, r.most_at]).toEqual([1, "1970-01-05T04:00Z"]);
});

test("against a table of high and low waters the prediction runs along half a cosine", () => {
  const turns = hours(20, 21_600);
  const table = series(
    "predicted",
    turns,
    turns.map((_, i) => (i % 2 === 0 ? 1 : -1)),
    "high-low",
  );
  const t = hours(100);
  const record = series(
    "recorded",
    t,
    t.map((s) => Math.cos((Math.PI * s) / 21_600) + 0.2),
  );
  const r = residualsOf(record, table)!;
  expect([r.low_m, r.high_m].map((v) => Number(v.toFixed(9)))).toEqual([0.2, 0.2]);
});

test("nothing is read across a gap of the prediction, nor outside it; too few common times give nothing", () => {
  const t = hours(100);
  const record = series("recorded", t, t.map(sine));
  const kept = t.filter((_, i) => i < 30 || i >= 60);
  expect(residualsOf(record, series("predicted", kept, kept.map(sine)))!.n).toBe(70);
  const late = t.map((s) => s + 80 * 3600);
  expect(residualsOf(record, series("predicted", late, late.map(sine)))).toBeNull();
});

test("a shift of the record shifts mean and span alike and leaves the spread", () => {
  const t = hours(60);
  const base = t.map((s, i) => sine(s) + (i % 7) / 50);
  const predicted = series("predicted", t, t.map(sine));
  const first = residualsOf(series("recorded", t, base), predicted)!;
  fc.assert(
    fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (by) => {
      const r = residualsOf(
        series(
          "recorded",
          t,
          base.map((z) => z + by),
        ),
        predicted,
      )!;
      expect(r.mean_m - first.mean_m).toBeCloseTo(by, 9);
      expect(r.high_m - first.high_m).toBeCloseTo(by, 9);
      expect(r.sd_m).toBeCloseTo(first.sd_m, 9);
    }),
  );
});
