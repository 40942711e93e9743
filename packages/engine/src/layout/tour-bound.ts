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
 * For every lattice point v a lower bound on any network that joins the start, v and the terminals: half the least
 * round tour over them, since walking once around a network passes each of its parts twice. Consistent along arcs,
 * because v stands in every tour between two neighbours.
 *
 * toStart  least cost from the start to every point
 * returns  whole costs, `CUT_OFF` where the start cannot be reached
 */
export function tourBound(toStart: Int32Array, terminals: readonly Terminal[]): Int32Array {
  const tours = insertions(terminals);
  const bound = new Int32Array(toStart.length);
  for (let v = 0; v < bound.length; v++) {
    const start = toStart[v]!;
    let least = Infinity;
    for (const { a, b, rest } of tours) {
      const left = a < 0 ? start : terminals[a]!.field[v]!;
      const right = b < 0 ? start : terminals[b]!.field[v]!;
      if (left >= 0 && right >= 0) least = Math.min(least, left + right + rest);
    }
    bound[v] = start === CUT_OFF || least === Infinity ? CUT_OFF : Math.floor(least / 2);
  }
  return bound;
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
