// AWC DCA 6 (2015 IRC edition) Table 2 and its 2009 IRC addendum; HUD residential structural design guide examples 5.1
// and 5.6 and AWC worked example E1.2a as kept in the tests of a public finite-element library; a public set of worked
// wood design examples.
import { tables } from "@causey/data/tables";
import { describe } from "vitest";
import {
  beamSlenderness,
  beamStabilityFactor,
  codeCalculations,
  criticalBendingStress,
  effectiveLength,
  shearSpan,
  stressRatio,
} from "../../src/codes/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";
import { rectangleInertia, rectangleSectionModulus, uniformDeflection } from "../../src/structure/index.ts";
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
import { publishedRow, within } from "../support/published-row.ts";

function run(id: string, input: JsonObject): JsonObject {
  const outcome = codeCalculations.find((c) => c.id === id)!.run(input, { tables });
  if (!outcome.ok) throw new Error(outcome.problems.map((p) => p.message).join("; "));
  return outcome.outputs;
}

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

const leastSpan = (species: readonly string[], size: string, spacing: number, incised: boolean): number =>
  Math.min(...species.map((s) => deckSpan(s, size, spacing, incised)));

type SpanRow = readonly [
  id: string,
  size: string,
  spacing: number,
  ft: number,
  inch: number,
  source?: string,
];

const TABLE = "AWC DCA 6 (2015 IRC) Table 2";
const ADDENDUM = "AWC DCA 6 (2009 IRC), 2013 addendum, Table 2";

function spanRows(species: readonly string[], words: string, incised: boolean, rows: readonly SpanRow[]) {
  for (const [id, size, spacing, ft, inch, source = TABLE] of rows)
    publishedRow(
      {
        id,
        source,
        what: `${words} ${size} at ${spacing} in spans ${ft} ft ${inch} in`,
        expected: 12 * ft + inch,
        unit: "in",
        tolerance: 1,
      },
      () => leastSpan(species, size, spacing, incised),
    );
}

describe("joist spans of a deck, 40 and 10 psf, wet", () => {
  spanRows(["southern-pine"], "Southern Pine", false, [
    ["S01", "2x6", 12, 9, 11],
    ["S02", "2x6", 16, 9, 0],
    ["S03", "2x8", 12, 13, 1],
    ["S04", "2x8", 16, 11, 10],
    ["S05", "2x8", 24, 9, 8],
    ["S06", "2x10", 16, 14, 0, ADDENDUM],
    ["S07", "2x10", 24, 11, 5, ADDENDUM],
    ["S08", "2x12", 16, 16, 6],
    ["S09", "2x12", 24, 13, 6],
  ]);
  spanRows(
    ["douglas-fir-larch", "hem-fir", "spruce-pine-fir"],
    "least of Douglas Fir-Larch, Hem-Fir, SPF, incised,",
    true,
    [
      ["S10", "2x6", 12, 9, 6],
      ["S11", "2x6", 16, 8, 4],
      ["S12", "2x6", 24, 6, 10],
      ["S13", "2x8", 12, 12, 6],
      ["S14", "2x8", 16, 11, 1],
      ["S15", "2x8", 24, 9, 1],
      ["S16", "2x10", 12, 15, 8],
      ["S17", "2x12", 24, 12, 10],
    ],
  );
  spanRows(["western-cedars", "northern-species"], "least of Western Cedars and Northern Species", false, [
    ["S18", "2x6", 12, 8, 10],
    ["S19", "2x8", 12, 11, 8],
    ["S20", "2x8", 24, 8, 8],
    ["S21", "2x10", 16, 13, 0],
  ]);
});

/** One figure with a share of it as tolerance. */
const row = (
  id: string,
  source: string,
  what: string,
  expected: number,
  unit: string,
  share: number,
  got: () => number,
): void => publishedRow({ id, source, what, expected, unit, tolerance: within(share, expected) }, got);

describe("Hem-Fir No.1 2x8 at 16 in, 30 and 10 psf", () => {
  const hud = "HUD Residential Structural Design Guide, example 5.1";
  const section = { b: inches(1.5), d: inches(7.25) };
  const dry = {
    code: "us-asd-2018",
    species: "hem-fir",
    grade: "no1",
    size: "2x8",
    wet: false,
    incised: false,
    repetitive: true,
  } as const;
  const span = (live: number, dead: number, live_limit: number): number => {
    const loads = { spacing_mm: 406.4, live_pa: live * PA_PER_PSF, dead_pa: dead * PA_PER_PSF, live_limit };
    return (run("timber.joist-span", { ...dry, ...loads })["span_mm"] as number) / 304.8;
  };
  row(
    "S22",
    hud,
    "section modulus S of a 2x8",
    13.14,
    "in3",
    0.001,
    () => rectangleSectionModulus(section) / M_PER_IN ** 3,
  );
  row(
    "S22",
    hud,
    "second moment I of a 2x8",
    47.63,
    "in4",
    0.001,
    () => rectangleInertia(section) / M_PER_IN ** 4,
  );
  row("S23", hud, "bending strength Fb'", 1345, "psi", 0.002, () => {
    const asked = { ...dry, use: "edge", load_duration: "ten-years" };
    return (run("timber.adjusted-values", asked)["fb_pa"] as number) / PA_PER_PSI;
  });
  row("S23", hud, "span by bending", 14.865, "ft", 0.002, () => span(30, 10, 1));
  row("S24", hud, "span by shear with the older Fv 75 psi doubled", 40.8, "ft", 0.002, () => {
    const w = qty(40 * PA_PER_PSF * 16 * M_PER_IN, "N/m");
    return shearSpan({ Fv: psi(150), A: qty(1.5 * 7.25 * M_PER_IN ** 2, "m2"), w }) / M_PER_FT;
  });
  row("S25", hud, "span by live deflection L/360 under 30 psf", 13.8, "ft", 0.01, () => span(30, 0, 360));
  row("S25", hud, "span by live deflection L/360 under 40 psf", 12.5, "ft", 0.01, () => span(40, 0, 360));
});

describe("sideways buckling", () => {
  const awc =
    "AWC ASD structural wood design examples, E1.2a, 3.5 x 15.25 in Douglas Fir-Larch, load at midspan";
  const section = { b: inches(3.5), d: inches(15.25) };
  const le = effectiveLength(inches(240), section.d, "midspan-point");
  const RB = beamSlenderness({ le, ...section });
  const FbE = criticalBendingStress({ Emin: psi(690e3), RB });
  const CL = beamStabilityFactor({ F: stressRatio({ a: FbE, b: psi(1500) }) });
  row("S26", awc, "effective length", 375, "in", 0.002, () => le / M_PER_IN);
  row("S26", awc, "slenderness RB", 21.6, "", 0.002, () => RB);
  row("S27", awc, "critical stress FbE", 1776, "psi", 0.002, () => FbE / PA_PER_PSI);
  row("S27", awc, "stability factor CL", 0.876, "", 0.002, () => CL);
  row("S27", awc, "bending strength Fb'", 1313, "psi", 0.002, () => 1500 * CL);

  const examples = "Wood design examples (studylib 25592182), 6.75 x 30 in, 20 ft free";
  const deep = { b: inches(6.75), d: inches(30) };
  const long = effectiveLength(feet(20), deep.d, "uniform");
  const slender = beamSlenderness({ le: long, ...deep });
  row("S29", examples, "effective length", 481, "in", 0.001, () => long / M_PER_IN);
  row("S29", examples, "slenderness RB", 17.8, "", 0.001, () => slender);
  row(
    "S29",
    examples,
    "critical stress FbE",
    2613,
    "psi",
    0.001,
    () => criticalBendingStress({ Emin: psi(690e3), RB: slender }) / PA_PER_PSI,
  );
});

describe("post", () => {
  const hud = "HUD Residential Structural Design Guide, example 5.6, 4x4 SPF No.2 post of 7.3 ft";
  const post = () =>
    run("timber.column", {
      code: "us-asd-2018",
      species: "spruce-pine-fir",
      grade: "no2",
      size: "4x4",
      length_mm: 7.3 * 304.8,
      wet: false,
      incised: false,
      load_duration: "ten-years",
      load_n: 4800 * N_PER_LBF,
    });
  row("S28", hud, "stability factor CP", 0.438, "", 0.002, () => post()["stability"] as number);
  row(
    "S28",
    hud,
    "compression strength Fc'",
    579,
    "psi",
    0.002,
    () => (post()["strength_pa"] as number) / PA_PER_PSI,
  );
  row("S28", hud, "4800 lb over what it carries", 0.677, "", 0.002, () => post()["utilisation"] as number);
});

row(
  "S64",
  "xcfem/xc verification, Southern Pine No.2 2x10, 16 ft, 77.3 lb/ft, E 9.7 GPa",
  "deflection",
  20.8,
  "mm",
  0.001,
  () => {
    const section = { b: inches(1.5), d: inches(9.25) };
    const w = qty((77.3 * N_PER_LBF) / M_PER_FT, "N/m");
    return 1000 * uniformDeflection({ w, L: feet(16), E: qty(9.7e9, "Pa"), I: rectangleInertia(section) });
  },
);
