import type { Job } from "../formula/index.ts";
import type { Start } from "../site/index.ts";
import { extendNetwork } from "./extend.ts";
import { finishLayout, type Finished } from "./finish.ts";
import { DomainError } from "../units/index.ts";
import type { JointSpace } from "./joint-space.ts";
import { joinableSets } from "./joinable.ts";
import { NetworkSearch, type Goal, type Network } from "./network.ts";
import { plotsIn } from "./sharing.ts";
import type { SearchInput } from "./search-input.ts";
import type { ReadyLattice } from "./search-memory.ts";
import type { LaidParts } from "./types.ts";

/** Places given up on one lattice before the search turns to the next. */
const MOST_RETRIES = 12;
/** Limits tried before it is asked whether the plots can be joined at all. */
const PATIENCE = 5;
export const NO_LIMIT = 0x7ffffff0;

/** A finished layout on one lattice. */
export interface Found {
  readonly layout: LaidParts;
  readonly estimate: number;
  /** Cost in whole units, the same on every lattice of a search. */
  readonly whole: number;
  /** Why networks found before it were given up. */
  readonly refusals: readonly string[];
}

/** The search on one lattice. */
export class HeadingSearch {
  /** Joints settled so far: a measure of the work. */
  settled = 0;
  readonly refusals: string[] = [];
  private readonly input: SearchInput;
  private readonly start: Start;
  private readonly exactly: number;
  private readonly note: string;
  /** The plots that are joined exactly. */
  private chosen: readonly number[] | null = null;
  /** What the last network over them cost. */
  private least = 0;

  /** `exactly`: so many plots are joined exactly. */
  constructor(input: SearchInput, start: Start, exactly: number, note: string) {
    this.input = input;
    this.start = start;
    this.exactly = exactly;
    this.note = note;
  }

  /**
   * The least layout on a lattice. `most`: nothing above this cost is wanted, and nothing that leaves out a plot;
   * a lattice that has no such layout is given up as soon as that is proven.
   */
  *run({ table, space, goals }: ReadyLattice, most: number): Job<Found | null> {
    const { site, choice, facts, costs } = this.input;
    for (let attempt = 0; attempt < MOST_RETRIES; attempt++) {
      const network = yield* this.network(space, goals, most);
      if (network === null) return null;
      const finished: Finished = finishLayout({
        network,
        space,
        site,
        facts,
        costs,
        rules: { max_grade: choice.max_grade, min_clear_m: choice.min_clear_mm / 1000 },
        startId: this.start.id,
      });
      if (finished.ok)
        return {
          layout: finished.layout,
          whole: network.cost,
          estimate: network.cost * space.unit,
          refusals: this.refusals,
        };
      this.refusals.push(finished.because);
      table.ban(finished.point);
      space.forgetAt(finished.point);
    }
    return null;
  }

  /**
   * Exact network over the plots that can be joined; with more than can be joined exactly, over the nearest of them.
   * What is left over is joined to free exits. A place given up since the last time only makes networks dearer and
   * fewer, so the search goes on from the plots and the cost of that time.
   */
  private *network(space: JointSpace, goals: readonly Goal[], most: number): Job<Network | null> {
    const near = this.byNearness(space, goals);
    if (near.length === 0 || (most < NO_LIMIT && near.length < goals.length)) return null;
    const first = near.slice(0, this.exactly);
    if (most < NO_LIMIT && this.chosen === null) {
      // Whether all can be joined at all is far sooner known than that nothing below a cost joins them.
      const joined = yield* this.joinable(space, goals, first);
      if (joined.length < first.length) return null;
    }
    this.chosen ??= first;
    let network = yield* this.joinAll(space, goals, most, PATIENCE);
    if (network === null && most === NO_LIMIT) {
      this.chosen = yield* this.joinable(space, goals, first);
      if (this.chosen.length === 0) return null;
      network = yield* this.joinAll(space, goals, most, Infinity);
    }
    if (network === null) return null;
    this.least = network.cost;
    const { chosen } = this;
    const rest = near.filter((k) => !chosen.includes(k)).map((k) => goals[k]!);
    return yield* extendNetwork(this.input, space, network, rest, this.note);
  }

  /** The plots that lines of parts lead to, those with the cheapest way of their own first. */
  private byNearness(space: JointSpace, goals: readonly Goal[]): number[] {
    const costs = new NetworkSearch(space, goals, this.note).reach();
    return goals
      .map((_, k) => k)
      .filter((k) => costs[k] !== null)
      .sort((a, b) => costs[a]! - costs[b]! || a - b);
  }

  /** The most of some plots that one network joins; of equally many, those that come first. */
  private *joinable(space: JointSpace, goals: readonly Goal[], plots: readonly number[]): Job<number[]> {
    const sets = yield* joinableSets(
      space,
      plots.map((k) => goals[k]!),
      this.note,
    );
    const best = [...sets].sort((a, b) => plotsIn(b).length - plotsIn(a).length || a - b)[0];
    return best === undefined ? [] : plotsIn(best).map((n) => plots[n]!);
  }

  /**
   * Joins the chosen plots. Raises the cost limit until a network fits under it: whatever is cut off costs more than
   * the limit. Null when none costs `most` or less, or when none was found below so many limits. With `most` given,
   * it is the only limit.
   */
  private *joinAll(
    space: JointSpace,
    goals: readonly Goal[],
    most: number,
    limits: number,
  ): Job<Network | null> {
    const chosen = this.chosen!.map((k) => goals[k]!);
    const search = new NetworkSearch(space, chosen, this.note);
    const mask = (1 << chosen.length) - 1;
    const least = search.leastNetwork(plotsIn(mask));
    if (least === null || least > most) return null;
    try {
      if (most < NO_LIMIT) return yield* search.join(mask, most);
      let limit = Math.max(this.least, Math.round(1.04 * least));
      for (let n = 0; n < limits; n++) {
        const network = yield* search.join(mask, limit);
        if (network !== null) return network;
        if (limit >= NO_LIMIT) throw new DomainError("joinable-plots-not-joined", { plots: chosen.length });
        limit = Math.min(NO_LIMIT, Math.round(1.06 * limit) + 1);
      }
      return null;
    } finally {
      this.settled += search.settled;
    }
  }
}
