import { AreaSum } from "./area-sum.ts";
import type { GroundFields } from "./fields.ts";
import type { Lattice } from "./lattice.ts";
import { Settle } from "./settle.ts";

/** No way leads from here to the start. */
export const CUT_OFF = -1;

export interface StepCosts {
  /** Least whole cost of one step besides the shade: part and support, over every part of the kit. */
  readonly perStep: number;
  /** Whole cost of one unit of sensitivity at one lattice point under a module, for one step. */
  readonly perHarm: number;
  /** Lattice points a module covers to either side of its middle line. */
  readonly rows: number;
  readonly platform: {
    /** Steps from the middle to a joint, and lattice points covered to either side of the middle. */
    readonly half: number;
    readonly points: number;
    /** Whole cost of one unit of sensitivity at one lattice point under a platform. */
    readonly perHarm: number;
  };
}

/**
 * Lower bounds on the cost of any walkway between lattice points: the same ground, but single steps
 * along either heading instead of parts, no price for turning, supports anywhere.
 *
 * A module of k steps costs at least its steps' share of part, support and shade: the lesser of two neighbouring
 * cross sums, step by step, never adds up to more than their mean over the strip. Nor does a way over a platform cost
 * more here than the platform: the shade of a step is capped by a step's share of every platform it could lie on. So
 * the bound is consistent along every arc of the joints' space. Points whose cross section touches a shut zone or
 * unknown ground are `CUT_OFF`; plots do not count, so the bound stays when they move.
 */
export class StepBound {
  /** Most that a way from one joint of a platform to another can cost here [whole units]. */
  readonly mostOverPlatform: number;
  private readonly l: Lattice;
  private readonly sums: readonly Float32Array[];
  private readonly costs: StepCosts;
  private readonly fields = new Map<string, Int32Array>();

  constructor(l: Lattice, f: GroundFields, costs: StepCosts) {
    this.l = l;
    this.costs = costs;
    const shares = platformShares(l, f, costs);
    let most = 0;
    for (const share of shares) if (Number.isFinite(share) && share > most) most = share;
    const shut = new AreaSum(l.nx, l.ny, (p) => f.shutPoints[p]!, true);
    this.sums = [0, 1].map((o) => crossSums(l, shut, f.harm, costs.rows, o));
    for (const o of [0, 1]) capByPlatforms(l, this.sums[o]!, shares, costs.platform.half, o);
    const { half } = costs.platform;
    this.mostOverPlatform = Math.ceil(2 * half * (costs.perStep + costs.perHarm * most));
  }

  /** The same as `from`, kept while the points are in use. */
  field(points: ReadonlySet<number>): Int32Array {
    const key = [...points].join();
    const known = this.fields.get(key) ?? this.from(points);
    this.fields.set(key, known);
    return known;
  }

  /** Drops the fields of all points but these. */
  keepFields(goals: readonly ReadonlySet<number>[]): void {
    const kept = new Set(goals.map((points) => [...points].join()));
    for (const key of this.fields.keys()) if (!kept.has(key)) this.fields.delete(key);
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
function crossSums(l: Lattice, shut: AreaSum, harm: AreaSum, rows: number, o: number): Float32Array {
  const { nx, ny } = l;
  const sums = new Float32Array(nx * ny).fill(-1);
  const [a, b] = o === 0 ? [0, rows] : [rows, 0];
  for (let j = b; j < ny - b; j++)
    for (let i = a; i < nx - a; i++)
      if (shut.over(i - a, j - b, i + a, j + b) === 0)
        sums[j * nx + i] = harm.over(i - a, j - b, i + a, j + b);
  return sums;
}

/** What a platform's shade is worth, step by step over it, as a cross sum under a module; by its middle. */
function platformShares(l: Lattice, f: GroundFields, costs: StepCosts): Float32Array {
  const { half, points: p, perHarm } = costs.platform;
  const shares = new Float32Array(l.nx * l.ny).fill(Infinity);
  const scale = costs.perHarm > 0 ? perHarm / (2 * half) / costs.perHarm : 0;
  const edge = Math.max(p, half);
  for (let j = edge; j < l.ny - edge; j++)
    for (let i = edge; i < l.nx - edge; i++)
      shares[j * l.nx + i] = f.harm.over(i - p, j - p, i + p, j + p) * scale;
  return shares;
}

/** Lowers cross sums to the share of any platform on whose middle line a point could lie. */
function capByPlatforms(l: Lattice, sums: Float32Array, shares: Float32Array, half: number, o: number): void {
  const step = o === 0 ? 1 : l.nx;
  for (let k = 0; k < sums.length; k++) {
    let sum = sums[k]!;
    if (sum <= 0) continue;
    for (let t = -half; t <= half; t++) {
      const share = shares[k + t * step];
      if (share !== undefined && share < sum) sum = share;
    }
    sums[k] = sum;
  }
}
