import type { Fields } from "./fields.ts";
import type { Lattice } from "./lattice.ts";
import { Settle } from "./settle.ts";

/** No way leads from here to the start. */
export const CUT_OFF = -1;

export interface StepCosts {
  /** Least whole cost of one step besides the shade: part and support, over every part of the kit. */
  readonly perStep: number;
  /** Whole cost of one unit of sensitivity at one lattice point under a part. */
  readonly perHarm: number;
  /** Lattice points a module covers to either side of its middle line. */
  readonly rows: number;
}

/**
 * Lower bounds on the cost of any walkway between lattice points: the same ground, but single steps
 * along either heading instead of parts, no price for turning, supports anywhere.
 *
 * A module of k steps costs at least its steps' share of part, support and shade: the lesser of two neighbouring
 * cross sums, step by step, never adds up to more than their mean over the strip. So the bound is consistent along
 * every arc of the joints' space. Points whose cross section touches what no part may cover are `CUT_OFF`.
 */
export class StepBound {
  private readonly l: Lattice;
  private readonly sums: readonly Float32Array[];
  private readonly costs: StepCosts;

  constructor(l: Lattice, f: Fields, costs: StepCosts) {
    this.l = l;
    this.costs = costs;
    this.sums = [0, 1].map((o) => crossSums(l, f, costs.rows, o));
  }

  /** Least whole cost from any of some lattice points to every other; `CUT_OFF` where none leads. */
  from(points: Iterable<number>): Int32Array {
    const { nx, ny } = this.l;
    const settle = new Settle({
      nodes: nx * ny,
      ahead: () => 0,
      expand: (point, into) => {
        const i = point % nx;
        if (i + 1 < nx) this.offer(into, point, point + 1, 0);
        if (i > 0) this.offer(into, point, point - 1, 0);
        if (point + nx < nx * ny) this.offer(into, point, point + nx, 1);
        if (point >= nx) this.offer(into, point, point - nx, 1);
      },
    });
    for (const point of points) settle.seed(point, 0, 0);
    settle.run(Infinity, () => false);
    return settle.cost.map((c) => c - 1);
  }

  private offer(settle: Settle, from: number, to: number, o: number): void {
    const sums = this.sums[o]!;
    const low = Math.min(sums[from]!, sums[to]!);
    if (low >= 0) settle.relax(to, Math.floor(this.costs.perStep + this.costs.perHarm * low * 0.999), 1);
  }
}

/** Sensitivity summed across a module at every point; -1 where a part may not lie. */
function crossSums(l: Lattice, f: Fields, rows: number, o: number): Float32Array {
  const { nx, ny } = l;
  const sums = new Float32Array(nx * ny).fill(-1);
  const [a, b] = o === 0 ? [0, rows] : [rows, 0];
  for (let j = b; j < ny - b; j++)
    for (let i = a; i < nx - a; i++)
      if (f.blocked.over(i - a, j - b, i + a, j + b) === 0)
        sums[j * nx + i] = f.harm.over(i - a, j - b, i + a, j + b);
  return sums;
}
