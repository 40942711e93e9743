// Broms, lateral resistance of piles in cohesive soils (Fundamentals of Foundation Engineering 6.24; scribd.com/document/339904414
// appendix A; worked sheet at pdfcoffee.com, Broms method.xls); FHWA-HI-97-013 through scribd.com/document/588985902; alpha method
// through the pile example at cidian.kuaisou.com.
import { expect, test } from "vitest";
import {
  areaOf,
  bendingLength,
  fixedForce,
  fixedMoment,
  freeDepth,
  freeForce,
  freeMoment,
  girthOf,
  groundReaction,
  heldLength,
  ignoredTop,
  inertiaOf,
  lateral,
  modulusOf,
  SHORT_FREE,
  sideStiffness,
  stakeSlenderness,
  tipResistance,
  woodFactor,
  strengthFactor,
  woodMoment,
} from "../../src/anchors/index.ts";
import { adhesionFactor, stakePullOut } from "../../src/flood/index.ts";
import {
  feet,
  inches,
  M_PER_FT,
  M_PER_IN,
  metres,
  N_PER_LBF,
  pascals,
  psf,
  psi,
  qty,
} from "../../src/units/index.ts";
import { publishedRow, within } from "../support/published-row.ts";

const square = (side: number) => ({ shape: "rectangle", facing: metres(side), along: metres(side) }) as const;

const PILE = "Alpha method, pile example at cidian.kuaisou.com (0.25 m square)";
const pile = square(0.25);
const layer = (su: number, alpha: number, length: number): number =>
  stakePullOut({ alpha: qty(alpha, "1"), su: pascals(su), P: girthOf(pile), L_g: metres(length) });
publishedRow(
  {
    id: "D24",
    source: PILE,
    what: "shaft through 7 m of 45 kPa and 3 m of 85 kPa",
    expected: 373.2,
    unit: "kN",
    tolerance: 0.1,
  },
  () => (layer(45_000, 0.78, 7) + layer(85_000, 0.5, 3)) / 1000,
);
publishedRow(
  { id: "D24", source: PILE, what: "tip in 85 kPa", expected: 47.82, unit: "kN", tolerance: 0.1 },
  () => tipResistance({ su: pascals(85_000), A: areaOf(pile) }) / 1000,
);
publishedRow(
  {
    id: "D24",
    source: PILE,
    what: "our adhesion factor at 45 kPa",
    expected: 0.78,
    unit: "",
    tolerance: 0.005,
  },
  () => adhesionFactor({ su: pascals(45_000) }),
);
publishedRow(
  { id: "D24", source: PILE, what: "our adhesion factor at 85 kPa", expected: 0.5, unit: "", tolerance: 0 },
  () => adhesionFactor({ su: pascals(85_000) }),
);

const FHWA = "Broms short-pile test, FHWA-HI-97-013 (9.25 in timber, L 8 ft, qu 3000 psf)";
const timber = square(9.25 * M_PER_IN);
const q_u = psf(3000);
const K = sideStiffness({ n_1: strengthFactor(q_u), n_2: woodFactor({}), q_u });
const L_b = bendingLength({ E: psi(1.2e6), I: inertiaOf(timber), K });
publishedRow(
  { id: "D25", source: FHWA, what: "beta", expected: 0.0227, unit: "1/in", tolerance: within(0.002, 0.0227) },
  () => M_PER_IN / L_b,
);
publishedRow(
  {
    id: "D25",
    source: FHWA,
    what: "beta L, short up to 2.25",
    expected: 2.18,
    unit: "",
    tolerance: within(0.002, 2.18),
  },
  () => stakeSlenderness({ L: feet(8), L_b }),
);
publishedRow(
  {
    id: "D25",
    source: FHWA,
    what: "moment of the wood at 850 psi",
    expected: 9.34,
    unit: "kip ft",
    tolerance: within(0.002, 9.34),
  },
  () => woodMoment({ S: modulusOf(timber), f_b: psi(850) }) / (N_PER_LBF * M_PER_FT * 1000),
);
test(`${FHWA}: the pile counts as short`, () => {
  expect(stakeSlenderness({ L: inches(96), L_b })).toBeLessThanOrEqual(SHORT_FREE);
});

const BROMS =
  "Broms short free head (formula seen, figures worked out; b 0.305, e 0.61, L 2.44 m, su 47.9 kPa)";
const D26 = { b: metres(0.305), e: metres(0.61), L: metres(2.44), su: pascals(47_900) };
const found = () => lateral({ ...D26, head: "free", wood: null });
const depth = (): number => {
  const t = ignoredTop({ b: D26.b });
  return freeDepth({ l: heldLength({ L: D26.L, t }), e: D26.e, t });
};
const row = (what: string, expected: number, unit: string, got: () => number): void =>
  publishedRow({ id: "D26", source: BROMS, what, expected, unit, tolerance: within(0.005, expected) }, got);
row("horizontal force", 59.5, "kN", () => found().ground_n / 1000);
row("depth f", 0.452, "m", depth);
row("length g", 1.53, "m", () => D26.L - ignoredTop({ b: D26.b }) - depth());
row("largest moment", 77, "kNm", () => found().moment_n_m / 1000);

const SHEET = "Broms free head, worked sheet at pdfcoffee.com (c 50 kPa, B 0.75, e 7.5 m)";
const q = groundReaction({ su: pascals(50_000), b: metres(0.75) });
const t = ignoredTop({ b: metres(0.75) });
publishedRow(
  {
    id: "Broms sheet",
    source: SHEET,
    what: "largest moment under 13.6 kN",
    expected: 117.57,
    unit: "kNm",
    tolerance: 0.005,
  },
  () => freeMoment({ H: qty(13_600, "N"), e: metres(7.5), t, q }) / 1000,
);
publishedRow(
  {
    id: "Broms sheet",
    source: SHEET,
    what: "force at the printed embedment of 2.35 m, rounded there to 5 mm",
    expected: 13.6,
    unit: "kN",
    tolerance: 0.12,
  },
  () => freeForce({ q, f: freeDepth({ l: heldLength({ L: metres(2.35), t }), e: metres(7.5), t }) }) / 1000,
);

for (const [b, L, e, su, H, M] of [
  [0.05, 1, 0.3, 10, 1.07, 0.53],
  [0.089, 1.2, 0.6, 8, 1.38, 1.16],
] as const) {
  const top = metres(1.5 * b);
  const reaction = groundReaction({ su: pascals(su * 1000), b: metres(b) });
  const force = () =>
    freeForce({
      q: reaction,
      f: freeDepth({ l: heldLength({ L: metres(L), t: top }), e: metres(e), t: top }),
    });
  const source = "Broms short free head, worked out apart by iteration, only 1.5 widths ignored";
  const what = `${b} m stake, L ${L}, e ${e} m, su ${su} kPa`;
  publishedRow(
    { id: "c6", source, what: `${what}, force`, expected: H, unit: "kN", tolerance: 0.006 },
    () => force() / 1000,
  );
  publishedRow(
    { id: "c6", source, what: `${what}, moment`, expected: M, unit: "kNm", tolerance: 0.006 },
    () => freeMoment({ H: force(), e: metres(e), t: top, q: reaction }) / 1000,
  );
}

test("Fundamentals of Foundation Engineering 6.107: the moment of a fixed head at the ground is H (0.5 L + 0.75 D)", () => {
  const [D, L] = [0.3, 4];
  const top = metres(1.5 * D);
  const l = heldLength({ L: metres(L), t: top });
  const H = fixedForce({ q: groundReaction({ su: pascals(20_000), b: metres(D) }), l });
  expect(H).toBeCloseTo(9 * 20_000 * D * (L - 1.5 * D), 6);
  expect(fixedMoment({ H, e: metres(0), t: top, l })).toBeCloseTo(H * (0.5 * L + 0.75 * D), 6);
});
