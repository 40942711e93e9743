// Archimedes' principle; wood density after engineeringtoolbox.com, Wood density d_1616; floating blocks of brainmass.com 17592
// and pre-engineering.com; linear waves of USACE EM 1110-2-1100 part II chapter 1; drag after FEMA P-55 and the Aeronautical
// Engineer's Data Book; flood speeds after ASCE 7; debris after FHWA HEC-9; ice after Zabilansky, IAHR 1998; frost after the
// Canadian Foundation Engineering Manual; stake pull-out by the alpha method (from memory).
import { tables } from "@causey/data/tables";
import { expect, test } from "vitest";
import {
  adfreezeSteel,
  adfreezeWood,
  adhesionFactor,
  basicGravity,
  bedReach,
  buoyantForce,
  buoyantUplift,
  displacedWeight,
  dragForce,
  extraDepth,
  familyCoefficient,
  floatLevel,
  grippingLength,
  iceGrip,
  iceStress,
  leastShapeFactor,
  lowerSpeed,
  netLift,
  orbitalSpeed,
  shapeCoefficient,
  stakePullOut,
  surfaceReach,
  timberDensity,
  upperSpeed,
  waterloggedDensity,
  waterloggedMoisture,
  waveLength,
  weightOfPieces,
  wrackCoefficient,
  type FloodPiece,
} from "../../src/flood/index.ts";
import { densityAtMoisture, weightOf } from "../../src/structure/index.ts";
import {
  KG_PER_LB,
  M_PER_FT,
  feet,
  kilograms,
  metres,
  pascals,
  qty,
  type Qty,
} from "../../src/units/index.ts";
import { publishedRow, within } from "../support/published-row.ts";

const density = (v: number): Qty<"kg/m3"> => qty(v, "kg/m3");
const one = (v: number): Qty<"1"> => qty(v, "1");
const speed = (v: number): Qty<"m/s"> => qty(v, "m/s");
const shape = (id: string): Qty<"1"> => shapeCoefficient(tables, id)!;

const block = (density_kg_m3: number, side_m = 1): FloodPiece => ({
  name: "block",
  bottom_m: 0,
  top_m: side_m,
  volume_m3: side_m ** 3,
  density_kg_m3,
});

const WAVE = { H: metres(3), T: qty(10, "s"), d: metres(12) };
const CEM = "Coastal Engineering Manual, example II-1-3 (H 3 m, T 10 s, d 12 m)";
const at = { H: WAVE.H, d: WAVE.d, L: waveLength(WAVE) };
const kd = (2 * Math.PI * WAVE.d) / at.L;
const wave = (id: string, what: string, expected: number, unit: string, got: () => number): void =>
  publishedRow({ id, source: CEM, what, expected, unit, tolerance: within(0.005, expected) }, got);
wave("D20", "tanh of k d", 0.6389, "", () => Math.tanh(kd));
wave("D20", "sinh of k d", 0.8306, "", () => Math.sinh(kd));
wave("D20", "reach of the orbit along the wave at the surface", 2.35, "m", () => surfaceReach(at));
wave("D20", "reach of the orbit upwards at the surface", 1.5, "m", () => surfaceReach(at) * Math.tanh(kd));
wave("D21", "reach of the orbit at the bed", 1.81, "m", () => bedReach(at));
wave("D21", "speed at the bed, worked out from the printed reach", 1.14, "m/s", () =>
  orbitalSpeed({ A: bedReach(at), T: WAVE.T }),
);

publishedRow(
  {
    id: "D27",
    source: "FEMA P-55 (coefficient seen, figure worked out)",
    what: "drag on a square post 0.089 by 0.6 m in salt water at 1 m/s",
    expected: 54.7,
    unit: "N",
    tolerance: within(0.005, 54.7),
  },
  () =>
    dragForce({ rho_w: density(1025), C_d: shape("post-square"), A: qty(0.089 * 0.6, "m2"), V: speed(1) }),
);
publishedRow(
  {
    id: "D28",
    source: "Aeronautical Engineer's Data Book p. 95 (coefficient seen, figure worked out)",
    what: "drag on a side board 0.14 by 3 m in salt water at 0.8 m/s",
    expected: 273,
    unit: "N",
    tolerance: within(0.005, 273),
  },
  () => dragForce({ rho_w: density(1025), C_d: shape("plate-long"), A: qty(0.14 * 3, "m2"), V: speed(0.8) }),
);
publishedRow(
  {
    id: "D29",
    source: "ASCE 7 section 5.4.3 (seaintarchive.org 2004d msg00011)",
    what: "extra depth that stands for 10 ft/s",
    expected: 2,
    unit: "ft",
    tolerance: 0.1,
  },
  () => extraDepth({ a: leastShapeFactor({}), V: speed(10 * M_PER_FT) }) / M_PER_FT,
);
publishedRow(
  {
    id: "D29",
    source: "ASCE 7-10 C5-1 (BGASCE7060702)",
    what: "lower bound of the speed at 3.25 ft",
    expected: 3.25,
    unit: "ft/s",
    tolerance: 0.01,
  },
  () => lowerSpeed({ d: feet(3.25) }) / M_PER_FT,
);
publishedRow(
  {
    id: "D29",
    source: "ASCE 7-10 C5-2 (BGASCE7060702)",
    what: "upper bound of the speed at 3.25 ft",
    expected: 10.23,
    unit: "ft/s",
    tolerance: 0.01,
  },
  () => upperSpeed({ d: feet(3.25) }) / M_PER_FT,
);

publishedRow(
  {
    id: "D30",
    source: "brainmass.com 17592 (question seen, figure worked out)",
    what: "density of a block that floats 40 per cent under in water",
    expected: 400,
    unit: "kg/m3",
    tolerance: 1,
  },
  () => buoyantForce([block(1)], 0.4, density(1000)) / weightOfPieces([block(1)]),
);
publishedRow(
  {
    id: "D30",
    source: "brainmass.com 17592 (question seen, figure worked out)",
    what: "density of the oil in which it floats 93 per cent under",
    expected: 430,
    unit: "kg/m3",
    tolerance: 1,
  },
  () => {
    let [low, high] = [400, 1000];
    while (high - low > 1e-9) {
      const middle = (low + high) / 2;
      if (floatLevel([block(400)], density(middle))! > 0.93) low = middle;
      else high = middle;
    }
    return low;
  },
);
publishedRow(
  {
    id: "D31",
    source: "pre-engineering.com/resources/archime.htm (question seen, figure worked out)",
    what: "draught of a cube of 1 ft, 40 lb/ft3, in water of 62.4 lb/ft3",
    expected: 0.641,
    unit: "ft",
    tolerance: 0.001,
  },
  () => {
    const metric = (lb_ft3: number): number => (lb_ft3 * KG_PER_LB) / M_PER_FT ** 3;
    return floatLevel([block(metric(40), M_PER_FT)], density(metric(62.4)))! / M_PER_FT;
  },
);
publishedRow(
  {
    id: "D32",
    source: "Wood density (engineeringtoolbox.com d_1616)",
    what: "wood of gravity 0.55 at 12 per cent moisture",
    expected: 581,
    unit: "kg/m3",
    tolerance: 1,
  },
  () => timberDensity(one(0.55), "dry-12"),
);
for (const [G, rho] of [
  [0.55, 598],
  [0.42, 466],
] as const)
  publishedRow(
    {
      id: "b1",
      source: "Wood density (engineeringtoolbox.com d_1616)",
      what: `wood of gravity ${G} at 19 per cent moisture`,
      expected: rho,
      unit: "kg/m3",
      tolerance: 0.5,
    },
    () => densityAtMoisture({ G: one(G), M: one(19) }),
  );
publishedRow(
  {
    id: "b1",
    source: "Waterlogged wood, cell wall of gravity 1.54 (from memory)",
    what: "moisture of waterlogged wood of green gravity 0.47",
    expected: 148,
    unit: "%",
    tolerance: 0.5,
  },
  () => waterloggedMoisture({ G_b: one(0.47) }),
);
publishedRow(
  {
    id: "b1",
    source: "Waterlogged wood, cell wall of gravity 1.54 (from memory)",
    what: "its density",
    expected: 1165,
    unit: "kg/m3",
    tolerance: 0.5,
  },
  () => waterloggedDensity({ G_b: one(0.47), M_max: waterloggedMoisture({ G_b: one(0.47) }) }),
);

publishedRow(
  {
    id: "D40",
    source: "Zabilansky, IAHR 1998 (stress seen, figure worked out)",
    what: "lift of 0.2 m ice at 100 kPa on a post of 0.1 m",
    expected: 6.28,
    unit: "kN",
    tolerance: within(0.01, 6.28),
  },
  () => iceGrip({ sigma: pascals(100_000), D: metres(0.1), h: metres(0.2) }) / 1000,
);
for (const [ratio, kPa] of [
  [0.5, 420],
  [6.5, 100],
] as const)
  publishedRow(
    {
      id: "b4",
      source: "Zabilansky, IAHR 1998 (abstract)",
      what: `failure stress of the ice at ${ratio} diameters per thickness`,
      expected: kPa,
      unit: "kPa",
      tolerance: 1e-9,
    },
    () => iceStress({ D: metres(ratio * 0.2), h: metres(0.2) }) / 1000,
  );
publishedRow(
  {
    id: "D41",
    source: "Archimedes (worked out)",
    what: "net lift of 1 m2 of 38 mm deck at 600 kg/m3 in seawater",
    expected: 158,
    unit: "N",
    tolerance: 1,
  },
  () => buoyantUplift({ rho_w: density(1025), rho: density(600), V: qty(0.038, "m3") }),
);
publishedRow(
  {
    id: "D41",
    source: "Archimedes (worked out)",
    what: "the same deck as a piece under water, force less weight",
    expected: 158,
    unit: "N",
    tolerance: 1,
  },
  () => {
    const deck = [{ name: "deck", bottom_m: 0.5, top_m: 0.538, volume_m3: 0.038, density_kg_m3: 600 }];
    return netLift({ B: buoyantForce(deck, 0.6, density(1025)), W: weightOfPieces(deck) });
  },
);

for (const [Fr, B, cd] of [
  [0.2, 0.1, 1.9],
  [0.6, 0.2, 1.45],
  [0.2, 0.35, 1.84],
  [0.5, 0.5, 1.3],
  [0.9, 0.8, 0.28],
] as const)
  publishedRow(
    {
      id: "b2",
      source: "FHWA HEC-9 chapter 4, the larger of both tables",
      what: `drag coefficient of debris at Fr ${Fr} and blockage ${B}`,
      expected: cd,
      unit: "",
      tolerance: 1e-9,
    },
    () => wrackCoefficient(one(Fr), one(B)),
  );
for (const [ratio, cd] of [
  [0.05, 1.9],
  [0.65, 2.9],
  [1.5, 1.9],
  [9, 1.3],
] as const)
  publishedRow(
    {
      id: "b2",
      source: "Drag of bodies (scribd.com/document/591607266, table 9.19)",
      what: `rectangle with length over height ${ratio}, read between the rows`,
      expected: cd,
      unit: "",
      tolerance: 1e-9,
    },
    () => familyCoefficient(tables, "rectangle", ratio)!,
  );
for (const [name, got, kPa] of [
  ["wood", adfreezeWood, 65],
  ["steel", adfreezeSteel, 100],
] as const)
  publishedRow(
    {
      id: "frost",
      source: "Canadian Foundation Engineering Manual, 4th edition (quoted at eng-tips.com 516931)",
      what: `grip of frozen fine ground on ${name}`,
      expected: kPa,
      unit: "kPa",
      tolerance: 0,
    },
    () => got({}) / 1000,
  );

test("Archimedes: the net uplift is the gross upward force less the own weight; a sinking part lifts nothing", () => {
  const V = qty(0.12, "m3");
  const gross = displacedWeight({ rho_w: density(1010), V });
  const weight = weightOf({ m: kilograms(0.12 * 598) });
  expect(buoyantUplift({ rho_w: density(1010), rho: density(598), V })).toBeCloseTo(gross - weight, 6);
  expect(buoyantUplift({ rho_w: density(1010), rho: density(7850), V })).toBe(0);
});

test("Waterlogged wood (from memory): the density by the oven-dry and by the green gravity is one", () => {
  const G_b = basicGravity({ G: one(0.55) });
  const rho = waterloggedDensity({ G_b, M_max: waterloggedMoisture({ G_b }) });
  expect(timberDensity(one(0.55), "waterlogged")).toBeCloseTo(rho, 9);
  expect(rho).toBeGreaterThan(1025);
});

publishedRow(
  {
    id: "c6",
    source: "Alpha method (from memory)",
    what: "pull-out of a round 50 mm stake 1.2 m in ground of 10 kPa over its full length",
    expected: 1.88,
    unit: "kN",
    tolerance: 0.005,
  },
  () => {
    const su = pascals(10_000);
    return (
      stakePullOut({ alpha: adhesionFactor({ su }), su, P: metres(Math.PI * 0.05), L_g: metres(1.2) }) / 1000
    );
  },
);

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
