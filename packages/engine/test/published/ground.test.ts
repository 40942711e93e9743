// Skempton's bearing capacity of clay, worked answers at byjus.com and indiabix.com; Terzaghi's square footing, worked
// answer at sarthaks.com 2516218; Bekker's law with values of Wong, Theory of Ground Vehicles (2008).
import { tables } from "@causey/data/tables";
import { expect, test } from "vitest";
import {
  bekkerGround,
  cohesionFromCompression,
  creepSettlement,
  groundCalculations,
  netBearingCapacity,
  pressureOf,
  primarySettlement,
  sinkageOf,
  squareBearingCapacity,
  stripBearingCapacity,
} from "../../src/ground/index.ts";
import { metres, pascals, qty } from "../../src/units/index.ts";
import { publishedRow, within } from "../support/published-row.ts";

const skempton = "Skempton, worked answer at byjus.com";

publishedRow(
  {
    id: "D22 strip",
    source: skempton,
    what: "net capacity of a strip 1.5 m wide, 3 m deep, c 20 kPa",
    expected: 140,
    unit: "kPa",
    tolerance: 0.1,
  },
  () => stripBearingCapacity({ su: pascals(20_000), B: metres(1.5), D: metres(3) }) / 1000,
);

publishedRow(
  {
    id: "D22 long rectangle",
    source: skempton,
    what: "the rectangle formula meets the strip when it is long",
    expected: 140,
    unit: "kPa",
    tolerance: 0.1,
  },
  () => netBearingCapacity({ su: pascals(20_000), B: metres(1.5), L: metres(1e6), D: metres(3) }) / 1000,
);

publishedRow(
  {
    id: "D23 square footing",
    source: "Terzaghi, worked answer at sarthaks.com 2516218",
    what: "square footing 4 m x 4 m on clay, qu 54 kPa",
    expected: 200,
    unit: "kPa",
    tolerance: 0.5,
  },
  () => squareBearingCapacity({ c: cohesionFromCompression({ qu: pascals(54_000) }) }) / 1000,
);

const law = (id: string) => bekkerGround(tables.ground.terrains.find((t) => t.id === id)!);
const wong = "Wong, Theory of Ground Vehicles (2008), values as quoted in a public source file";

for (const [id, terrain, b_m, p_kpa, z_mm] of [
  ["D33", "lete-sand", 0.05, 100, 4.35],
  ["D34", "snow-us", 0.15, 10, 142.5],
  ["D35", "clayey-soil-55", 0.1, 60, 10.86],
] as const)
  publishedRow(
    {
      id: `${id} ${terrain}`,
      source: wong,
      what: `sinkage of a plate ${b_m} m wide under ${p_kpa} kPa, ${terrain}`,
      expected: z_mm,
      unit: "mm",
      tolerance: within(0.01, z_mm),
    },
    () => sinkageOf(law(terrain), b_m, pascals(p_kpa * 1000))! * 1000,
  );

publishedRow(
  {
    id: "D36 heavy-clay-40",
    source: wong,
    what: "pressure of a plate 0.1 m wide at 0.03 m, heavy clay 40 %",
    expected: 82.7,
    unit: "kPa",
    tolerance: within(0.01, 82.7),
  },
  () => pressureOf(law("heavy-clay-40"), 0.1, metres(0.03))! / 1000,
);

const layer = { H: metres(1), e0: qty(0, "1") };
publishedRow(
  {
    id: "consolidation of 1 m",
    source: "Consolidation and creep formulas, from memory",
    what: "consolidation of 1 m, Cc/(1+e0) 0.3, 5 kPa and 2 kPa more",
    expected: 44,
    unit: "mm",
    tolerance: 0.5,
  },
  () => primarySettlement({ ...layer, Cc: qty(0.3, "1"), s0: pascals(5000), ds: pascals(2000) }) * 1000,
);
publishedRow(
  {
    id: "creep of 1 m",
    source: "Consolidation and creep formulas, from memory",
    what: "creep of the same from 30 days to a year, Ca/Cc 0.06",
    expected: 19.5,
    unit: "mm",
    tolerance: 0.1,
  },
  () =>
    creepSettlement({ ...layer, Ca: qty(0.018, "1"), t: qty(365 * 24, "h"), tp: qty(30 * 24, "h") }) * 1000,
);

for (const [name, B, L, D, kPa] of [
  ["square at the surface, 6 su", 0.4, 0.4, 0, 48],
  ["square deep down, never over 9 su", 0.4, 0.4, 5, 72],
  ["pad 0.3 m x 1.2 m", 0.3, 1.2, 0, 42],
] as const)
  publishedRow(
    {
      id: `Skempton ${name}`,
      source: "Skempton (formula in the worked answers at byjus.com and indiabix.com)",
      what: `${name}, su 8 kPa`,
      expected: kPa,
      unit: "kPa",
      tolerance: 1e-9,
    },
    () => netBearingCapacity({ su: pascals(8000), B: metres(B), L: metres(L), D: metres(D) }) / 1000,
  );

test("the shell's form of a ground formula: keys carry units, a bad foot is a problem with the rule of validity", () => {
  const calc = groundCalculations.find((c) => c.id === "ground.bearing.skempton")!;
  const good = calc.run({ su_pa: 8000, B_m: 0.3, L_m: 1.2, D_m: 0 }, { tables });
  expect(good).toMatchObject({ ok: true, outputs: { q_pa: 42_000 } });
  const bad = calc.run({ su_pa: 8000, B_m: 0, L_m: 1.2, D_m: 0 }, { tables });
  expect(bad.ok).toBe(false);
});
