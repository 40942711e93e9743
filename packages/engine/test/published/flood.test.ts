// Archimedes' principle; wood density after engineeringtoolbox.com, Wood density d_1616; stake pull-out by the alpha method (from memory).
import { expect, test } from "vitest";
import {
  adhesionFactor,
  buoyantUplift,
  displacedWeight,
  grippingLength,
  stakePullOut,
} from "../../src/flood/index.ts";
import { densityAtMoisture, weightOf } from "../../src/structure/index.ts";
import { kilograms, metres, pascals, qty } from "../../src/units/index.ts";

const density = (v: number) => qty(v, "kg/m3");

test("Archimedes: 1 m2 of 38 mm deck at 600 kg/m3 in seawater lifts 158 N net", () => {
  const U = buoyantUplift({ rho_w: density(1025), rho: density(600), V: qty(0.038, "m3") });
  expect(Math.abs(U - 158)).toBeLessThanOrEqual(1);
});

test("Archimedes: the net uplift is the gross upward force less the own weight; a sinking part lifts nothing", () => {
  const V = qty(0.12, "m3");
  const gross = displacedWeight({ rho_w: density(1010), V });
  const weight = weightOf({ m: kilograms(0.12 * 598) });
  expect(buoyantUplift({ rho_w: density(1010), rho: density(598), V })).toBeCloseTo(gross - weight, 6);
  expect(buoyantUplift({ rho_w: density(1010), rho: density(7850), V })).toBe(0);
});

test.each([
  [0.55, 598],
  [0.42, 466],
] as const)(
  "Wood density (engineeringtoolbox.com d_1616): G %d at 19 per cent moisture weighs %i kg/m3",
  (G, rho) => {
    expect(Math.abs(densityAtMoisture({ G: qty(G, "1"), M: qty(19, "1") }) - rho)).toBeLessThanOrEqual(0.5);
  },
);

test("Alpha method (from memory): a round 50 mm stake 1.2 m in ground of 10 kPa pulls out at 1.88 kN over its full length", () => {
  const su = pascals(10_000);
  const R = stakePullOut({ alpha: adhesionFactor({ su }), su, P: metres(Math.PI * 0.05), L_g: metres(1.2) });
  expect(Math.abs(R / 1000 - 1.88)).toBeLessThanOrEqual(0.005);
});

test("Alpha method (from memory): the factor is 1 to 25 kPa and 0.5 from 70 kPa", () => {
  expect(adhesionFactor({ su: pascals(5_000) })).toBe(1);
  expect(adhesionFactor({ su: pascals(25_000) })).toBe(1);
  expect(adhesionFactor({ su: pascals(70_000) })).toBeCloseTo(0.5, 12);
  expect(adhesionFactor({ su: pascals(90_000) })).toBe(0.5);
});

test("Alpha method (from memory): the top 1.5 widths or 0.2 m of a stake do not grip", () => {
  expect(grippingLength({ L: metres(0.9), b: metres(0.0889) })).toBeCloseTo(0.7, 12);
  expect(grippingLength({ L: metres(0.9), b: metres(0.2) })).toBeCloseTo(0.6, 12);
  expect(grippingLength({ L: metres(0.1), b: metres(0.05) })).toBe(0);
});
