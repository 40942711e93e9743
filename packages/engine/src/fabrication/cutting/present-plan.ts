import type { CuttingPattern, CuttingPlan } from "../types.ts";
import type { BuiltModel } from "./build-model.ts";
import type { WholePlan } from "./model.ts";

/** Cost and bound this close, as a part of the cost, are one figure. */
const ROUNDING = 1e-9;

/** The plan as the shop reads it: lengths in millimetres, longest stock first, then the pattern sawn most often. */
export function presentPlan(built: BuiltModel, plan: WholePlan, lower: number): CuttingPlan {
  const { grid, prices } = built;
  const summed = plan.uses.reduce((sum, u) => sum + u.times * prices[u.column.stick]!, 0);
  const cost = grid.isExact ? grid.toMoney(plan.cost) : summed;
  const bound = Math.min(grid.toMoney(lower), cost);
  return {
    cost,
    bound,
    proven: cost - bound <= ROUNDING * cost,
    stock_used: stockUsed(built, plan),
    patterns: mergeAlike(plan.uses.map((use) => pattern(built, use))).sort(byStockTimesCuts),
  };
}

function stockUsed(built: BuiltModel, plan: WholePlan): CuttingPlan["stock_used"] {
  const counts = new Map<number, number>();
  for (const { column, times } of plan.uses) {
    const length = built.stickLengths[column.stick]! / built.perMm;
    counts.set(length, (counts.get(length) ?? 0) + times);
  }
  return [...counts]
    .map(([length_mm, count]) => ({ length_mm, count }))
    .sort((a, b) => a.length_mm - b.length_mm);
}

/** What is left of the stick: the last piece is sawn off unless it ends with the stick. */
function pattern(built: BuiltModel, { column, times }: WholePlan["uses"][number]): CuttingPattern {
  const { perMm, kerf, pieceLengths } = built;
  const stick = built.stickLengths[column.stick]!;
  const used = column.counts.reduce((sum, n, k) => sum + n * (pieceLengths[k]! + kerf), 0);
  return {
    stock_mm: stick / perMm,
    times,
    cuts: column.counts
      .map((count, k) => ({ length_mm: pieceLengths[k]! / perMm, count }))
      .filter((cut) => cut.count > 0),
    offcut_mm: Math.max(0, stick - used) / perMm,
  };
}

/** Sticks of one length bought at two prices are sawn alike: the shop sees one pattern. */
function mergeAlike(patterns: readonly CuttingPattern[]): CuttingPattern[] {
  const merged = new Map<string, CuttingPattern>();
  for (const p of patterns) {
    const key = JSON.stringify([p.stock_mm, p.cuts]);
    merged.set(key, { ...p, times: p.times + (merged.get(key)?.times ?? 0) });
  }
  return [...merged.values()];
}

const byStockTimesCuts = (a: CuttingPattern, b: CuttingPattern): number =>
  b.stock_mm - a.stock_mm || b.times - a.times || compareCuts(a.cuts, b.cuts);

function compareCuts(a: CuttingPattern["cuts"], b: CuttingPattern["cuts"]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const order = b[i]!.length_mm - a[i]!.length_mm || b[i]!.count - a[i]!.count;
    if (order !== 0) return order;
  }
  return b.length - a.length;
}
