import { MOST_JOINED_EXACTLY } from "./join-size.ts";
import type { JointSpace } from "./joint-space.ts";
import type { Settle } from "./settle.ts";

/** Costs beyond the four edges of one platform, for every part of a subset. */
export class Beyond {
  /** The parts of the subset, the empty one first, and the part each leaves over. */
  private readonly shares: readonly number[];
  private readonly tables: readonly (Settle | null)[];
  private readonly costs: Float64Array;
  private readonly pairs: readonly (readonly [ahead: number, left: number, right: number])[];

  constructor(tables: ReadonlyMap<number, Settle>, subset: number) {
    this.shares = [0, ...subsetsBySize(subset)].filter((s) => s !== subset);
    this.tables = this.shares.map((s) => (s === 0 ? null : tables.get(s)!));
    this.costs = new Float64Array(4 * this.shares.length);
    this.pairs = this.shares.flatMap((a, na) =>
      this.shares.flatMap((b, nb) => {
        const nc = (a & b) === 0 ? this.shares.indexOf(subset & ~a & ~b) : -1;
        return nc < 0 ? [] : [[na, nb, nc] as const];
      }),
    );
  }

  read(space: JointSpace, ci: number, cj: number): void {
    for (let d = 0; d < 4; d++) {
      const exit = space.exitOf(ci, cj, d);
      for (let s = 1; s < this.shares.length; s++) {
        const cost = this.tables[s]!.cost[exit]!;
        this.costs[4 * s + d] = cost === 0 ? Infinity : cost - 1;
      }
    }
  }

  /** Cheapest way to share the subset out over ahead, left, right, using at least two of them. */
  cheapest(entry: number): number {
    let least = Infinity;
    for (const [a, b, c] of this.pairs) least = Math.min(least, this.sum(entry, a, b, c));
    return least;
  }

  /** The parts served ahead, left and right in the cheapest way. */
  cheapestShares(entry: number): number[] {
    const least = this.cheapest(entry);
    return this.pairs.find(([a, b, c]) => this.sum(entry, a, b, c) === least)!.map((n) => this.shares[n]!);
  }

  private sum(entry: number, a: number, b: number, c: number): number {
    return (
      this.costs[4 * a + entry]! +
      this.costs[4 * b + ((entry + 3) & 3)]! +
      this.costs[4 * c + ((entry + 1) & 3)]!
    );
  }
}

/** By the sets reached, as bits: 1 when they hold every plot of a subset between them. */
export function coverage(subset: number): Uint8Array {
  const known = coverages.get(subset);
  if (known) return known;
  const covers = new Uint8Array(1 << (1 << MOST_JOINED_EXACTLY));
  for (let sets = 0; sets < covers.length; sets++) {
    let plots = 0;
    for (let s = 1; s < 1 << MOST_JOINED_EXACTLY; s++)
      if ((sets & (1 << s)) !== 0 && (s & ~subset) === 0) plots |= s;
    covers[sets] = plots === subset ? 1 : 0;
  }
  coverages.set(subset, covers);
  return covers;
}
const coverages = new Map<number, Uint8Array>();

export const plotsIn = (mask: number): number[] => {
  const found: number[] = [];
  for (let k = 0; mask >> k > 0; k++) if ((mask & (1 << k)) !== 0) found.push(k);
  return found;
};
export const isSingle = (mask: number): boolean => (mask & (mask - 1)) === 0;

export function subsetsBySize(mask: number): number[] {
  const all: number[] = [];
  for (let s = mask; s > 0; s = (s - 1) & mask) all.push(s);
  return all.sort((a, b) => plotsIn(a).length - plotsIn(b).length || a - b);
}
