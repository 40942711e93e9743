import { solveKnapsack, type Knapsack } from "./knapsack.ts";
import { addColumns, type Column, type CuttingModel } from "./model.ts";
import type { ProvenBound } from "./safe-bound.ts";

export interface PatternList {
  readonly columns: readonly Column[];
  /** Every plan wanted that costs no more than this uses listed patterns only. Price units. */
  readonly reach: number;
}

/**
 * Patterns by reduced cost. The bound prices every piece; what a pattern costs beyond the worth of its pieces is
 * money that a plan spends above the bound. So a plan of cost c uses no pattern dearer than c - bound.
 */
export class PatternLister {
  readonly model: CuttingModel;
  readonly proven: ProvenBound;
  readonly knapsack: Knapsack;
  /** Per kind of stick: its cost, and what a limited one gains on top. */
  readonly stickCosts: readonly number[];

  constructor(model: CuttingModel, proven: ProvenBound) {
    const capacity = Math.max(...model.sticks.map((s) => s.capacity));
    this.model = model;
    this.proven = proven;
    this.knapsack = solveKnapsack(model.widths, proven.values, model.demand, capacity);
    this.stickCosts = model.sticks.map((s) => Math.max(s.cost, proven.rate * this.knapsack.best(s.capacity)));
  }

  /**
   * The patterns that a plan of at most `top` price units can use (null: any plan), no more than `most` of them.
   * Where there are too many, the list holds those of the least reduced cost, then the known ones of `pool`,
   * and `reach` says how far it goes.
   */
  list(top: number | null, most: number, pool: Iterable<Column>): PatternList {
    const { bound } = this.proven;
    const gap = top === null ? Infinity : top - bound;
    const all = this.within(gap, most);
    if (all) return { columns: all, reach: Infinity };
    let slack = top === null ? Math.max(...this.stickCosts) : gap;
    let some: Column[] | null = null;
    while (!some && slack > LEAST_SLACK * (bound + 1)) some = this.within((slack /= 2), most);
    const columns = this.fillUp(some ?? [], pool, gap, most);
    return { columns, reach: some ? bound + slack : bound };
  }

  /** All full patterns with a reduced cost up to `slack`; null when there are more than `most`. */
  within(slack: number, most: number): Column[] | null {
    const { rate } = this.proven;
    const found: Column[] = [];
    for (const [s, stick] of this.model.sticks.entries()) {
      const least = rate > 0 ? ((this.stickCosts[s]! - slack) / rate) * (1 - ROUNDING) - 1 : 0;
      const fillings = this.knapsack.fillingsWorth(stick.capacity, least, most - found.length);
      if (!fillings) return null;
      for (const counts of fillings) if (counts.some((n) => n > 0)) found.push({ stick: s, counts });
    }
    return found;
  }

  fillUp(some: readonly Column[], pool: Iterable<Column>, gap: number, most: number): Column[] {
    const listed = new Map<string, Column>();
    addColumns(listed, some);
    const known = [...pool].map((column) => ({ column, cost: this.reducedCost(column) }));
    known.sort((a, b) => a.cost - b.cost);
    for (const { column, cost } of known) if (listed.size < most && cost <= gap) addColumns(listed, [column]);
    return [...listed.values()];
  }

  reducedCost({ stick, counts }: Column): number {
    const { values, rate } = this.proven;
    return this.stickCosts[stick]! - rate * counts.reduce((sum, n, k) => sum + n * values[k]!, 0);
  }
}

/** More than the rounding of the few operations above; a list a little too long does no harm. */
const ROUNDING = 1e-12;
const LEAST_SLACK = 1e-9;
