import type { Job } from "../formula/index.ts";
import type { JointSpace } from "./joint-space.ts";
import { DX, DY } from "./lattice.ts";
import type { Goal } from "./network.ts";
import type { Settle } from "./settle.ts";

const SLICE = 1 << 16;

/**
 * Which sets of up to four plots any network of the lattice joins to the start, whatever it costs.
 *
 * Works as the least network does, with "can" in place of "costs": a joint can serve one plot when parts lead there,
 * and a set when a platform shares it out over its exits, or a joint reaches one plot and the way goes on. Exact on
 * the lattice, overlaps and the deck's profile aside. It proves in one pass what a rising limit on the cost never
 * could: that some plots cannot be joined at all.
 *
 * Returns one number per set, as a bit mask over `goals`, the sets that can be joined.
 */
export function* joinableSets(
  space: JointSpace,
  goals: readonly Goal[],
  note: string,
): Job<ReadonlySet<number>> {
  const spread = new Spread(space, goals);
  for (let size = 1; size <= goals.length; size++) {
    spread.begin(size);
    while (spread.goOn(SLICE)) yield { done: spread.visited, total: 0, note };
  }
  const found = new Set<number>();
  const start = space.l.sj * space.l.nx + space.l.si;
  for (let d = 0; d < 4; d++) for (const set of spread.setsAt(start * 4 + d)) found.add(set);
  return found;
}

/** Spreads the sets that joints can serve backward over the arcs, smaller sets first. */
class Spread {
  visited = 0;
  private readonly space: JointSpace;
  private readonly goals: readonly Goal[];
  /** Bit s of a joint: it can serve the set s. */
  private readonly can: Uint16Array;
  private readonly waiting: number[] = [];
  private bits = 0;
  private readonly offer: Pick<Settle, "relax">;

  constructor(space: JointSpace, goals: readonly Goal[]) {
    this.space = space;
    this.goals = goals;
    this.can = new Uint16Array(space.nodes);
    this.offer = { relax: (to) => this.add(to, this.bits) };
  }

  setsAt(node: number): number[] {
    const found: number[] = [];
    for (let set = 1; set < 1 << this.goals.length; set++)
      if ((this.can[node]! & (1 << set)) !== 0) found.push(set);
    return found;
  }

  /** Seeds the sets of one size from smaller ones, which must have spread already. */
  begin(size: number): void {
    const sets = Array.from({ length: (1 << this.goals.length) - 1 }, (_, s) => s + 1).filter(
      (s) => bitCount(s) === size,
    );
    this.goals.forEach((goal, k) => {
      for (const point of goal.points) for (let d = 0; d < 4; d++) this.arrive(point, d, k, sets);
    });
    if (size > 1) this.branch(sets);
  }

  private arrive(point: number, d: number, k: number, sets: readonly number[]): void {
    if (!this.space.table.stands(point, d & 1)) return;
    const node = point * 4 + d;
    const own = this.can[node]! | 1;
    for (const set of sets)
      if ((set & (1 << k)) !== 0 && (own & (1 << (set & ~(1 << k)))) !== 0) this.add(node, 1 << set);
  }

  private branch(sets: readonly number[]): void {
    const { l, half } = this.space;
    const shares = sets.map((set) => ({ set, ways: waysToShare(set) }));
    for (let cj = half; cj < l.ny - half; cj++)
      for (let ci = half; ci < l.nx - half; ci++) {
        if (this.cannotShare(ci, cj, sets) || this.space.platformAt(ci, cj) < 0) continue;
        for (let entry = 0; entry < 4; entry++) {
          const [ahead, left, right] = [entry, (entry + 3) & 3, (entry + 1) & 3].map(
            (d) => this.can[this.space.exitOf(ci, cj, d)]! | 1,
          );
          let bits = 0;
          for (const { set, ways } of shares)
            if (ways.some(([a, b, c]) => (ahead! >> a) & (left! >> b) & (right! >> c) & 1)) bits |= 1 << set;
          if (bits !== 0)
            this.add(this.space.nodeAt(ci - DX[entry]! * half, cj - DY[entry]! * half, entry), bits);
        }
      }
  }

  /** No set can be shared out here: its edges together serve too few plots. */
  private cannotShare(ci: number, cj: number, sets: readonly number[]): boolean {
    let any = 0;
    for (let d = 0; d < 4; d++) any |= this.can[this.space.exitOf(ci, cj, d)]!;
    return !sets.some((set) => (any & singles(set)) === singles(set));
  }

  /** Spreads over up to `most` joints; whether there is more to do. */
  goOn(most: number): boolean {
    for (let left = most; left > 0; left--) {
      const node = this.waiting.pop();
      if (node === undefined) return false;
      this.visited++;
      this.bits = this.can[node]!;
      this.space.expand(node, this.offer as Settle);
    }
    return true;
  }

  private add(node: number, bits: number): void {
    const old = this.can[node]!;
    if ((old | bits) === old) return;
    this.can[node] = old | bits;
    this.waiting.push(node);
  }
}

/** The bits of the sets of one plot each. */
const singles = (set: number): number => {
  let bits = 0;
  for (let k = 0; set >> k > 0; k++) if ((set & (1 << k)) !== 0) bits |= 1 << (1 << k);
  return bits;
};

/** Every way to share a set over ahead, left, right; the empty set is number 0. At least two exits serve something. */
function waysToShare(set: number): [number, number, number][] {
  const ways: [number, number, number][] = [];
  for (let a = 0; a <= set; a++)
    for (let b = 0; b <= set; b++) {
      const c = set & ~a & ~b;
      if ((a & ~set) !== 0 || (b & ~set) !== 0 || (a & b) !== 0) continue;
      if (a !== set && b !== set && c !== set) ways.push([a, b, c]);
    }
  return ways;
}

const bitCount = (set: number): number => {
  let count = 0;
  for (let rest = set; rest > 0; rest &= rest - 1) count++;
  return count;
};
