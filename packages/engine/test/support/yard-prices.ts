import type { CuttingPlan, CuttingProblem } from "../../src/fabrication/types.ts";
import type { Price, SizeCutting, SizePlan } from "../../src/materials/index.ts";

const FT = 304.8;

const price = (item: string, length_mm: number | null, pack: number, amount: number): Price => ({
  item,
  description: length_mm === null ? item : `${item} x ${Math.round(length_mm / FT)} ft`,
  length_mm,
  pack,
  price: amount,
  currency: "USD",
  date: "2027-02-01",
  source: "invented for tests",
});

/** An invented price list: longer sticks cost a little more by the foot. */
export const yardPrices: readonly Price[] = [
  ...[8, 10, 12, 16].flatMap((ft) => [
    price("2x2", ft * FT, 1, Math.round(ft * 28 + ft * ft) / 100),
    price("2x4", ft * FT, 1, Math.round(ft * 62 + ft * ft * 2) / 100),
    price("2x6", ft * FT, 1, Math.round(ft * 94 + ft * ft * 3) / 100),
    price("2x8", ft * FT, 1, Math.round(ft * 131 + ft * ft * 3) / 100),
    price("2x10", ft * FT, 1, Math.round(ft * 175 + ft * ft * 4) / 100),
  ]),
  price("screw-10x3", null, 100, 14.75),
  price("screw-10x3", null, 1000, 109.5),
  price("mesh-clip", null, 50, 9.99),
  price("mesh 1219x762", null, 1, 21.4),
];

/** A plain cutting plan for tests: longest piece first, into the first stick with room, all of the longest stock. */
export function firstFitPlan({ stock, pieces, kerf_mm }: CuttingProblem): CuttingPlan {
  const stick = stock.reduce((a, b) => (b.length_mm > a.length_mm ? b : a));
  const sticks: number[][] = [];
  const used = (cuts: readonly number[]): number => cuts.reduce((s, l) => s + l + kerf_mm, -kerf_mm);
  for (const { length_mm, count } of pieces)
    for (let i = 0; i < count; i++) {
      const open = sticks.find((cuts) => used([...cuts, length_mm]) <= stick.length_mm);
      if (open) open.push(length_mm);
      else sticks.push([length_mm]);
    }
  const cost = sticks.length * stick.price;
  return {
    cost,
    bound: 0,
    proven: false,
    stock_used: [{ length_mm: stick.length_mm, count: sticks.length }],
    patterns: sticks.map((cuts) => ({
      stock_mm: stick.length_mm,
      times: 1,
      cuts: cuts.map((length_mm) => ({ length_mm, count: 1 })),
      offcut_mm: stick.length_mm - used(cuts),
    })),
  };
}

export const firstFitPlans = (problems: readonly SizeCutting[]): SizePlan[] =>
  problems.map(({ size, problem }) => ({ size, plan: firstFitPlan(problem) }));
