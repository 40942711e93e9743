import { solveKnapsack } from "./knapsack.ts";
import { addColumns, type Column, type CuttingModel } from "./model.ts";
import type { ProvenBound } from "./safe-bound.ts";

export interface PatternList {
  readonly columns: readonly Column[];
  /** Every plan wanted that costs no more than this uses listed patterns only. Price units. */
  readonly reach: number;
}

/**
 * Lists the patterns that a plan of at most `top` price units can use (null: any plan), no more than `most`.
 *
 * The bound prices every piece; what a pattern costs beyond the worth of its pieces, its reduced cost, is money
 * a plan spends above the bound. So a pattern dearer than top - bound is in no such plan. Too many patterns:
 * the list holds those of the least reduced cost, then the known ones (`pool`), and `reach` says how far it goes.
 */
export function patternLister(
  model: CuttingModel,
  { values, rate, bound }: ProvenBound,
  pool: ReadonlyMap<string, Column>,
): (top: number | null, most: number) => PatternList {
  const capacity = Math.max(...model.sticks.map((s) => s.capacity));
  const knapsack = solveKnapsack(model.widths, values, model.demand, capacity);
  const base = model.sticks.map((s) => Math.max(s.cost, rate * knapsack.best(s.capacity)));
  const reducedCost = ({ stick, counts }: Column): number =>
    base[stick]! - rate * counts.reduce((sum, n, k) => sum + n * values[k]!, 0);

  const within = (slack: number, most: number): Column[] | null => {
    const found: Column[] = [];
    for (const [s, stick] of model.sticks.entries()) {
      const least = rate > 0 ? ((base[s]! - slack) / rate) * (1 - ROUNDING) - 1 : 0;
      const fillings = knapsack.fillingsWorth(stick.capacity, least, most - found.length);
      if (!fillings) return null;
      for (const counts of fillings) if (counts.some((n) => n > 0)) found.push({ stick: s, counts });
    }
    return found;
  };

  return (top, most) => {
    const gap = top === null ? Infinity : top - bound;
    const all = within(gap, most);
    if (all) return { columns: all, reach: Infinity };
    let slack = top === null ? Math.max(...model.sticks.map((s) => s.cost)) : gap;
    let some: Column[] | null = null;
    while (!some && slack > LEAST_SLACK * (bound + 1)) some = within((slack /= 2), most);
    const listed = new Map<string, Column>();
    addColumns(listed, some ?? []);
    const known = [...pool.values()].map((column) => ({ column, cost: reducedCost(column) }));
    known.sort((a, b) => a.cost - b.cost);
    for (const { column, cost } of known) if (listed.size < most && cost <= gap) addColumns(listed, [column]);
    return { columns: [...listed.values()], reach: some ? bound + slack : bound };
  };
}

/** More than the rounding of the few operations above; a list a little too long does no harm. */
const ROUNDING = 1e-12;
const LEAST_SLACK = 1e-9;
