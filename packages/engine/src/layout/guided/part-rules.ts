import type { LayoutFacts, SearchCosts } from "../facts.ts";
import type { Fields } from "../fields.ts";
import type { JointTable } from "../joint-table.ts";
import { DX, DY, type Lattice } from "../lattice.ts";
import type { LayoutChoice } from "../types.ts";

/** A part with its supports: money and harm, and how many rules it breaks. `broken` Infinity: it cannot lie there at all. */
export interface Judged {
  readonly price: number;
  readonly broken: number;
}

const NOWHERE: Judged = { price: 0, broken: Infinity };

/**
 * What each part would cost at each place of a lattice, and how many hard rules it would break there.
 * The same rules and prices as in the joints' space of the search, but a broken rule is counted instead of refused.
 */
export class PartRules {
  readonly l: Lattice;
  readonly table: JointTable;
  readonly steps: readonly number[];
  readonly half: number;
  private readonly f: Fields;
  private readonly facts: LayoutFacts;
  private readonly costs: SearchCosts;
  private readonly choice: LayoutChoice;
  private readonly rows: number;
  private readonly platformRows: number;
  private readonly lowest: number;
  private readonly highest: number;
  private readonly modules: readonly Map<number, Judged>[];
  private readonly platforms = new Map<number, Judged>();
  private readonly joints: readonly Map<number, Judged>[] = [new Map(), new Map()];

  constructor(
    l: Lattice,
    f: Fields,
    table: JointTable,
    facts: LayoutFacts,
    costs: SearchCosts,
    choice: LayoutChoice,
  ) {
    this.l = l;
    this.f = f;
    this.table = table;
    this.facts = facts;
    this.costs = costs;
    this.choice = choice;
    this.steps = facts.lengths_m.map((m) => Math.round((m + facts.gap_m) / l.step));
    this.half = Math.round((facts.platform_side_m + facts.gap_m) / 2 / l.step);
    this.rows = Math.ceil(facts.width_m / 2 / l.step + 0.5 - 1e-9) - 1;
    this.platformRows = Math.ceil(facts.platform_side_m / 2 / l.step + 0.5 - 1e-9) - 1;
    const least = (k: LayoutFacts["supports"][number]): number =>
      Math.max(k.height_min_mm, choice.min_clear_mm) / 1000;
    this.lowest = Math.min(...facts.supports.map(least)) + facts.depth_m;
    this.highest = Math.max(...facts.supports.map((k) => k.height_max_mm)) / 1000 + facts.depth_m;
    this.modules = Array.from({ length: 2 * this.steps.length }, () => new Map<number, Judged>());
  }

  /** The same places and prices over other fields. */
  with(f: Fields): PartRules {
    return new PartRules(this.l, f, this.table, this.facts, this.costs, this.choice);
  }

  /** Drops what was worked out: after a place was ruled out in the table. */
  forget(): void {
    for (const known of [...this.modules, ...this.joints, this.platforms]) known.clear();
  }

  /** Module `n` from its lower end, along (0) or across (1) the lattice, without supports. */
  module(o: number, n: number, lower: number): Judged {
    const known = this.modules[o * this.steps.length + n]!;
    return known.get(lower) ?? keep(known, lower, this.judgeModule(o, n, lower));
  }

  /** The support at a point. */
  joint(point: number, o: number): Judged {
    const known = this.joints[o]!;
    return known.get(point) ?? keep(known, point, this.judgeJoint(point, o));
  }

  /** A platform by its middle, with all four supports. */
  platform(ci: number, cj: number): Judged {
    const { nx, ny } = this.l;
    if (ci < this.half || cj < this.half || ci >= nx - this.half || cj >= ny - this.half) return NOWHERE;
    const point = cj * nx + ci;
    return this.platforms.get(point) ?? keep(this.platforms, point, this.judgePlatform(ci, cj));
  }

  private judgeJoint(point: number, o: number): Judged {
    if (Number.isNaN(this.f.ground[point]!)) return NOWHERE;
    return this.table.stands(point, o)
      ? { price: this.table.cost[o]![point]!, broken: 0 }
      : { price: 0, broken: 1 };
  }

  private judgeModule(o: number, n: number, lower: number): Judged {
    const { nx, ny, step } = this.l;
    const k = this.steps[n]!;
    const i = lower % nx;
    const j = (lower - i) / nx;
    const far = lower + (o === 0 ? k : k * nx);
    const [i0, j0, i1, j1] =
      o === 0 ? [i, j - this.rows, i + k, j + this.rows] : [i - this.rows, j, i + this.rows, j + k];
    if (i0 < 0 || j0 < 0 || i1 >= nx || j1 >= ny) return NOWHERE;
    const [low, high] = [this.reach(lower, o), this.reach(far, o)];
    const rise = Math.max(low[0] - high[1], high[0] - low[1]);
    const labour = this.costs.labour_per_m * k * step;
    const known = this.costs.module[n]!;
    const { weights } = this.choice;
    const money = known === null ? k * step : (known + labour) * weights.money;
    const harm =
      (this.f.harm.over(i0, j0, i1, j1) * weights.shade_per_m2 * this.facts.width_m * k * step) /
      ((2 * this.rows + 1) * (k + 1));
    const water = this.f.water.over(i0, j0, i1, j1) > 0 ? weights.crossing : 0;
    const tooSteep = rise > this.choice.max_grade * k * step ? 1 : 0;
    return {
      price: money + harm + water,
      broken: tooSteep + share(this.f.blocked.over(i0, j0, i1, j1), (i1 - i0 + 1) * (j1 - j0 + 1), k * step),
    };
  }

  /** Lowest and highest deck over a point; where no support may stand, of any kind. */
  private reach(point: number, o: number): readonly [number, number] {
    if (this.table.stands(point, o)) return [this.table.low(point, o), this.table.high(point, o)];
    return [this.f.ground[point]! + this.lowest, this.f.ground[point]! + this.highest];
  }

  private judgePlatform(ci: number, cj: number): Judged {
    const p = this.platformRows;
    const { costs, choice, facts } = this;
    let low = -Infinity;
    let high = Infinity;
    let price = 0;
    let broken = 0;
    for (let d = 0; d < 4; d++) {
      const point = (cj + DY[d]! * this.half) * this.l.nx + ci + DX[d]! * this.half;
      const joint = this.joint(point, d & 1);
      price += joint.price;
      broken += joint.broken;
      const [least, most] = this.reach(point, d & 1);
      low = Math.max(low, least);
      high = Math.min(high, most);
    }
    const pitch = 2 * this.half * this.l.step;
    const harm = this.f.harm.over(ci - p, cj - p, ci + p, cj + p) / (2 * p + 1) ** 2;
    price +=
      costs.platform === null ? pitch : (costs.platform + costs.labour_per_m * pitch) * choice.weights.money;
    price += harm * choice.weights.shade_per_m2 * facts.platform_side_m ** 2;
    broken += share(this.f.blocked.over(ci - p, cj - p, ci + p, cj + p), (2 * p + 1) ** 2, pitch);
    return { price, broken: broken + (low > high ? 1 : 0) };
  }
}

/** A part that touches what it may not: one broken rule, and one more for each metre of it that lies there. */
const share = (blocked: number, points: number, length_m: number): number =>
  blocked === 0 ? 0 : 1 + (length_m * blocked) / points;

function keep(known: Map<number, Judged>, key: number, value: Judged): Judged {
  known.set(key, value);
  return value;
}
