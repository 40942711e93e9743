// AWC DCA 6 (2015 IRC edition) Table 2 and its 2009 IRC addendum; HUD residential structural design guide example 5.1 and 5.6, AWC worked examples E1.2a and
// E2.4 as kept in the tests of a public finite-element library; NDS 2018 equations.
import { describe, expect, test } from "vitest";
import { tables } from "@causey/data/tables";
import {
  beamSlenderness,
  beamStabilityFactor,
  codeCalculations,
  criticalBendingStress,
  dowelBearingStrength,
  effectiveLength,
  lateralValue,
  reductionTerm,
  shearSpan,
  stressRatio,
} from "../../src/codes/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";
import { boardFeet, rectangleInertia, rectangleSectionModulus } from "../../src/structure/index.ts";
import {
  M_PER_FT,
  M_PER_IN,
  N_PER_LBF,
  PA_PER_PSF,
  PA_PER_PSI,
  feet,
  inches,
  psi,
  qty,
} from "../../src/units/index.ts";

function run(id: string, input: JsonObject): JsonObject {
  const outcome = codeCalculations.find((c) => c.id === id)!.run(input, { tables });
  if (!outcome.ok) throw new Error(outcome.problems.map((p) => p.message).join("; "));
  return outcome.outputs;
}

const IN_PER_FT = 12;
/** "9'-11"" in inches. */
const printed = (ft: number, inch: number): number => ft * IN_PER_FT + inch;

/** Span of one species in inches for the DCA 6 loads: 40 psf live, 10 psf dead, No.2, wet, repetitive, L/360. */
function deckSpan(species: string, size: string, spacing: number, incised: boolean): number {
  const { span_mm } = run("timber.joist-span", {
    code: "us-asd-2018",
    species,
    grade: "no2",
    size,
    spacing_mm: spacing * 25.4,
    live_pa: 40 * PA_PER_PSF,
    dead_pa: 10 * PA_PER_PSF,
    wet: true,
    incised,
    repetitive: true,
    live_limit: 360,
  });
  return (span_mm as number) / 25.4;
}

describe("joist spans of AWC DCA 6 (2015 IRC edition), Table 2", () => {
  const pine = [
    ["2x6", 12, 9, 11],
    ["2x6", 16, 9, 0],
    ["2x8", 12, 13, 1],
    ["2x8", 16, 11, 10],
    ["2x8", 24, 9, 8],
    ["2x12", 16, 16, 6],
    ["2x12", 24, 13, 6],
  ] as const;
  test.each(pine)(
    "AWC DCA 6 (2015 IRC) Table 2: Southern Pine %s at %i in spans %i ft %i in",
    (size, s, ft, inch) => {
      expect(Math.abs(deckSpan("southern-pine", size, s, false) - printed(ft, inch))).toBeLessThanOrEqual(1);
    },
  );

  const western = [
    ["2x6", 12, 9, 6],
    ["2x6", 16, 8, 4],
    ["2x6", 24, 6, 10],
    ["2x8", 12, 12, 6],
    ["2x8", 16, 11, 1],
    ["2x8", 24, 9, 1],
    ["2x10", 12, 15, 8],
    ["2x12", 24, 12, 10],
  ] as const;
  test.each(western)(
    "AWC DCA 6 (2015 IRC) Table 2: least of Douglas Fir-Larch, Hem-Fir, SPF, incised, %s at %i in spans %i ft %i in",
    (size, s, ft, inch) => {
      const spans = ["douglas-fir-larch", "hem-fir", "spruce-pine-fir"].map((x) =>
        deckSpan(x, size, s, true),
      );
      expect(Math.abs(Math.min(...spans) - printed(ft, inch))).toBeLessThanOrEqual(1);
    },
  );

  const cedar = [
    ["2x6", 12, 8, 10],
    ["2x8", 12, 11, 8],
    ["2x8", 24, 8, 8],
    ["2x10", 16, 13, 0],
  ] as const;
  test.each(cedar)(
    "AWC DCA 6 (2015 IRC) Table 2: least of Western Cedars and Northern Species %s at %i in spans %i ft %i in",
    (size, s, ft, inch) => {
      const spans = ["western-cedars", "northern-species"].map((x) => deckSpan(x, size, s, false));
      expect(Math.abs(Math.min(...spans) - printed(ft, inch))).toBeLessThanOrEqual(1);
    },
  );
});

test.each([
  ["2x10", 16, 14, 0],
  ["2x10", 24, 11, 5],
] as const)(
  "AWC DCA 6 (2009 IRC), 2013 addendum, Table 2: Southern Pine %s at %i in spans %i ft %i in",
  (size, s, ft, inch) => {
    expect(Math.abs(deckSpan("southern-pine", size, s, false) - printed(ft, inch))).toBeLessThanOrEqual(1);
  },
);

const near = (value: number, expected: number, share: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

test("HUD Residential Structural Design Guide, example 5.1: 2x8 has S 13.14 in3 and I 47.63 in4", () => {
  const section = { b: inches(1.5), d: inches(7.25) };
  near(rectangleSectionModulus(section) / M_PER_IN ** 3, 13.14, 0.001);
  near(rectangleInertia(section) / M_PER_IN ** 4, 47.63, 0.001);
});

describe("HUD Residential Structural Design Guide, example 5.1: Hem-Fir No.1 2x8 at 16 in, 30 + 10 psf", () => {
  const dry = {
    code: "us-asd-2018",
    species: "hem-fir",
    grade: "no1",
    size: "2x8",
    wet: false,
    incised: false,
    repetitive: true,
  } as const;
  test("HUD example 5.1: Fb' 1345 psi", () => {
    const { fb_pa } = run("timber.adjusted-values", { ...dry, use: "edge", load_duration: "ten-years" });
    near((fb_pa as number) / PA_PER_PSI, 1345, 0.002);
  });
  test("HUD example 5.1: bending span 14.865 ft", () => {
    const loads = { spacing_mm: 406.4, live_pa: 30 * PA_PER_PSF, dead_pa: 10 * PA_PER_PSF, live_limit: 1 };
    const { span_mm, governs } = run("timber.joist-span", { ...dry, ...loads });
    expect(governs).toBe("bending");
    near((span_mm as number) / 304.8, 14.865, 0.002);
  });
  test("HUD example 5.1: shear span 40.8 ft with the older Fv 75 psi doubled", () => {
    const w = qty((40 * PA_PER_PSF * 16 * M_PER_IN) / 1, "N/m");
    const span = shearSpan({ Fv: psi(150), A: qty(1.5 * 7.25 * M_PER_IN ** 2, "m2"), w });
    near(span / M_PER_FT, 40.8, 0.002);
  });
  test.each([
    [30, 13.8],
    [40, 12.5],
  ] as const)("HUD example 5.1: live deflection L/360 under %i psf at %d ft", (live, ft) => {
    const loads = { spacing_mm: 406.4, live_pa: live * PA_PER_PSF, dead_pa: 0, live_limit: 360 };
    const { span_mm, governs } = run("timber.joist-span", { ...dry, ...loads });
    expect(governs).toBe("deflection");
    near((span_mm as number) / 304.8, ft, 0.01);
  });
});

describe("AWC ASD structural wood design examples, E1.2a: 3.5 x 15.25 in Douglas Fir-Larch, load at midspan", () => {
  const section = { b: inches(3.5), d: inches(15.25) };
  const le = effectiveLength(inches(240), section.d, "midspan-point");
  const RB = beamSlenderness({ le, ...section });
  test("AWC example E1.2a: effective length 375 in, RB 21.6", () => {
    near(le / M_PER_IN, 375, 0.002);
    near(RB, 21.6, 0.002);
  });
  test("AWC example E1.2a: FbE 1776 psi, CL 0.876, Fb' 1313 psi", () => {
    const FbE = criticalBendingStress({ Emin: psi(690e3), RB });
    near(FbE / PA_PER_PSI, 1776, 0.002);
    const CL = beamStabilityFactor({ F: stressRatio({ a: FbE, b: psi(1500) }) });
    near(CL, 0.876, 0.002);
    near(1500 * CL, 1313, 0.002);
  });
});

test("Wood design examples (studylib 25592182): 6.75 x 30 in, 20 ft free, le 481 in, RB 17.80, FbE 2613 psi", () => {
  const section = { b: inches(6.75), d: inches(30) };
  const le = effectiveLength(feet(20), section.d, "uniform");
  const RB = beamSlenderness({ le, ...section });
  near(le / M_PER_IN, 481, 0.001);
  near(RB, 17.8, 0.001);
  near(criticalBendingStress({ Emin: psi(690e3), RB }) / PA_PER_PSI, 2613, 0.001);
});

test("HUD Residential Structural Design Guide, example 5.6: 4x4 SPF post 7.3 ft, CP 0.438, Fc' 579 psi", () => {
  const { cp, fc_pa } = run("timber.adjusted-values", {
    code: "us-asd-2018",
    species: "spruce-pine-fir",
    grade: "no2",
    size: "4x4",
    use: "edge",
    wet: false,
    incised: false,
    repetitive: false,
    load_duration: "ten-years",
    column_length_mm: 7.3 * 304.8,
  });
  near(cp as number, 0.438, 0.002);
  near((fc_pa as number) / PA_PER_PSI, 579, 0.002);
});

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
