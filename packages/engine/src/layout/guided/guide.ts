import { latticeOf, type Lattice } from "../lattice.ts";

export type Spot = readonly [number, number];

/** A way may go back along its guide by this much, as steps around a sharp corner do [steps]. */
const BACK = 2;

/** A guide as points no farther apart than one lattice step, in lattice coordinates; bends are always among them. */
export class Guide {
  readonly u: Float64Array;
  readonly v: Float64Array;
  /** From each point back to the one before it [steps]. */
  readonly back: Float64Array;
  readonly count: number;
  /** So many points ahead are looked at when a part goes on by one step. */
  private readonly look: number;
  /** What the last `walk` added: squared deviation of the part and of the guide passed [steps cubed]. */
  deviation = 0;
  /** Distance from the guide at the end of the last `walk`, squared [steps squared]. */
  off2 = 0;

  /** `look_m`: the guide may be cut short by this much at one step, across a spike of it. At least two points. */
  constructor(l: Lattice, points: readonly Spot[], look_m: number) {
    const us: number[] = [];
    const vs: number[] = [];
    points.forEach(([x, y], n) => {
      const [u, v] = latticeOf(l, x, y);
      const [pu, pv] = n === 0 ? [u, v] : [us.at(-1)!, vs.at(-1)!];
      const pieces = n === 0 ? 1 : Math.max(1, Math.ceil(Math.hypot(u - pu, v - pv) - 1e-9));
      for (let k = 1; k <= pieces; k++) {
        us.push(pu + ((u - pu) * k) / pieces);
        vs.push(pv + ((v - pv) * k) / pieces);
      }
    });
    this.u = Float64Array.from(us);
    this.v = Float64Array.from(vs);
    this.count = us.length;
    this.back = Float64Array.from(us, (u, n) =>
      n === 0 ? 0 : Math.hypot(u - us[n - 1]!, vs[n]! - vs[n - 1]!),
    );
    this.look = Math.max(2, Math.ceil(look_m / l.step));
  }

  /** Squared distance from a place to the guide near one of its points [steps squared]. */
  near2(m: number, u: number, v: number): number {
    const here = square(u - this.u[m]!) + square(v - this.v[m]!);
    const before = m > 0 ? this.toPiece(m, u, v) : here;
    const after = m + 1 < this.count ? this.toPiece(m + 1, u, v) : here;
    return Math.min(here, before, after);
  }

  private toPiece(m: number, u: number, v: number): number {
    return toSegment2(u, v, this.u[m - 1]!, this.v[m - 1]!, this.u[m]!, this.v[m]!);
  }

  /**
   * Goes one stretch of a part on, from beside guide point `m`; returns the guide point that is then beside it: the
   * nearest of those not far ahead, never one behind. `off2` before: squared distance at the beginning.
   */
  walk(m: number, off2: number, u0: number, v0: number, u1: number, v1: number): number {
    let next = m;
    let least = Infinity;
    for (let n = m; n <= Math.min(m + this.look, this.count - 1); n++) {
      const d2 = square(u1 - this.u[n]!) + square(v1 - this.v[n]!);
      if (d2 < least - 1e-12) {
        least = d2;
        next = n;
      }
    }
    this.off2 = this.near2(next, u1, v1);
    let sum = ((off2 + this.off2) / 2) * (Math.abs(u1 - u0) + Math.abs(v1 - v0));
    for (let n = m + 1; n <= next; n++)
      sum += this.back[n]! * toSegment2(this.u[n]!, this.v[n]!, u0, v0, u1, v1);
    this.deviation = sum;
    return next;
  }

  /**
   * Whether a place beside guide point `m` lies much nearer to a point passed not long before: the way then goes back
   * along the guide, which leads nowhere. `off2`: its squared distance from the guide beside `m`.
   */
  goesBack(m: number, off2: number, u: number, v: number): boolean {
    if (off2 <= BACK * BACK) return false;
    const least = (Math.sqrt(off2) - BACK) ** 2;
    for (let n = Math.max(0, m - this.look); n < m; n++)
      if (square(u - this.u[n]!) + square(v - this.v[n]!) < least) return true;
    return false;
  }

  /**
   * What it costs to leave the rest of the guide: its squared distance from a place, and `open` for each step of it
   * farther off than `within`; all in steps cubed. Stops adding up once it is above `most`.
   */
  rest(m: number, u: number, v: number, within: number, open: number, most: number): number {
    const within2 = within * within;
    let sum = 0;
    for (let n = m + 1; n < this.count && sum <= most; n++) {
      const d2 = square(u - this.u[n]!) + square(v - this.v[n]!);
      sum += this.back[n]! * (d2 > within2 ? d2 + open : d2);
    }
    return sum;
  }

  /** Whether all of the rest of the guide lies within a distance of a place. */
  isNearEnd(m: number, u: number, v: number, within: number): boolean {
    return this.rest(m, u, v, within, Infinity, Infinity) < Infinity;
  }

  /** The guide point nearest to a place, the first of equals. */
  nearest(u: number, v: number): number {
    let best = 0;
    let least = Infinity;
    for (let n = 0; n < this.count; n++) {
      const d2 = square(u - this.u[n]!) + square(v - this.v[n]!);
      if (d2 < least - 1e-12) {
        least = d2;
        best = n;
      }
    }
    return best;
  }
}

const square = (a: number): number => a * a;

/** Squared distance from a point to a segment. */
export function toSegment2(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const ex = bx - ax;
  const ey = by - ay;
  const long2 = ex * ex + ey * ey;
  const t = long2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * ex + (y - ay) * ey) / long2));
  return square(x - ax - t * ex) + square(y - ay - t * ey);
}
