import type { Job } from "../formula/index.ts";
import { AHEAD, ARRIVED, BRANCH, JointSpace, LEFT, PASS, RIGHT } from "./joint-space.ts";
import { DX, DY } from "./lattice.ts";
import { Beyond, coverage, isSingle, plotsIn, subsetsBySize } from "./sharing.ts";
import { MOST_JOINED_EXACTLY } from "./join-size.ts";
import { DomainError } from "../units/index.ts";
import { Settle, type SearchSpace } from "./settle.ts";
import { TourBound, leastOver, type Terminal } from "./tour-bound.ts";

/** One joint of a found network and what lies beyond it. */
export interface JointVisit {
  readonly node: number;
  /** Plots (by index) reached at this joint. */
  readonly arrives: readonly number[];
  next: NextPart | null;
}
export type NextPart =
  | { readonly kind: "module"; readonly length: number; readonly to: JointVisit }
  | {
      readonly kind: "platform";
      readonly ci: number;
      readonly cj: number;
      readonly entry: number;
      ahead: JointVisit | null;
      left: JointVisit | null;
      right: JointVisit | null;
    };

export interface Network {
  /** In the space's whole units, the start's own support left out. */
  readonly cost: number;
  readonly root: JointVisit;
  readonly joined: readonly number[];
}

/** Lattice points at which a plot counts as reached. */
export interface Goal {
  readonly plot: number;
  readonly points: ReadonlySet<number>;
}

const SLICE = 1 << 17;

/**
 * Least network from the start to plots on one lattice, by dynamic programming over subsets of plots.
 *
 * The table of a subset holds, for every joint, the least cost of all parts beyond it that serve the subset. A single
 * plot's table is a settle from the joints that reach it; a larger subset's begins where a platform shares it out over
 * its exits, or where a joint reaches one plot and the way goes on. Exact on the lattice for the search's own costs;
 * overlaps of parts and the deck's profile are held against the finished network afterwards.
 */
export class NetworkSearch {
  settled = 0;
  private readonly space: JointSpace;
  private readonly goals: readonly Goal[];
  private readonly start: number;
  private readonly tables = new Map<number, Settle>();
  private readonly note: string;
  /** By subset, for the mask of the moment. */
  private readonly bounds = new Map<number, TourBound>();
  private mask = 0;
  /** Bit s of a joint: the table of the set s reaches it. */
  private reached = new Uint16Array(0);
  /** Least cost from the start to each plot, other plots aside; Infinity where no line of parts leads there. */
  private readonly fromStart: readonly number[];

  /** The space must be measured for the goals. */
  constructor(space: JointSpace, goals: readonly Goal[], note: string) {
    this.space = space;
    this.goals = goals;
    this.start = space.l.sj * space.l.nx + space.l.si;
    this.note = note;
    this.fromStart = goals.map((g) => space.fromStart.least(g.points));
  }

  /** Least cost from the start to each plot, other plots aside; null where no line of parts leads there. */
  reach(): (number | null)[] {
    return this.fromStart.map((cost) => (cost === Infinity ? null : cost));
  }

  /** No network that serves some plots costs less; null where none can be. */
  leastNetwork(plots: readonly number[]): number | null {
    if (plots.some((k) => this.fromStart[k] === Infinity)) return null;
    return this.boundOver(plots).least;
  }

  /**
   * Joins the plots of `mask`; null when no network costs `most` or less.
   *
   * A joint is kept in the table of plots S only while what lies beyond it and a lower bound on all the rest stay
   * within `most`. The rest joins the start, the joint and the plots outside S, so it costs at least half the least
   * round tour over these (`TourBound`). Nothing of use is cut off.
   */
  *join(mask: number, most: number): Job<Network | null> {
    const goesOn = this.mask === mask;
    if (mask >= 1 << MOST_JOINED_EXACTLY) throw new DomainError("too-many-plots-to-join", { mask });
    if (!goesOn) this.bounds.clear();
    if (this.reached.length === 0) this.reached = new Uint16Array(this.space.nodes);
    this.reached.fill(0);
    this.mask = mask;
    for (const subset of subsetsBySize(mask)) {
      const table = this.tableOf(mask, subset, goesOn);
      if (!isSingle(subset)) {
        this.seedPasses(subset, table);
        yield* this.seedBranches(subset, table, most);
      }
      yield* this.settle(table, most, subset === mask);
      if (subset !== mask) this.mark(subset, table);
    }
    const table = this.tables.get(mask)!;
    const ends = [0, 1, 2, 3]
      .map((d) => this.start * 4 + d)
      .filter((n) => table.costOf(n) >= 0 && table.costOf(n) <= most);
    if (ends.length === 0) return null;
    const best = ends.reduce((a, b) => (table.costOf(b) < table.costOf(a) ? b : a));
    return {
      cost: table.costOf(best),
      root: this.trace(mask, best),
      joined: plotsIn(mask).map((k) => this.goals[k]!.plot),
    };
  }

  /** An empty table for a subset, in the memory of an earlier one; one plot's goes on where a lower limit ended. */
  private tableOf(mask: number, subset: number, goesOn: boolean): Settle {
    const known = this.tables.get(subset);
    if (known && goesOn && isSingle(subset) && subset !== mask) return known;
    const table = known ?? new Settle(this.bounded(mask, subset));
    if (known) known.reset(this.bounded(mask, subset));
    this.tables.set(subset, table);
    if (isSingle(subset)) this.seedArrivals(plotsIn(subset)[0]!, table);
    return table;
  }

  /** The space with the bound that belongs to the table of a subset. */
  private bounded(mask: number, subset: number): SearchSpace {
    const bound = this.bounds.get(subset) ?? this.boundOver(plotsIn(mask & ~subset));
    this.bounds.set(subset, bound);
    return { nodes: this.space.nodes, expand: this.space.expand, ahead: (node) => bound.at(node) };
  }

  private boundOver(plots: readonly number[]): TourBound {
    return new TourBound(
      this.space.fromStart.costs,
      Math.max(0, ...this.fromStart.filter(Number.isFinite)),
      plots.map((k) => this.terminal(k, plots)),
      this.space.bound.mostOverPlatform,
    );
  }

  private terminal(k: number, others: readonly number[]): Terminal {
    const goal = this.goals[k]!;
    const between = others.map((n) => leastOver(this.space.bound.field(this.goals[n]!.points), goal.points));
    const fromStart = this.fromStart[k]!;
    return {
      fromStart: fromStart === Infinity ? 0 : fromStart,
      field: this.space.bound.field(goal.points),
      between,
    };
  }

  private seedArrivals(k: number, table: Settle): void {
    for (const point of this.goals[k]!.points)
      for (let d = 0; d < 4; d++)
        if (this.space.table.stands(point, d & 1)) table.seed(point * 4 + d, 0, ARRIVED);
  }

  /** The cheapest way to the only goal from one of several joints: the root of the answer is the joint it begins at. */
  *reachFrom(joints: ReadonlySet<number>): Job<Network | null> {
    const table = new Settle(this.space);
    this.tables.set(1, table);
    for (const point of this.goals[0]!.points)
      for (let d = 0; d < 4; d++)
        if (this.space.table.stands(point, d & 1)) table.seed(point * 4 + d, 0, ARRIVED);
    for (;;) {
      const found = table.run(SLICE, (node) => joints.has(node));
      if (found === -1) return null;
      if (found >= 0)
        return { cost: table.costOf(found), root: this.trace(1, found), joined: [this.goals[0]!.plot] };
      yield { done: table.settled, total: 0, note: this.note };
    }
  }

  private *settle(table: Settle, most: number, toStart: boolean): Job<void> {
    const isGoal = toStart ? (node: number): boolean => node >> 2 === this.start : (): boolean => false;
    for (;;) {
      const before = table.settled;
      const found = table.run(SLICE, isGoal, most);
      this.settled += table.settled - before;
      if (found !== -2) return;
      yield { done: this.settled, total: 0, note: this.note };
    }
  }

  /** A joint within reach of a plot, from which the way goes on to the others. */
  private seedPasses(subset: number, table: Settle): void {
    for (const k of plotsIn(subset)) {
      const rest = this.tables.get(subset & ~(1 << k))!;
      for (const point of this.goals[k]!.points)
        for (let d = 0; d < 4; d++) {
          const cost = rest.costOf(point * 4 + d);
          if (cost >= 0) table.seed(point * 4 + d, cost, PASS);
        }
    }
  }

  /** Platforms that share the subset out over two or three exits. */
  private *seedBranches(subset: number, table: Settle, most: number): Job<void> {
    const { l, half } = this.space;
    const beyond = new Beyond(this.tables, subset);
    const covers = coverage(subset);
    for (let cj = half; cj < l.ny - half; cj++) {
      if (cj % 256 === 0) yield { done: this.settled, total: 0, note: this.note };
      for (let ci = half; ci < l.nx - half; ci++) {
        if (covers[this.setsBeyond(ci, cj)] === 0) continue;
        const platform = this.space.platformAt(ci, cj);
        if (platform < 0) continue;
        beyond.read(this.space, ci, cj);
        for (let entry = 0; entry < 4; entry++) {
          const share = beyond.cheapest(entry);
          if (share === Infinity) continue;
          const cost = share + this.space.entryCost(ci, cj, entry, platform);
          const node = this.space.nodeAt(ci - DX[entry]! * half, cj - DY[entry]! * half, entry);
          if (cost + table.ahead(node) <= most) table.seed(node, cost, BRANCH);
        }
      }
    }
  }

  /** The sets, as bits, whose tables reach any edge of a platform. */
  private setsBeyond(ci: number, cj: number): number {
    const { nx } = this.space.l;
    const { half } = this.space;
    const middle = (cj * nx + ci) * 4;
    const sets = this.reached;
    return (
      sets[middle + 4 * half]! |
      sets[middle + 4 * half * nx + 1]! |
      sets[middle - 4 * half + 2]! |
      sets[middle - 4 * half * nx + 3]!
    );
  }

  /** Notes for every joint that the table of a subset reaches it. */
  private mark(subset: number, table: Settle): void {
    for (let node = table.lowest; node <= table.highest; node++)
      if (table.cost[node] !== 0) this.reached[node]! |= 1 << subset;
  }

  private sharesAt(mask: number, ci: number, cj: number, entry: number): number[] {
    const beyond = new Beyond(this.tables, mask);
    beyond.read(this.space, ci, cj);
    return beyond.cheapestShares(entry);
  }

  private trace(mask: number, node: number): JointVisit {
    const table = this.tables.get(mask)!;
    const arc = table.arc[node]!;
    if (arc === ARRIVED) return { node, arrives: plotsIn(mask).map((k) => this.goals[k]!.plot), next: null };
    if (arc === PASS) {
      const k = plotsIn(mask).find(
        (p) =>
          this.goals[p]!.points.has(node >> 2) &&
          this.tables.get(mask & ~(1 << p))!.costOf(node) === table.costOf(node),
      )!;
      const on = this.trace(mask & ~(1 << k), node);
      return { node, arrives: [this.goals[k]!.plot, ...on.arrives], next: on.next };
    }
    return { node, arrives: [], next: this.tracePart(mask, node, arc) };
  }

  private tracePart(mask: number, node: number, arc: number): NextPart {
    if (arc <= this.space.steps.length)
      return { kind: "module", length: arc - 1, to: this.trace(mask, this.space.follow(node, arc)) };
    const d = node & 3;
    const point = node >> 2;
    const i = point % this.space.l.nx;
    const ci = i + DX[d]! * this.space.half;
    const cj = (point - i) / this.space.l.nx + DY[d]! * this.space.half;
    const shares =
      arc === BRANCH
        ? this.sharesAt(mask, ci, cj, d)
        : [AHEAD, LEFT, RIGHT].map((a) => (a === arc ? mask : 0));
    const [ahead, left, right] = [d, (d + 3) & 3, (d + 1) & 3].map((exit, n) =>
      shares[n] === 0 ? null : this.trace(shares[n]!, this.space.exitOf(ci, cj, exit)),
    );
    return { kind: "platform", ci, cj, entry: d, ahead: ahead!, left: left!, right: right! };
  }
}
