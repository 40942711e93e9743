// Rules for moving loads, Civil Engineering Formulas (issuhub.com 4884 p. 83).
import { expect, test } from "vitest";
import {
  equalPairMoment,
  equalPairReaction,
  largestDeflection,
  largestMoment,
  largestReaction,
  midspanPointDeflection,
  structureCalculations,
  unequalPairMoment,
  uniformDeflection,
  uniformShearDeflection,
} from "../../src/structure/index.ts";
import { metres, newtons, qty } from "../../src/units/index.ts";

const near = (value: number, expected: number, share: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

test("Civil Engineering Formulas, moving loads: two equal loads of 100, 30 apart, on a span of 120 give 4593.75", () => {
  near(equalPairMoment({ P: newtons(100), a: metres(30), L: metres(120) }), 4593.75, 1e-4);
  const train = [
    { at: 0, weight: 100 },
    { at: 30, weight: 100 },
  ];
  near(largestMoment(train, 120).value, 4593.75, 1e-9);
  near(
    largestReaction(train, 120).value,
    equalPairReaction({ P: newtons(100), a: metres(30), L: metres(120) }),
    1e-12,
  );
});

test("Civil Engineering Formulas, moving loads: 200 and 100, 36 apart, on a span of 120 give 7290", () => {
  near(unequalPairMoment({ P1: newtons(200), P2: newtons(100), a: metres(36), L: metres(120) }), 7290, 1e-4);
  const train = [
    { at: 0, weight: 200 },
    { at: 36, weight: 100 },
  ];
  near(largestMoment(train, 120).value, 7290, 1e-9);
});

test("Civil Engineering Formulas, moving loads: equal loads further apart than 0.586 of the span count alone", () => {
  const alone = (100 * 120) / 4;
  expect(equalPairMoment({ P: newtons(100), a: metres(0.59 * 120), L: metres(120) })).toBeCloseTo(alone, 9);
  expect(equalPairMoment({ P: newtons(100), a: metres(0.58 * 120), L: metres(120) })).toBeGreaterThan(alone);
});

test("AWC Design Aid No. 6: one moving load deflects a span by P L^3 / 48 EI at most", () => {
  const EI = 21_000;
  const P = newtons(1200);
  const formula = midspanPointDeflection({ P, L: metres(3.6), E: qty(1e9, "Pa"), I: qty(EI / 1e9, "m4") });
  near(largestDeflection([{ at: 0, weight: P }], 3.6).value / EI, formula, 1e-6);
});

test("Eurocode 5 worked example, C24 75x200, 4.5 m, 1.0 kN/m, with shear at G 690: 10.00 mm (xcfem/xc verification)", () => {
  const I = qty((0.075 * 0.2 ** 3) / 12, "m4");
  const bending = uniformDeflection({ w: qty(1000, "N/m"), L: metres(4.5), E: qty(11e9, "Pa"), I });
  const A = qty(0.075 * 0.2, "m2");
  const shear = uniformShearDeflection({ w: qty(1000, "N/m"), L: metres(4.5), G: qty(690e6, "Pa"), A });
  near((bending + shear) * 1000, 10, 0.001);
});

test("the shell's form of the moving train in newtons and millimetres, and a list that does not fit", () => {
  const calc = structureCalculations.find((c) => c.id === "beam.moving-loads")!;
  const good = calc.run(
    { span_mm: 120_000, loads_n: [200, 100], at_mm: [0, 36_000], ei_n_m2: 1e6 },
    undefined,
  );
  expect(good.ok && (good.outputs["moment_n_m"] as number)).toBeCloseTo(7290, 6);
  expect(good.ok && good.working.length).toBe(2);
  const bad = calc.run({ span_mm: 120_000, loads_n: [200, 100], at_mm: [0] }, undefined);
  expect(bad).toMatchObject({ ok: false, problems: [{ place: "at_mm" }] });
});
