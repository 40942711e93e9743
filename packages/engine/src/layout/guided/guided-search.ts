import type { Job } from "../../formula/index.ts";
import { AHEAD, LEFT, RIGHT } from "../joint-space.ts";
import { DX, DY } from "../lattice.ts";
import type { Guide } from "./guide.ts";
import { KeyValues } from "./key-values.ts";
import { LabelQueue } from "./label-queue.ts";
import type { Judged, PartRules } from "./part-rules.ts";
import type { FitPrices } from "./prices.ts";

/** What the way must have where it passes a point of the guide. */
export type Demand =
  | { readonly kind: "platform"; readonly at: number }
  /** A joint at one of some lattice points. */
  | { readonly kind: "joint"; readonly at: number; readonly points: ReadonlySet<number> };

/** A joint from which the way may begin: its place on the guide, steps since the last place to pass, cost so far. */
export interface Seed {
  readonly node: number;
  readonly beside: number;
  readonly since: number;
  readonly cost: number;
}

export interface FitTask {
  readonly guide: Guide;
  readonly rules: PartRules;
  readonly prices: FitPrices;
  readonly seeds: readonly Seed[];
  /** Half width of the corridor, and of what is searched at all [m]. */
  readonly corridor_m: number;
  readonly width_m: number;
  /** In the order of the guide. */
  readonly demands: readonly Demand[];
  /** Lattice points at which the way should end; null = beside the guide's last point. */
  readonly ends: ReadonlySet<number> | null;
  /** Farthest between two places to pass [steps]; null = not asked for. */
  readonly passing: number | null;
  /** Hard rules are kept or there is no fit; else each broken rule has a price. Passing always has a price. */
  readonly strict: boolean;
}

export interface FittedPath {
  readonly cost: number;
  /** Money and harm of the parts and their supports, the first joint's left out. */
  readonly price: number;
  readonly first: number;
  /** It ends where it should, has all it must have, and leaves nothing of its guide behind the corridor. */
  readonly isWhole: boolean;
  /** Arc and the joint it leads to, in the order of walking. */
  readonly steps: readonly { readonly arc: number; readonly to: number }[];
}

const dx: readonly number[] = DX;
const dy: readonly number[] = DY;
const SLICE = 1 << 14;
/** Not reaching the plot counts as so many broken rules. */
const UNREACHED = 5;
/** A way that has broken so many rules more than another got along as far with is given up. */
const FAR_BEHIND = 12;

/**
 * The parts whose middle line follows a guide best: shortest path over (joint, guide point beside it), with the steps
 * since the last place to pass where these are asked for. Exact for the prices given, since the guide point beside the
 * next joint depends on nothing but the part and the guide point beside this one; of labels at one joint and guide
 * point only those that cost less or passed later are kept. Heuristic: a way that fell far behind is given up, though
 * the one ahead of it might still meet more broken rules than it has.
 */
export class GuidedSearch {
  settled = 0;
  private readonly t: FitTask;
  private readonly queue = new LabelQueue();
  /** Per joint and guide point, least steps since the last place to pass among settled labels, where passing matters. */
  private readonly passed = new KeyValues();
  /** Per joint and guide point, least cost offered, where passing does not matter. */
  private readonly offered = new KeyValues();
  private readonly lengths: Int32Array;
  private readonly cubic: number;
  /** Per guide point, the cost at which it or one after it was first reached. */
  private readonly ahead: Float64Array;
  private reached = -1;
  private best = -1;
  private isWhole = false;
  private bestCost: number;

  /** `most`: a fit that costs as much or more is not wanted. */
  constructor(task: FitTask, most: number) {
    this.t = task;
    this.bestCost = most;
    const { steps, half, l } = task.rules;
    this.lengths = new Int32Array(Math.max(...steps, half) + 1).fill(-1);
    steps.forEach((k, n) => (this.lengths[k] = n));
    this.cubic = l.step ** 3;
    this.ahead = new Float64Array(task.guide.count);
  }

  *run(note: string): Job<FittedPath | null> {
    for (const s of this.t.seeds) this.queue.add(s.cost, s.node, s.beside, s.since, -1, 0, 0);
    for (let label = this.queue.take(); label >= 0; label = this.queue.take()) {
      if (this.queue.cost[label]! >= this.bestCost) break;
      if (!this.isNew(label) || this.isFarBehind(label)) continue;
      if (++this.settled % SLICE === 0) yield { done: this.settled, total: 0, note };
      this.tryEnd(label);
      this.expand(label);
    }
    return this.best < 0 ? null : this.trace();
  }

  private isNew(label: number): boolean {
    const key = this.queue.node[label]! * this.t.guide.count + this.queue.beside[label]!;
    if (this.t.passing === null) return this.queue.cost[label]! <= this.offered.get(key);
    return this.passed.lower(key, this.queue.since[label]!);
  }

  /** Whether another way was as far along the guide, or farther, for much less. */
  private isFarBehind(label: number): boolean {
    const cost = this.queue.cost[label]!;
    const m = this.queue.beside[label]!;
    for (let n = this.reached + 1; n <= m; n++) this.ahead[n] = cost;
    this.reached = Math.max(this.reached, m);
    return cost > this.ahead[m]! + FAR_BEHIND * this.t.prices.rule;
  }

  private tryEnd(label: number): void {
    const { guide, rules, prices, ends, demands, corridor_m, strict } = this.t;
    const { l } = rules;
    const point = this.queue.node[label]! >> 2;
    const m = this.queue.beside[label]!;
    const isThere = ends === null || ends.has(point);
    const missing = demands.reduce((sum, d) => sum + (d.at > m ? 1 : 0), 0);
    if (strict && (!isThere || missing > 0)) return;
    let cost = this.queue.cost[label]! + missing * prices.missing;
    if (!isThere) cost += UNREACHED * prices.rule;
    if (cost >= this.bestCost) return;
    const i = point % l.nx;
    const most = (this.bestCost - cost) / this.cubic;
    const [v, within] = [(point - i) / l.nx, corridor_m / l.step];
    cost += guide.rest(m, i, v, within, (prices.open * l.step) / this.cubic, most) * this.cubic;
    if (cost >= this.bestCost) return;
    this.bestCost = cost;
    this.best = label;
    this.isWhole = isThere && missing === 0 && guide.isNearEnd(m, i, v, within);
  }

  private expand(label: number): void {
    const { rules, guide } = this.t;
    const { nx, ny } = rules.l;
    const node = this.queue.node[label]!;
    const d = node & 3;
    const point = node >> 2;
    const i = point % nx;
    const j = (point - i) / nx;
    let m = this.queue.beside[label]!;
    let off2 = guide.near2(m, i, j);
    let sum = 0;
    for (let s = 1; s < this.lengths.length; s++) {
      const u = i + dx[d]! * s;
      const v = j + dy[d]! * s;
      if (u < 0 || v < 0 || u >= nx || v >= ny) return;
      m = guide.walk(m, off2, u - dx[d]!, v - dy[d]!, u, v);
      off2 = guide.off2;
      sum += this.stretch(guide.deviation, off2);
      if (sum === Infinity) return;
      const n = this.lengths[s]!;
      if (n >= 0 && !guide.goesBack(m, off2, u, v)) {
        const to = v * nx + u;
        this.offer(label, to * 4 + d, n + 1, m, sum, rules.module(d & 1, n, d < 2 ? point : to), 0);
      }
      if (s === rules.half) this.enterPlatform(label, u, v, d, m, off2, sum);
    }
  }

  private enterPlatform(
    label: number,
    ci: number,
    cj: number,
    d: number,
    m: number,
    off2: number,
    sum: number,
  ): void {
    const judged = this.t.rules.platform(ci, cj);
    if (judged.broken === Infinity) return;
    this.leavePlatform(label, ci, cj, d, AHEAD, m, off2, sum, judged);
    this.leavePlatform(label, ci, cj, (d + 3) & 3, LEFT, m, off2, sum, judged);
    this.leavePlatform(label, ci, cj, (d + 1) & 3, RIGHT, m, off2, sum, judged);
  }

  private leavePlatform(
    label: number,
    ci: number,
    cj: number,
    d: number,
    arc: number,
    m: number,
    off2: number,
    before: number,
    judged: Judged,
  ): void {
    const { guide, rules } = this.t;
    let sum = before;
    for (let s = 1; s <= rules.half; s++) {
      const u = ci + dx[d]! * s;
      const v = cj + dy[d]! * s;
      m = guide.walk(m, off2, u - dx[d]!, v - dy[d]!, u, v);
      off2 = guide.off2;
      sum += this.stretch(guide.deviation, off2);
    }
    if (sum === Infinity) return;
    const [u, v] = [ci + dx[d]! * rules.half, cj + dy[d]! * rules.half];
    if (guide.goesBack(m, off2, u, v)) return;
    const to = v * rules.l.nx + u;
    this.offer(label, to * 4 + d, arc, m, sum, judged, cj * rules.l.nx + ci);
  }

  /** Price of one step of a middle line: deviation, and leaving the corridor; Infinity outside what is searched. */
  private stretch(deviation: number, off2: number): number {
    const { rules, corridor_m, width_m, prices } = this.t;
    const { step } = rules.l;
    const off = Math.sqrt(off2) * step;
    if (off > width_m) return Infinity;
    return deviation * this.cubic + (off > corridor_m ? prices.rule * (off - corridor_m) * step : 0);
  }

  private offer(
    label: number,
    to: number,
    arc: number,
    m: number,
    sum: number,
    part: Judged,
    middle: number,
  ): void {
    const { rules, prices, strict } = this.t;
    const from = this.queue.node[label]!;
    const isModule = arc < AHEAD;
    const joint = isModule ? rules.joint(to >> 2, to & 1) : rules.joint(from >> 2, from & 1);
    const sign = isModule ? 1 : -1;
    const broken = part.broken + (isModule ? joint.broken : strict ? 0 : -joint.broken);
    if (broken === Infinity || Number.isNaN(broken) || (strict && broken > 0)) return;
    const asked = this.demanded(label, to, isModule ? -1 : middle, m);
    if (asked === Infinity) return;
    const [since, missed] = this.sincePassing(this.queue.since[label]!, arc);
    const price = part.price + sign * joint.price;
    const turn = arc === LEFT || arc === RIGHT ? prices.turn : 0;
    const cost =
      this.queue.cost[label]! +
      sum +
      broken * prices.rule +
      asked +
      missed +
      turn +
      prices.part +
      price * prices.money;
    if (cost < this.bestCost && this.isBetter(to * this.t.guide.count + m, cost))
      this.queue.add(cost, to, m, since, label, arc, this.queue.price[label]! + price);
  }

  private isBetter(key: number, cost: number): boolean {
    return this.t.passing !== null || this.offered.lower(key, cost);
  }

  /** Price of the demands on the stretch of guide that a part goes along. */
  private demanded(label: number, to: number, middle: number, m: number): number {
    const { demands, rules, guide, prices, strict } = this.t;
    const before = this.queue.beside[label]!;
    const from = this.queue.node[label]! >> 2;
    let sum = 0;
    for (const d of demands) {
      if (d.at <= before || d.at > m) continue;
      if (d.kind === "joint" && (d.points.has(to >> 2) || d.points.has(from))) continue;
      if (d.kind === "platform" && middle >= 0) {
        const { nx, step } = rules.l;
        const i = middle % nx;
        sum += ((i - guide.u[d.at]!) ** 2 + ((middle - i) / nx - guide.v[d.at]!) ** 2) * step * step;
      } else if (strict) return Infinity;
      else sum += prices.missing;
    }
    return sum;
  }

  /** Steps since the last place to pass after one more part, and the price of having gone too far. */
  private sincePassing(since: number, arc: number): [number, number] {
    const { passing, rules, prices } = this.t;
    if (passing === null) return [0, 0];
    const isModule = arc < AHEAD;
    const now = since + (isModule ? rules.steps[arc - 1]! : rules.half);
    const missed = now > passing ? prices.passing : 0;
    return [isModule ? Math.min(now, passing) : rules.half, missed];
  }

  private trace(): FittedPath {
    const steps: { arc: number; to: number }[] = [];
    let label = this.best;
    for (; this.queue.from[label]! >= 0; label = this.queue.from[label]!)
      steps.push({ arc: this.queue.arc[label]!, to: this.queue.node[label]! });
    return {
      cost: this.bestCost,
      price: this.queue.price[this.best]!,
      first: this.queue.node[label]!,
      isWhole: this.isWhole,
      steps: steps.reverse(),
    };
  }
}
