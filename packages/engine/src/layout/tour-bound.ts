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
 * For a joint v a lower bound on any network that joins the start, v and the terminals: half the least round tour over
 * them. Walking once around a network passes each module twice. A platform is passed twice through its entry, and once
 * more from exit to exit for every further exit in use; such a turn lies only on a leg between two ends of branches,
 * at most one on each, so every leg that does not touch the start goes free of `turn`, the most such a turn can cost.
 *
 * Consistent along arcs, because v stands in every tour between two neighbours, and neither of its legs changes by
 * more than the arc costs. Worked out when first asked for, then kept.
 */
export class TourBound {
  /** Least that the terminals alone make a network cost. */
  readonly least: number;
  private readonly fromStart: Int32Array;
  private readonly terminals: readonly Terminal[];
  private readonly measured: number;
  private readonly turn: number;
  private readonly gaps: readonly Gap[];
  /** Per point, plus 2, 0 = not yet worked out: the tour with v beside the start, its leg from the start left out. */
  private readonly besideStart: Int32Array;
  /** Per point, likewise: the tour with v between two terminals. */
  private readonly betweenTwo: Int32Array;

  /**
   * fromStart  per joint, least cost from the start plus 1, 0 where it is not known
   * measured   up to this cost `fromStart` is exact; beyond it, all that is known of a joint is that it costs as much
   * turn       most that a turn from exit to exit of a platform costs in the fields
   */
  constructor(fromStart: Int32Array, measured: number, terminals: readonly Terminal[], turn: number) {
    this.fromStart = fromStart;
    this.measured = measured;
    this.terminals = terminals;
    this.turn = turn;
    const tours = toursOver(terminals, turn);
    this.gaps = tours.gaps;
    this.least = Math.max(Math.floor(tours.least / 2), 0, ...terminals.map((t) => t.fromStart));
    const points = terminals.length === 0 ? 0 : fromStart.length / 4;
    this.besideStart = new Int32Array(points);
    this.betweenTwo = new Int32Array(terminals.length > 1 ? points : 0);
  }

  /** Whole cost, `CUT_OFF` where a terminal cannot be reached. */
  at(node: number): number {
    const known = this.fromStart[node]!;
    const start = known === 0 || known > this.measured ? this.measured : known - 1;
    if (this.terminals.length === 0) return start;
    const point = node >> 2;
    if (this.besideStart[point] === 0) this.workOut(point);
    const beside = this.besideStart[point]! - 2;
    let tour = beside < 0 ? NEVER : start + beside;
    if (this.betweenTwo.length > 0) {
      const between = this.betweenTwo[point]! - 2;
      if (between >= 0 && between < tour) tour = between;
    }
    if (tour === NEVER) return CUT_OFF;
    const half = tour >> 1;
    const least = this.least > start ? this.least : start;
    return half > least ? half : least;
  }

  private workOut(point: number): void {
    let beside = NEVER;
    let between = NEVER;
    for (const { a, b, rest } of this.gaps) {
      const left = a < 0 ? 0 : this.leg(a, point);
      const right = this.leg(b, point);
      if (left < 0 || right < 0) continue;
      if (a < 0) beside = Math.min(beside, right + rest);
      else between = Math.min(between, left + right + rest);
    }
    this.besideStart[point] = (beside === NEVER ? CUT_OFF : beside) + 2;
    if (this.betweenTwo.length > 0) this.betweenTwo[point] = (between === NEVER ? CUT_OFF : between) + 2;
  }

  private leg(k: number, point: number): number {
    const cost = this.terminals[k]!.field[point]!;
    return cost < 0 ? CUT_OFF : Math.max(0, cost - this.turn);
  }
}

const NEVER = 0x7fffffff;

/** A place in a tour for v: between the start (-1) and terminal b, or between two terminals. */
interface Gap {
  readonly a: number;
  readonly b: number;
  /** Least of a tour around the start and the terminals with this gap left open. */
  readonly rest: number;
}

/** Ways to walk round the start and the terminals, each gap with the least of all that have it. */
function toursOver(
  terminals: readonly Terminal[],
  turn: number,
): { readonly least: number; readonly gaps: readonly Gap[] } {
  if (terminals.length === 0) return { least: 0, gaps: [] };
  const best = new Map<string, Gap>();
  let least = Infinity;
  const distance = (a: number, b: number): number =>
    a < 0
      ? terminals[b]!.fromStart
      : b < 0
        ? terminals[a]!.fromStart
        : Math.max(0, terminals[a]!.between[b]! - turn);
  for (const order of orders(terminals.map((_, n) => n))) {
    const ring = [-1, ...order];
    const whole = ring.reduce((sum, stop, n) => sum + distance(stop, ring[(n + 1) % ring.length]!), 0);
    least = Math.min(least, whole);
    ring.forEach((stop, n) => {
      const next = ring[(n + 1) % ring.length]!;
      const [a, b] = stop < next ? [stop, next] : [next, stop];
      const rest = whole - distance(stop, next);
      const known = best.get(`${a},${b}`);
      if (!known || rest < known.rest) best.set(`${a},${b}`, { a, b, rest });
    });
  }
  return { least, gaps: [...best.values()] };
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
