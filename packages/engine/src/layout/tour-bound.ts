import { CUT_OFF } from "./step-bound.ts";

/** A plot that a network must also serve. */
export interface Terminal {
  /** Least cost of a way from the start to it. */
  readonly fromStart: number;
  /** Least cost from it to every lattice point, `CUT_OFF` where none leads. */
  readonly field: Int32Array;
  /** Least cost from it to each of the terminals, itself included. */
  readonly between: readonly number[];
}

/**
 * For a lattice point v a lower bound on any network that joins the start, v and the terminals: half the least round
 * tour over them, since walking once around a network passes each of its parts twice. Consistent along arcs, because
 * v stands in every tour between two neighbours. Worked out when first asked for, then kept.
 */
export class TourBound {
  private readonly toStart: Int32Array;
  private readonly terminals: readonly Terminal[];
  private readonly tours: readonly { readonly a: number; readonly b: number; readonly rest: number }[];
  /** Bound + 2, 0 = not yet worked out. */
  private readonly kept: Int32Array;

  /** `toStart`: least cost from the start to every point, `CUT_OFF` where none leads. */
  constructor(toStart: Int32Array, terminals: readonly Terminal[]) {
    this.toStart = toStart;
    this.terminals = terminals;
    this.tours = terminals.length === 0 ? [] : insertions(terminals);
    this.kept = new Int32Array(terminals.length === 0 ? 0 : toStart.length);
  }

  /** Whole cost, `CUT_OFF` where the start cannot be reached. */
  at(v: number): number {
    if (this.terminals.length === 0) return this.toStart[v]!;
    const kept = this.kept[v]!;
    if (kept !== 0) return kept - 2;
    const bound = this.workOut(v);
    this.kept[v] = bound + 2;
    return bound;
  }

  private workOut(v: number): number {
    const start = this.toStart[v]!;
    if (start === CUT_OFF) return CUT_OFF;
    let least = Infinity;
    for (const { a, b, rest } of this.tours) {
      const left = a < 0 ? start : this.terminals[a]!.field[v]!;
      const right = b < 0 ? start : this.terminals[b]!.field[v]!;
      if (left >= 0 && right >= 0 && left + right + rest < least) least = left + right + rest;
    }
    return least === Infinity ? CUT_OFF : Math.floor(least / 2);
  }
}

/** Ways to walk round the start (-1) and the terminals with a gap between `a` and `b` into which v goes. */
function insertions(terminals: readonly Terminal[]): { a: number; b: number; rest: number }[] {
  const best = new Map<string, { a: number; b: number; rest: number }>();
  const distance = (a: number, b: number): number =>
    a < 0 ? terminals[b]!.fromStart : b < 0 ? terminals[a]!.fromStart : terminals[a]!.between[b]!;
  for (const order of orders(terminals.map((_, n) => n))) {
    const ring = [-1, ...order];
    const whole = ring.reduce((sum, stop, n) => sum + distance(stop, ring[(n + 1) % ring.length]!), 0);
    ring.forEach((stop, n) => {
      const next = ring[(n + 1) % ring.length]!;
      const [a, b] = stop < next ? [stop, next] : [next, stop];
      const rest = whole - distance(stop, next);
      const known = best.get(`${a},${b}`);
      if (!known || rest < known.rest) best.set(`${a},${b}`, { a, b, rest });
    });
  }
  return [...best.values()];
}

function orders(items: readonly number[]): number[][] {
  if (items.length <= 1) return [[...items]];
  return items.flatMap((first) => orders(items.filter((i) => i !== first)).map((rest) => [first, ...rest]));
}

/** Least of a field over some points; `CUT_OFF` values do not count, and 0 stands where nothing is known. */
export function leastOver(field: Int32Array, points: Iterable<number>): number {
  let least = Infinity;
  for (const p of points) if (field[p]! >= 0) least = Math.min(least, field[p]!);
  return least === Infinity ? 0 : least;
}
