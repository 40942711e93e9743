import type { Plot, Polygons } from "../site/index.ts";
import type { LayoutFacts, SearchCosts } from "./facts.ts";
import { blockAlso, type Fields } from "./fields.ts";
import { pointsAround, type JointTable } from "./joint-table.ts";
import { DX, DY, type Lattice } from "./lattice.ts";
import { StepBound, type StepCosts } from "./step-bound.ts";
import { StartCosts } from "./start-costs.ts";
import type { SearchSpace, Settle } from "./settle.ts";

/** Arc numbers: 1.. are modules by length; these are the platform's exits as seen by who walks away from the start. */
export const AHEAD = 64;
export const LEFT = 65;
export const RIGHT = 66;
export const BRANCH = 67;
export const PASS = 68;
export const ARRIVED = 69;

export interface SpaceWeights {
  readonly money: number;
  readonly shade_per_m2: number;
  readonly crossing: number;
  readonly max_grade: number;
}

// Own names for what hot loops read: bundlers turn imports into property look-ups.
const dx: readonly number[] = DX;
const dy: readonly number[] = DY;

const UNKNOWN = 0;
const REFUSED = -1;

/**
 * Joints as nodes: lattice point and heading of travel away from the start, `node = point * 4 + direction`.
 * Arcs are modules, and platforms entered at one joint and left at another. The space is settled BACKWARD, from the
 * plots towards the start: `expand(v)` offers every joint u from which one part leads to v. The cost of an arc holds
 * the part and the support at its far end; a platform's holds the three supports besides the one it is entered over.
 */
export class JointSpace implements SearchSpace {
  readonly nodes: number;
  readonly unit: number;
  readonly l: Lattice;
  readonly table: JointTable;
  readonly steps: readonly number[];
  readonly half: number;
  private f: Fields;
  private readonly facts: LayoutFacts;
  private readonly costs: SearchCosts;
  private readonly weights: SpaceWeights;
  private readonly moduleCost: readonly number[];
  readonly platformMoney: number;
  private readonly rows: number;
  private readonly harmPerPoint: number;
  private readonly platformPoints: number;
  private readonly platformHarm: number;
  /** Per orientation and length: whole cost of a strip from its lower end, 0 = not looked at, -1 = cannot lie there. */
  private readonly strips: readonly Int32Array[];
  /** Whole cost of a platform with its four supports, by its middle. */
  private readonly platforms: Int32Array;
  private keptBound: StepBound | null = null;
  /** What lines of parts from the start cost. */
  readonly fromStart: StartCosts;
  private readonly perUnit: number;

  constructor(
    l: Lattice,
    f: Fields,
    table: JointTable,
    facts: LayoutFacts,
    costs: SearchCosts,
    weights: SpaceWeights,
  ) {
    this.l = l;
    this.f = f;
    this.table = table;
    this.weights = weights;
    this.facts = facts;
    this.costs = costs;
    this.nodes = l.nx * l.ny * 4;
    this.steps = facts.lengths_m.map((m) => Math.round((m + facts.gap_m) / l.step));
    this.half = Math.round((facts.platform_side_m + facts.gap_m) / 2 / l.step);
    const labour = costs.labour_per_m * l.step;
    const money = (known: number | null, steps: number): number =>
      known === null ? steps * l.step : (known + labour * steps) * weights.money;
    this.moduleCost = this.steps.map((k, n) => money(costs.module[n]!, k));
    this.platformMoney = money(costs.platform, 2 * this.half);
    this.rows = Math.ceil(facts.width_m / 2 / l.step + 0.5 - 1e-9) - 1;
    this.harmPerPoint = (weights.shade_per_m2 * facts.width_m * l.step) / (2 * this.rows + 1);
    this.platformPoints = Math.ceil(facts.platform_side_m / 2 / l.step + 0.5 - 1e-9) - 1;
    this.platformHarm =
      (weights.shade_per_m2 * facts.platform_side_m ** 2) / (2 * this.platformPoints + 1) ** 2;
    this.unit = Math.max(1e-9, Math.min(...this.moduleCost)) / 256;
    this.perUnit = 1 / this.unit;
    this.platforms = new Int32Array(l.nx * l.ny);
    this.fromStart = new StartCosts(this.nodes, l, this.expandOutward);
    this.strips = Array.from({ length: 2 * this.steps.length }, () => new Int32Array(l.nx * l.ny));
  }

  /** Lower bounds over single steps; they go by shut zones and unknown ground alone, not by plots. */
  get bound(): StepBound {
    return (this.keptBound ??= new StepBound(this.l, this.f, this.stepCosts()));
  }

  /** Cheapest step of any part with the cheapest support, a hundredth off for rounding; shade comes on top, place by place. */
  private stepCosts(): StepCosts {
    const joint = this.table.leastCost(this.f.leastSensitivity);
    const perStep = this.moduleCost.map((c, n) => (c + joint) / this.steps[n]!);
    const platform = (this.platformMoney + 3 * joint) / (2 * this.half);
    return {
      perStep: (Math.min(...perStep, platform) / this.unit) * 0.99,
      perHarm: (this.harmPerPoint / this.unit) * 0.99,
      rows: this.rows,
      platform: {
        half: this.half,
        points: this.platformPoints,
        perHarm: (this.platformHarm / this.unit) * 0.99,
      },
    };
  }

  /** The same joints and prices, with areas that no part may cover besides shut zones and unknown ground. */
  blocking(areas: readonly Polygons[]): JointSpace {
    const f = blockAlso(this.l, this.f, areas);
    return new JointSpace(this.l, f, this.table, this.facts, this.costs, this.weights);
  }

  /** Drops what was worked out about parts over a joint: after it was ruled out, or may be used again. */
  forgetAt(point: number): void {
    const { nx } = this.l;
    this.steps.forEach((k, n) => {
      for (const [o, far] of [k, k * nx].entries()) {
        const strips = this.strips[o * this.steps.length + n]!;
        strips[point] = UNKNOWN;
        if (point >= far) strips[point - far] = UNKNOWN;
      }
    });
    for (const middle of [this.half, -this.half, this.half * nx, -this.half * nx])
      if (this.platforms[point + middle] !== undefined) this.platforms[point + middle] = UNKNOWN;
  }

  /** Other plots on the same ground: `f` holds their circles; drops the parts that those of `moved` plots could touch. */
  replot(f: Fields, moved: readonly Plot[], reach_m: number): void {
    this.f = f;
    const steps = Math.max(...this.steps, 2 * this.half) + this.rows + 2;
    for (const plot of moved)
      for (const point of pointsAround(
        this.l,
        plot.x,
        plot.y,
        plot.keep_off_m + reach_m + steps * this.l.step,
      )) {
        this.platforms[point] = UNKNOWN;
        for (const strips of this.strips) strips[point] = UNKNOWN;
      }
  }

  /** Whole-number cost; at least one, so that no arc is free. */
  whole(cost: number): number {
    return Math.max(1, Math.round(cost / this.unit));
  }

  nodeAt(i: number, j: number, direction: number): number {
    return (j * this.l.nx + i) * 4 + direction;
  }

  /** No bound of its own. */
  readonly ahead = (): number => 0;

  expand = (node: number, settle: Settle): void => {
    const d = node & 3;
    const point = node >> 2;
    const { nx, ny } = this.l;
    const i = point % nx;
    const j = (point - i) / nx;
    const joint = this.jointCost(point, d & 1);
    const lengths = this.steps.length;
    for (let n = 0; n < lengths; n++) {
      const k = this.steps[n]!;
      const fi = i - dx[d]! * k;
      const fj = j - dy[d]! * k;
      if (fi < 0 || fj < 0 || fi >= nx || fj >= ny) continue;
      const from = fj * nx + fi;
      const lower = d < 2 ? from : point;
      const strip = this.strips[(d & 1) * lengths + n]![lower]!;
      const cost = strip !== UNKNOWN ? strip : this.lookAtStrip(d & 1, n, lower);
      if (cost > 0) settle.relax(from * 4 + d, cost + joint, n + 1);
    }
    const ci = i - dx[d]! * this.half;
    const cj = j - dy[d]! * this.half;
    const platform = this.platformAt(ci, cj);
    if (platform < 0) return;
    this.offerEntry(ci, cj, d, AHEAD, platform, settle);
    this.offerEntry(ci, cj, (d + 1) & 3, LEFT, platform, settle);
    this.offerEntry(ci, cj, (d + 3) & 3, RIGHT, platform, settle);
  };

  /** The other way about: offers every joint that one part leads to. */
  private readonly expandOutward = (node: number, settle: Settle): void => {
    const d = node & 3;
    const point = node >> 2;
    const { nx, ny } = this.l;
    const i = point % nx;
    const j = (point - i) / nx;
    const lengths = this.steps.length;
    for (let n = 0; n < lengths; n++) {
      const k = this.steps[n]!;
      const ti = i + dx[d]! * k;
      const tj = j + dy[d]! * k;
      if (ti < 0 || tj < 0 || ti >= nx || tj >= ny) continue;
      const to = tj * nx + ti;
      const lower = d < 2 ? point : to;
      const strip = this.strips[(d & 1) * lengths + n]![lower]!;
      const cost = strip !== UNKNOWN ? strip : this.lookAtStrip(d & 1, n, lower);
      if (cost > 0) settle.relax(to * 4 + d, cost + this.jointCost(to, d & 1), n + 1);
    }
    const ci = i + dx[d]! * this.half;
    const cj = j + dy[d]! * this.half;
    const platform = this.platformAt(ci, cj);
    if (platform < 0) return;
    const cost = platform - this.jointCost(point, d & 1);
    settle.relax(this.exitOf(ci, cj, d), cost, AHEAD);
    settle.relax(this.exitOf(ci, cj, (d + 3) & 3), cost, LEFT);
    settle.relax(this.exitOf(ci, cj, (d + 1) & 3), cost, RIGHT);
  };

  private offerEntry(
    ci: number,
    cj: number,
    entry: number,
    arc: number,
    platform: number,
    settle: Settle,
  ): void {
    const point = (cj - dy[entry]! * this.half) * this.l.nx + ci - dx[entry]! * this.half;
    settle.relax(point * 4 + entry, platform - this.jointCost(point, entry & 1), arc);
  }

  /** Cost of a platform for who enters it heading `entry`, the entry's own support left out [whole units]. */
  entryCost(ci: number, cj: number, entry: number, platform: number): number {
    const point = (cj - dy[entry]! * this.half) * this.l.nx + ci - dx[entry]! * this.half;
    return platform - this.jointCost(point, entry & 1);
  }

  private jointCost(point: number, orientation: number): number {
    return (this.table.cost[orientation]![point]! * this.perUnit + 0.5) | 0;
  }

  /** Whole cost of module `n` between a lower point and the point its length on, supports left out; -1 when it cannot lie there. */
  private lookAtStrip(o: number, n: number, lower: number): number {
    return (this.strips[o * this.steps.length + n]![lower] = this.stripCost(o, n, lower));
  }

  private stripCost(o: number, n: number, lower: number): number {
    const { nx, ny, step } = this.l;
    const k = this.steps[n]!;
    const i = lower % nx;
    const j = (lower - i) / nx;
    const far = lower + (o === 0 ? k : k * nx);
    if (!this.table.stands(lower, o) || !this.table.stands(far, o)) return REFUSED;
    const { table } = this;
    const rise = Math.max(table.low(lower, o) - table.high(far, o), table.low(far, o) - table.high(lower, o));
    if (rise > this.weights.max_grade * k * step) return REFUSED;
    const i0 = o === 0 ? i : i - this.rows;
    const i1 = o === 0 ? i + k : i + this.rows;
    const j0 = o === 0 ? j - this.rows : j;
    const j1 = o === 0 ? j + this.rows : j + k;
    if (i0 < 0 || j0 < 0 || i1 >= nx || j1 >= ny || this.f.blocked.over(i0, j0, i1, j1) > 0) return REFUSED;
    const harm = (this.f.harm.over(i0, j0, i1, j1) * this.harmPerPoint * k) / (k + 1);
    const water = this.f.water.over(i0, j0, i1, j1) > 0 ? this.weights.crossing : 0;
    return this.whole(this.moduleCost[n]! + harm + water);
  }

  /** Whole cost of a platform with all four supports, centred on a lattice point; -1 when it cannot lie there. */
  platformAt(ci: number, cj: number): number {
    if (ci < this.half || cj < this.half || ci >= this.l.nx - this.half || cj >= this.l.ny - this.half)
      return REFUSED;
    const point = cj * this.l.nx + ci;
    const known = this.platforms[point]!;
    return known === UNKNOWN ? (this.platforms[point] = this.lookAtPlatform(ci, cj)) : known;
  }

  private lookAtPlatform(ci: number, cj: number): number {
    const p = this.platformPoints;
    if (this.f.blocked.over(ci - p, cj - p, ci + p, cj + p) > 0) return REFUSED;
    let low = -Infinity;
    let high = Infinity;
    let supports = 0;
    for (let d = 0; d < 4; d++) {
      const point = (cj + dy[d]! * this.half) * this.l.nx + ci + dx[d]! * this.half;
      const o = d & 1;
      if (!this.table.stands(point, o)) return REFUSED;
      low = Math.max(low, this.table.low(point, o));
      high = Math.min(high, this.table.high(point, o));
      supports += this.jointCost(point, o);
    }
    if (low > high) return REFUSED;
    return (
      this.whole(this.platformMoney + this.f.harm.over(ci - p, cj - p, ci + p, cj + p) * this.platformHarm) +
      supports
    );
  }

  /** Nodes reached from a joint over one arc, walking away from the start. */
  follow(node: number, arc: number): number {
    const d = node & 3;
    const point = node >> 2;
    const i = point % this.l.nx;
    const j = (point - i) / this.l.nx;
    if (arc <= this.steps.length)
      return this.nodeAt(i + dx[d]! * this.steps[arc - 1]!, j + dy[d]! * this.steps[arc - 1]!, d);
    return this.exitOf(
      i + dx[d]! * this.half,
      j + dy[d]! * this.half,
      (d + (arc === LEFT ? 3 : arc === RIGHT ? 1 : 0)) & 3,
    );
  }

  /** Joint over which a platform centred at (ci, cj) is left in a direction. */
  exitOf(ci: number, cj: number, direction: number): number {
    return this.nodeAt(ci + dx[direction]! * this.half, cj + dy[direction]! * this.half, direction);
  }
}
