// xcfem/xc verification of the AWC worked examples; NDS lateral values as quoted by public pages; public lumber charts.
import { expect, test } from "vitest";
import { tables } from "@causey/data/tables";
import { dowelBearingStrength, lateralValue, reductionTerm } from "../../src/codes/index.ts";
import { boardFeet } from "../../src/structure/index.ts";
import { N_PER_LBF, inches, psi, qty } from "../../src/units/index.ts";

const near = (value: number, expected: number, share: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

/** Lateral value of a nail in pounds, both pieces of one wood, 10 diameters or more in the main piece. */
function nail(diameter: number, gravity: number, side: number, main: number, yieldPsi: number): number {
  const Fe = dowelBearingStrength({ G: qty(gravity, "1") });
  const D = inches(diameter);
  const dowel = {
    D,
    lm: inches(main),
    ls: inches(side),
    Fem: Fe,
    Fes: Fe,
    Fyb: psi(yieldPsi),
    Rd: reductionTerm({ D }),
  };
  return lateralValue(dowel).value / N_PER_LBF;
}
test("xcfem/xc verification of the AWC nail example: 10d, Douglas Fir-Larch, 3/4 in side, 105.1 lb", () =>
  near(nail(0.148, 0.5, 0.75, 2.25, 90e3), 105.1, 0.005));
test("NDS 2005 Table 11N (as quoted on seaintarchive.org, 2009): 16d, Douglas Fir-Larch, 1-1/2 in side, 141 lb", () =>
  expect(Math.abs(nail(0.162, 0.5, 1.5, 2, 90e3) - 141)).toBeLessThanOrEqual(1));
test("NDS Table 11N (as quoted by a trade body, sbcindustry.com): 0.148 in nail, SPF, 1-1/2 in side, 100 lb", () =>
  expect(Math.abs(nail(0.148, 0.42, 1.5, 1.5, 90e3) - 100)).toBeLessThanOrEqual(1));
test("NDS 2018 Table 12N (as quoted on woodengineering.com): 0.148 in nail, Southern Pine, 1-1/2 in side, 128 lb", () =>
  expect(Math.abs(nail(0.148, 0.55, 1.5, 1.5, 90e3) - 128)).toBeLessThanOrEqual(1));

test.each([
  [2, 6, 12, 12],
  [2, 10, 16, 26.67],
  [1, 6, 16, 8],
] as const)(
  "Lumber dimension charts (sawdustmaking.com): %ix%i, %i ft holds %d board feet",
  (t, w, L, bf) => {
    expect(Math.abs(boardFeet({ t: qty(t, "1"), w: qty(w, "1"), L: qty(L, "1") }) - bf)).toBeLessThanOrEqual(
      0.005,
    );
  },
);

test.each([
  ["2x4", 1.5, 3.5, 38, 89],
  ["2x6", 1.5, 5.5, 38, 140],
  ["2x8", 1.5, 7.25, 38, 184],
  ["2x12", 1.5, 11.25, 38, 286],
  ["5/4x6", 1, 5.5, 25, 140],
] as const)(
  "Lumber sizes (vterrain.org, woodsize charts): %s is %d x %d in, %i x %i mm",
  (id, t, w, tmm, wmm) => {
    const size = tables.sizes.find((s) => s.id === id)!;
    expect([size.thickness_in, size.width_in]).toEqual([t, w]);
    expect([Math.round(size.thickness_in * 25.4), Math.round(size.width_in * 25.4)]).toEqual([tmm, wmm]);
  },
);
