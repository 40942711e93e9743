// OSHA scaffold plank spans (29 CFR 1926.451 of 1985, standard interpretation of 3 October 1985); flat boards and
// bearing under the NDS 2018, from memory.
import { describe, expect, test } from "vitest";
import {
  midspanPointDeflection,
  midspanPointMoment,
  rectangleInertia,
  rectangleSectionModulus,
  uniformMoment,
} from "../../src/structure/index.ts";
import { M_PER_IN, PA_PER_PSF, PA_PER_PSI, feet, inches, poundsForce, qty } from "../../src/units/index.ts";
import { runCode } from "../support/fastener-joint.ts";
import { publishedRow, within } from "../support/published-row.ts";

/** Bending of a plank laid flat under a uniform load [psi]. */
function plankStress(load_psf: number, span_ft: number, b_in: number, d_in: number): number {
  const w = qty(load_psf * PA_PER_PSF * b_in * M_PER_IN, "N/m");
  const M = uniformMoment({ w, L: feet(span_ft) });
  return M / rectangleSectionModulus({ b: inches(b_in), d: inches(d_in) }) / PA_PER_PSI;
}

describe("OSHA plank spans, 29 CFR 1926.451 (1985)", () => {
  const rows = [
    ["dressed 2x10", 25, 8, 9.25, 1.5, 533],
    ["dressed 2x10", 50, 6, 9.25, 1.5, 600],
    ["full 2x10", 25, 10, 10, 2, 469],
    ["full 2x10", 50, 8, 10, 2, 600],
    ["full 2x10", 75, 6, 10, 2, 506],
  ] as const;
  for (const [plank, psf, ft, b, d, expected] of rows) {
    publishedRow(
      {
        id: "S54",
        source: "bending at the span that OSHA (1985) allows, worked out apart",
        what: `${plank} plank, ${psf} psf, ${ft} ft`,
        expected,
        unit: "psi",
        tolerance: within(0.005, expected),
      },
      () => plankStress(psf, ft, b, d),
    );
    test(`OSHA (1985) allows ${ft} ft for a ${plank} plank under ${psf} psf: bending stays under 1500 psi`, () => {
      expect(plankStress(psf, ft, b, d)).toBeLessThan(1500);
    });
  }
});

describe("a 2x6 board laid flat, Southern Pine No.2, wet, 24 in, 300 lb at midspan", () => {
  const row = (what: string, expected: number, unit: string, tolerance: number) =>
    ({
      id: "S55",
      source: "from memory, NDS 2018",
      what: `flat 2x6, 24 in, 300 lb, ${what}`,
      expected,
      unit,
      tolerance,
    }) as const;
  const section = { b: inches(5.5), d: inches(1.5) };
  const P = poundsForce(300);
  const L = feet(2);
  const strength = (key: string): number =>
    runCode("timber.adjusted-values", {
      code: "us-asd-2018",
      species: "southern-pine",
      grade: "no2",
      size: "2x6",
      use: "flat",
      wet: true,
      incised: false,
      repetitive: false,
      load_duration: "ten-years",
    })[key] as number;
  publishedRow(
    row("bending", 873, "psi", within(0.005, 873)),
    () => midspanPointMoment({ P, L }) / rectangleSectionModulus(section) / PA_PER_PSI,
  );
  publishedRow(row("Fb'", 1150, "psi", within(0.005, 1150)), () => strength("fb_pa") / PA_PER_PSI);
  publishedRow(row("deflection", 0.044, "in", 0.0005), () => {
    const E = qty(strength("e_pa"), "Pa");
    return midspanPointDeflection({ P, L, E, I: rectangleInertia(section) }) / M_PER_IN;
  });
});

publishedRow(
  {
    id: "S60",
    source: "from memory, NDS 2018 3.10",
    what: "bearing of Southern Pine on 1-1/2 x 1-1/2 in, wet, Cb 1.25",
    expected: 1065,
    unit: "lb",
    tolerance: within(0.005, 1065),
  },
  () => {
    const { fcp_pa } = runCode("timber.adjusted-values", {
      code: "us-asd-2018",
      species: "southern-pine",
      grade: "no2",
      size: "2x8",
      use: "edge",
      wet: true,
      incised: false,
      repetitive: false,
      load_duration: "ten-years",
    });
    const { Cb } = runCode("us-asd-2018.bearing-area", { l_m: 1.5 * 0.0254 });
    return ((fcp_pa as number) / PA_PER_PSI) * (Cb as number) * 1.5 * 1.5;
  },
);
