// Skempton's bearing capacity of clay, worked answers at byjus.com and indiabix.com; Terzaghi's square footing, worked answer at sarthaks.com 2516218.
import { expect, test } from "vitest";
import {
  cohesionFromCompression,
  groundCalculations,
  netBearingCapacity,
  squareBearingCapacity,
  stripBearingCapacity,
} from "../../src/ground/index.ts";
import { metres, pascals } from "../../src/units/index.ts";

test("Skempton, worked answer at byjus.com: strip 1.5 m wide, 3 m deep, c 20 kPa carries 140 kPa net", () => {
  const q = stripBearingCapacity({ su: pascals(20_000), B: metres(1.5), D: metres(3) });
  expect(Math.abs(q / 1000 - 140)).toBeLessThanOrEqual(0.1);
});

test("Skempton, worked answer at byjus.com: the rectangle formula meets the strip when it is long", () => {
  const q = netBearingCapacity({ su: pascals(20_000), B: metres(1.5), L: metres(1e6), D: metres(3) });
  expect(Math.abs(q / 1000 - 140)).toBeLessThanOrEqual(0.1);
});

test("Terzaghi, worked answer at sarthaks.com 2516218: square footing on clay, qu 54 kPa, carries 200 kPa", () => {
  const c = cohesionFromCompression({ qu: pascals(54_000) });
  expect(Math.abs(squareBearingCapacity({ c }) / 1000 - 200)).toBeLessThanOrEqual(0.5);
});

test("Skempton (formula in the worked answers at byjus.com and indiabix.com): square 6 su at the surface, never over 9 su", () => {
  const su = pascals(8_000);
  const q = (B: number, L: number, D: number) =>
    netBearingCapacity({ su, B: metres(B), L: metres(L), D: metres(D) });
  expect(q(0.4, 0.4, 0)).toBeCloseTo(48_000, 6);
  expect(q(0.4, 0.4, 5)).toBeCloseTo(72_000, 6);
  expect(q(0.3, 1.2, 0)).toBeCloseTo(42_000, 6);
});

test("the shell's form of a ground formula: keys carry units, a bad foot is a problem with the rule of validity", () => {
  const calc = groundCalculations.find((c) => c.id === "ground.bearing.skempton")!;
  const good = calc.run({ su_pa: 8000, B_m: 0.3, L_m: 1.2, D_m: 0 }, undefined);
  expect(good).toMatchObject({ ok: true, outputs: { q_pa: 42_000 } });
  const bad = calc.run({ su_pa: 8000, B_m: 0, L_m: 1.2, D_m: 0 }, undefined);
  expect(bad.ok).toBe(false);
});
