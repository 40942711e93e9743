// End bearing of a pile in clay, worked answer at cidian.kuaisou.com: 0.25 m square tip, su 85 kPa, 9 su A = 47.82 kN.
// Floating cube, question at pre-engineering.com/resources/archime.htm: 1 ft cube of 40 lb/ft3 in water of 62.4 lb/ft3.
import { expect, test } from "vitest";
import { floatDraught } from "../../src/flood/index.ts";
import { helixArea, netBearingCapacity, screwPileCapacity } from "../../src/ground/index.ts";
import { KG_PER_LB, M_PER_FT, metres, pascals, qty } from "../../src/units/index.ts";

test("tip of a pile in clay, worked answer at cidian.kuaisou.com: 9 su A of a 0.25 m square tip, su 85 kPa, is 47.8 kN", () => {
  const su = pascals(85_000);
  const q = netBearingCapacity({ su, B: metres(0.25), L: metres(0.25), D: metres(10) });
  const Q = screwPileCapacity({ n: qty(1, "1"), q, A_h: qty(0.25 ** 2, "m2") });
  expect(Math.abs(Q / 1000 - 47.82)).toBeLessThanOrEqual(0.1);
});

test("a helix is the ring around its shaft: with no shaft the whole circle, with a shaft as wide nothing", () => {
  expect(helixArea({ D: metres(0.2), d: metres(0) })).toBeCloseTo(Math.PI / 100, 12);
  expect(helixArea({ D: metres(0.2), d: metres(0.2) })).toBe(0);
});

test("cube of 1 ft and 40 lb/ft3, pre-engineering.com/resources/archime.htm: it swims 0.641 ft deep in water of 62.4 lb/ft3", () => {
  const T = floatDraught({
    m: qty(40 * KG_PER_LB, "kg"),
    rho_w: qty((62.4 * KG_PER_LB) / M_PER_FT ** 3, "kg/m3"),
    A: qty(M_PER_FT ** 2, "m2"),
  });
  expect(Math.abs(T / M_PER_FT - 0.641)).toBeLessThanOrEqual(0.001);
});
