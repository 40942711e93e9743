import type { Job } from "../formula/index.ts";
import type { Lattice } from "./lattice.ts";
import { Settle } from "./settle.ts";

const SLICE = 1 << 17;

/**
 * The least whole cost of a line of parts from the start to joints, worked out from the start outward as far as it is
 * asked for. Measured while no plots lie on the ground, it is a lower bound wherever they come to lie.
 */
export class StartCosts {
  private readonly nodes: number;
  private readonly l: Lattice;
  private readonly expand: (node: number, settle: Settle) => void;
  private kept: Settle | null = null;

  /** `expand` offers every joint that one part leads to. */
  constructor(nodes: number, l: Lattice, expand: (node: number, settle: Settle) => void) {
    this.nodes = nodes;
    this.l = l;
    this.expand = expand;
  }

  /** Per joint, the cost plus 1; exact below what was measured, 0 or too much beyond. */
  get costs(): Int32Array {
    return this.outward.cost;
  }

  /** How many joints have been measured. */
  get measured(): number {
    return this.outward.settled;
  }

  /** Measures until the cheapest joint of every set of points is known, or nothing is left. */
  *measure(goals: readonly ReadonlySet<number>[], note: string): Job<void> {
    for (const points of goals)
      while (!this.isMeasured(points) && this.outward.run(SLICE, () => false) === -2)
        yield { done: this.outward.settled, total: 0, note };
  }

  /** Whether the cheapest of some joints is known, or that none can be reached. */
  isMeasured(points: ReadonlySet<number>): boolean {
    return this.outward.isDone || this.least(points) < this.outward.frontier;
  }

  /** Least cost to any joint at some points, as far as measured; Infinity where none leads. */
  least(points: ReadonlySet<number>): number {
    const { costs } = this;
    let least = Infinity;
    for (const point of points)
      for (let node = point * 4; node < point * 4 + 4; node++)
        if (costs[node]! > 0) least = Math.min(least, costs[node]! - 1);
    return least;
  }

  private get outward(): Settle {
    if (this.kept !== null) return this.kept;
    const settle = new Settle({ nodes: this.nodes, ahead: () => 0, expand: this.expand });
    const start = this.l.sj * this.l.nx + this.l.si;
    for (let d = 0; d < 4; d++) settle.seed(start * 4 + d, 0, 0);
    return (this.kept = settle);
  }
}
