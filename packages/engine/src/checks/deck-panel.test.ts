import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tables } from "@causey/data/tables";
import { grating } from "../../test/support/deck-kits.ts";
import { designCode } from "../codes/index.ts";
import { checkDeckPanel } from "./deck-panel.ts";
import type { CheckContext } from "./input.ts";
import type { CheckResult } from "./types.ts";

const code = designCode("us-asd-2018");
if (!code.ok) throw new Error("no code");
const context: CheckContext = { tables, code: code.value, units: "metric" };
const label = { id: "deck", kind: "deck", name: "Grating", parts: ["M1"] } as const;
const cart = {
  name: "Cart",
  empty_kg: 20,
  load_kg: 180,
  wet_kg: 0,
  width_mm: null,
  length_mm: null,
  track_mm: 100,
  axle_distance_mm: 0,
  axles: 1,
  wheel_width_mm: 50,
  wheel_contact_mm: 60,
} as const;
const walkers = { name: "v", people: 2, person_kg: 95, spacing_mm: 1500, cart: null } as const;

const judged = (r: CheckResult | undefined) => {
  if (r?.status !== "pass" && r?.status !== "fail") throw new Error(`not judged: ${r?.status}`);
  return r;
};
const results = (
  span_m: number,
  deck = grating,
  demands: Parameters<typeof checkDeckPanel>[1] = [walkers],
) => {
  const [bending, sag, hold] = checkDeckPanel({ deck, span_m }, demands, label, context);
  return { bending: judged(bending), sag: judged(sag), hold: hold! };
};

/** 300 lb, and its patch of 2.5 in. */
const P = 1334.4664845;
const C = 0.0635;

describe("a grating under one foot at its edge (by hand: simple span, width c + 0.3 L)", () => {
  const L = 0.6;
  const width = C + 0.3 * L;
  const own = 18 * 9.80665;

  test("moment in one metre of width", () => {
    const { bending } = results(L);
    expect(bending.demand).toBeCloseTo((P * (L / 4 - C / 8)) / width + (own * L ** 2) / 8, 6);
    expect(bending.capacity).toBe(2000);
    expect(bending.unit).toBe("N");
    expect(bending.working.some((s) => s.source.status === "practice")).toBe(true);
    expect(bending.from_memory).toBe(true);
  });

  test("deflection with creep on the own weight, against L/200 and 1/4 in", () => {
    const { sag } = results(L);
    const live = ((P / width) * L ** 3) / (48 * 9500);
    expect(sag.demand).toBeCloseTo(live + (1.5 * 5 * own * L ** 4) / (384 * 9500), 9);
    expect(sag.capacity).toBeCloseTo(L / 200, 12);
    expect(results(1.4).sag.capacity).toBeCloseTo(0.00635, 9);
  });

  test("bars of steel grating spread half as far", () => {
    const { bending } = results(L, { ...grating, kind: "bar-grating" });
    expect(bending.demand).toBeCloseTo((P * (L / 4 - C / 8)) / (C + 0.15 * L) + (own * L ** 2) / 8, 6);
  });

  test("the fasteners' hold cannot be checked, and says of what", () => {
    const { hold } = results(L);
    expect(hold.status === "cannot-check" && hold.missing[0]).toMatch(
      /tested hold of "mesh-clip".* 6 of them/,
    );
  });
});

test("a cart: two wheels whose widths overlap share one width (by hand)", () => {
  const L = 0.6;
  const { bending } = results(L, grating, [{ ...walkers, cart }]);
  const axle = 200 * 9.80665 * 1.25;
  const moment = (load: number, width: number): number => (load * (L / 4 - 0.06 / 8)) / width;
  const expected = Math.max(moment(axle / 2, 0.05 + 0.18), moment(axle, 0.05 + 0.1 + 0.18));
  expect(bending.demand).toBeCloseTo(expected + (18 * 9.80665 * L ** 2) / 8, 6);
  expect(bending.governs).toContain("both wheels");
});

test("two axles nearer than the span act together", () => {
  const two = { ...cart, axles: 2 as const, axle_distance_mm: 200 };
  const one = { ...cart, axles: 1 as const, load_kg: 80 };
  const of = (c: typeof two | typeof one): number =>
    results(1, grating, [{ ...walkers, cart: c }]).bending.demand;
  expect(of(two)).toBeGreaterThan(of(one));
});

test("soaked panels weigh more, and creep counts for the lasting part alone", () => {
  const soaked = results(0.6, { ...grating, soak_kg_m2: 10 });
  expect(soaked.bending.demand - results(0.6).bending.demand).toBeCloseTo((10 * 9.80665 * 0.36) / 8, 6);
  const creeping = results(0.6, { ...grating, strength: { ...grating.strength, creep: 3 } });
  const dead = (5 * 18 * 9.80665 * 0.6 ** 4) / (384 * 9500);
  expect(creeping.sag.demand - results(0.6).sag.demand).toBeCloseTo(1.5 * dead, 9);
});

describe("backwards", () => {
  test("a failing panel names a spacing that passes, and the next step does not", () => {
    const weak = { ...grating, strength: { ...grating.strength, moment_n: 700 } };
    const { bending } = results(0.9, weak);
    expect(bending.status).toBe("fail");
    const mm = Number(/at most (\d+) mm apart/.exec(bending.backwards.change!)![1]);
    expect(results(mm / 1000, weak).bending.status).toBe("pass");
    expect(results(mm / 1000 + 0.025, weak).bending.status).toBe("fail");
  });

  test("the foot that is said to be carried is carried, a heavier one is not", () => {
    const kg = (newtons: number): number => newtons / 9.80665;
    const text = results(0.6).bending.backwards.carries;
    const kn = Number(/at most ([\d.]+) kN/.exec(text)![1]);
    const under = (newtons: number) =>
      results(0.6, grating, [{ ...walkers, person_kg: kg(newtons) }]).bending.utilisation;
    expect(under(kn * 1000)).toBeCloseTo(1, 2);
    expect(under(kn * 1010)).toBeGreaterThan(1);
  });
});

test("monotony: a wider spacing, a heavier person or a weaker panel never lowers the utilisation", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.2, max: 1.2, noNaN: true }),
      fc.double({ min: 0, max: 0.3, noNaN: true }),
      fc.double({ min: 60, max: 200, noNaN: true }),
      fc.double({ min: 1, max: 2, noNaN: true }),
      (span, more, kg, factor) => {
        const at = (s: number, person_kg: number, by: number) => {
          const strength = { ...grating.strength };
          const weaker = {
            ...grating,
            strength: {
              ...strength,
              moment_n: strength.moment_n / by,
              stiffness_nm: strength.stiffness_nm / by,
            },
          };
          const r = results(s, weaker, [{ ...walkers, person_kg }]);
          return [r.bending.utilisation, r.sag.utilisation];
        };
        const base = at(span, kg, 1);
        for (const other of [at(span + more, kg, 1), at(span, kg * factor, 1), at(span, kg, factor)])
          other.forEach((u, i) => expect(u).toBeGreaterThanOrEqual(base[i]! - 1e-9));
      },
    ),
    { numRuns: 80 },
  );
});
