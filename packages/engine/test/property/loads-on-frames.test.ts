import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Frame } from "../../src/checks/frame.ts";
import { frameStructure, statePeaks } from "../../src/checks/frame-analysis.ts";
import { governing, governingAlone } from "../../src/checks/stringer-demand.ts";
import { stringerModel, type StringerCheck } from "../../src/checks/stringer-model.ts";
import { cartCase, fileCase, pointCase, type LoadCase } from "../../src/checks/walk-demand.ts";
import { usAsd2018 } from "../../src/codes/index.ts";
import { fieldCart } from "../support/straight-walkway.ts";

const context = { tables, code: usAsd2018, units: "metric" } as const;
const CHECKS: readonly StringerCheck[] = ["bending", "shear", "deflection"];
/** A failure is told as found: shrinking it would work out hundreds of frames. */
const RUNS = { numRuns: 12, endOnFailure: true };

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

interface Shape {
  readonly span: number;
  readonly gaps: readonly number[];
  readonly size: string;
  readonly out: number;
  readonly rows: number;
  readonly dead: number;
}

const shape: fc.Arbitrary<Shape> = fc.record({
  span: real(1.2, 3),
  gaps: fc.array(real(0.25, 0.7), { minLength: 1, maxLength: 2 }),
  size: fc.constantFrom("2x6", "2x8", "2x10"),
  out: real(-0.05, 0.07),
  rows: fc.integer({ min: 3, max: 5 }),
  dead: real(5, 30),
});

/** A module under mesh: rows of cross pieces evenly from end to end, feet as far out as `out` past the stringers. */
function frameOf({ span, gaps, size, out, rows, dead }: Shape): Frame {
  const width = gaps.reduce((a, b) => a + b, 0);
  let y = -width / 2;
  const positions_m = [y, ...gaps.map((g) => (y += g))];
  const step = span / (rows - 1);
  return {
    name: "module",
    span_m: span,
    positions_m,
    size,
    lumber: { species: "southern-pine", grade: "no2", incised: false },
    clear_width_m: width + 2 * out,
    brace_m: step,
    has_boards: false,
    dead_kg_m: dead,
    build: {
      rows: Array.from({ length: rows }, (_, i) => ({ x_m: i * step, size: "2x4", lay: "flat" })),
      boards: [],
      stringer_m: 0.0381,
      platform_sill_m: null,
    },
  };
}

const area = (area_pa: number): LoadCase => ({
  name: "all over",
  loads: [],
  cart: null,
  explain: () => undefined,
  area_pa,
});

const load: fc.Arbitrary<LoadCase> = fc.oneof(
  fc
    .tuple(fc.integer({ min: 1, max: 4 }), real(50, 150), real(0.5, 2))
    .map(([n, kg, apart]) => fileCase("file", n, kg, apart)),
  fc
    .tuple(
      real(20, 200),
      fc.integer({ min: 0, max: 3 }),
      real(0.5, 2),
      fc.constantFrom(1 as const, 2 as const),
    )
    .map(([kg, n, apart, axles]) =>
      cartCase(
        "cart",
        { ...fieldCart, track_mm: 200, wheel_width_mm: 50, axles, axle_distance_mm: axles === 2 ? 600 : 0 },
        kg,
        n,
        80,
        apart,
      ),
    ),
  real(500, 6000).map(area),
);

const heavier = (c: LoadCase, k: number): LoadCase => ({
  ...c,
  loads: c.loads.map((l) => ({ ...l, weight: l.weight * k })),
  ...(c.area_pa === undefined ? {} : { area_pa: c.area_pa * k }),
});

function use(frame: Frame, check: StringerCheck, cases: readonly LoadCase[]): number {
  const model = stringerModel(frame, context);
  if (!model.ok) throw new Error(JSON.stringify(model.problems));
  return governing(check, model.value, cases).utilisation;
}

function useAlone(frame: Frame, check: StringerCheck, cases: readonly LoadCase[]): number {
  const model = stringerModel(frame, context);
  if (!model.ok) throw new Error(JSON.stringify(model.problems));
  return governingAlone(check, model.value, cases).utilisation;
}

describe("stringers of random modules, by themselves and as a frame with stiff cross pieces", () => {
  test("heavier loads, heavier own weight or one more case never lower a utilisation", () => {
    fc.assert(
      fc.property(shape, load, load, real(1, 3), (s, a, b, k) => {
        const frame = frameOf(s);
        const heavy = frameOf({ ...s, dead: s.dead * k });
        for (const check of CHECKS) {
          const before = use(frame, check, [a]);
          const least = before * (1 - 1e-9);
          expect(use(frame, check, [heavier(a, k)])).toBeGreaterThanOrEqual(least);
          expect(use(frame, check, [a, { ...b, name: "another" }])).toBeGreaterThanOrEqual(least);
          if (check !== "deflection") expect(use(heavy, check, [a])).toBeGreaterThanOrEqual(least);
        }
      }),
      RUNS,
    );
  });

  // In a frame about as wide as long, stiff cross pieces hand a load to more stringers as the module grows longer: a
  // shear or a sag over its limit may then fall. So this holds for each stringer by itself, and for the bending of two.
  test("a longer module never lowers a utilisation", () => {
    fc.assert(
      fc.property(shape, load, real(1, 1.5), (s, a, k) => {
        const [short, long] = [frameOf(s), frameOf({ ...s, span: s.span * k })];
        const cases = [a, pointCase("metric")];
        for (const check of CHECKS)
          expect(useAlone(long, check, cases)).toBeGreaterThanOrEqual(
            useAlone(short, check, cases) * (1 - 1e-9),
          );
        if (s.gaps.length === 1)
          expect(use(long, "bending", cases)).toBeGreaterThanOrEqual(
            use(short, "bending", cases) * (1 - 1e-9),
          );
      }),
      RUNS,
    );
  });

  test("a module turned round its middle, and its loads walking the other way, mirrors every envelope", () => {
    fc.assert(
      fc.property(shape, load, (s, a) => {
        const there = lines(frameOf(s), a);
        const back = lines(frameOf({ ...s, gaps: [...s.gaps].reverse() }), turned(a));
        const [n, S] = [s.gaps.length + 1, there.moment.length / (s.gaps.length + 1)];
        // A moment is read on both sides of a row, whose twist makes a small step there.
        for (const [kind, share] of [
          ["moment", 1e-6],
          ["sag", 1e-6],
        ] as const) {
          const scale = Math.max(...there[kind]);
          for (let i = 0; i < n; i++)
            for (let x = 0; x < S; x++) {
              const mirror = back[kind][(n - 1 - i) * S + (S - 1 - x)]!;
              expect(Math.abs(there[kind][i * S + x]! - mirror)).toBeLessThanOrEqual(share * scale);
            }
        }
      }),
      RUNS,
    );
  });

  test("a load over the deck is shared out whole: stringer shears at the ends sum to half of it", () => {
    fc.assert(
      fc.property(shape, real(500, 6000), (s, p) => {
        const frame = frameOf(s);
        const model = stringerModel(frame, context);
        if (!model.ok) throw new Error("no model");
        const parts = frame.positions_m.map((_, i) => alone(frame, i, p));
        const sum = parts.reduce((x, y) => x + y, 0);
        expect(sum / ((p * frame.clear_width_m * s.span) / 2)).toBeCloseTo(1, 9);
        expect(governing("shear", model.value, [area(p)]).live).toBeGreaterThanOrEqual(
          Math.max(...parts.slice(0, Math.ceil(parts.length / 2))) * (1 - 1e-9),
        );
      }),
      RUNS,
    );
  });
});

const turned = (c: LoadCase): LoadCase => ({ ...c, loads: c.loads.map((l) => ({ ...l, at: -l.at })) });

function lines(frame: Frame, c: LoadCase): { moment: Float64Array; sag: Float64Array } {
  const structure = frameStructure(frame, [c], context);
  if (!structure?.ok) throw new Error("no structure");
  const peaks = statePeaks(structure.value, { name: "stiff", ends: "stiff" }, [c]);
  return { moment: peaks.lines.moment.most, sag: peaks.lines.sag.most };
}

/** End shear of one stringer: its deck by the pressure by half of the span, worked apart from the engine. */
function alone({ positions_m: y, clear_width_m, span_m }: Frame, i: number, p: number): number {
  const from = i === 0 ? -clear_width_m / 2 : (y[i - 1]! + y[i]!) / 2;
  const to = i === y.length - 1 ? clear_width_m / 2 : (y[i]! + y[i + 1]!) / 2;
  return (p * (to - from) * span_m) / 2;
}
