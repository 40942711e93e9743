import type { SupportKind } from "../kit/index.ts";
import { groundAt, type Plot, type Polygons, type Raster, type Site } from "../site/index.ts";
import { footArea, footReach, type LayoutFacts, type SearchCosts } from "./facts.ts";
import type { GroundFields } from "./fields.ts";
import { headingOf, latticeOf, placeOf, type Lattice } from "./lattice.ts";
import { PreparedArea } from "./prepared-area.ts";
import { MOST_FALL_M, entersKeepOff, mayStand, noFootAreas, type GroundWindow } from "./standing.ts";
import { markZone } from "./zone-mask.ts";

const KNOWN = 0x80;

export interface JointChoice {
  readonly from: string;
  readonly to: string;
  readonly min_clear_m: number;
  readonly contact_per_m2: number;
  readonly money: number;
}

/**
 * What may stand at each lattice point, for walkways along (0) and across (1) the lattice's heading.
 * Worked out when first asked for, then kept.
 */
export class JointTable {
  /** Bit n: support kind n may stand. */
  readonly kinds: [Uint8Array, Uint8Array];
  /** Money and contact harm of the cheapest standing support [money]. */
  readonly cost: [Float32Array, Float32Array];
  private readonly areas: readonly (readonly PreparedArea[])[];
  private readonly masks: readonly Uint8Array[];
  private readonly contact: readonly number[];
  /** Least and greatest height from ground to deck, by the bits of the kinds that stand [m]. */
  private readonly lowest: readonly number[];
  private readonly highest: readonly number[];
  private readonly l: Lattice;
  private readonly f: GroundFields;
  private readonly terrain: Raster;
  private readonly window: GroundWindow;
  private readonly facts: LayoutFacts;
  private readonly costs: SearchCosts;
  private readonly choice: JointChoice;
  private plots: readonly Plot[];
  private readonly reach: number;
  /** Points that a rejected layout must not use again. */
  private readonly banned = new Set<number>();

  constructor(
    l: Lattice,
    f: GroundFields,
    site: Site,
    window: GroundWindow,
    facts: LayoutFacts,
    costs: SearchCosts,
    choice: JointChoice,
  ) {
    const points = l.nx * l.ny;
    this.l = l;
    this.f = f;
    this.terrain = site.terrain;
    this.window = window;
    this.facts = facts;
    this.costs = costs;
    this.choice = choice;
    this.kinds = [new Uint8Array(points), new Uint8Array(points)];
    this.cost = [new Float32Array(points), new Float32Array(points)];
    const polygons = facts.supports.map((k) => noFootAreas(k, site, choice.from, choice.to));
    const prepared = new Map(polygons.flat().map((p) => [p, new PreparedArea(p)]));
    this.areas = polygons.map((list) => list.map((p) => prepared.get(p)!));
    this.plots = site.plots;
    this.reach = Math.max(...facts.supports.map((k) => footReach(k.feet)));
    const marked = new Map<string, Uint8Array>();
    this.masks = facts.supports.map((kind, n) => {
      const uses = [...kind.stands.not_in].sort().join();
      const mask = marked.get(uses) ?? markAll(l, polygons[n]!, this.reach);
      marked.set(uses, mask);
      return mask;
    });
    const sets = Array.from({ length: 1 << facts.supports.length }, (_, bits) =>
      facts.supports.filter((_kind, n) => (bits & (1 << n)) !== 0),
    );
    this.lowest = sets.map((set) => Math.min(...set.map((k) => leastHeight(k, choice))) + facts.depth_m);
    this.highest = sets.map((set) => Math.max(...set.map((k) => k.height_max_mm / 1000)) + facts.depth_m);
    this.contact = facts.supports.map((k) => footArea(k.feet) * choice.contact_per_m2);
  }

  /** True when some support may stand at a point, for a walkway along (0) or across (1). */
  stands(point: number, orientation: number): boolean {
    const known = this.kinds[orientation]![point]!;
    return ((known === 0 ? this.look(point, orientation) : known) & ~KNOWN) !== 0;
  }

  /** Bits of the kinds that may stand at a point. */
  standing(point: number, orientation: number): number {
    return this.stands(point, orientation) ? this.kinds[orientation]![point]! & ~KNOWN : 0;
  }

  /** Lowest deck the standing kinds allow [m above the site datum]; ask `stands` first. */
  low(point: number, orientation: number): number {
    return this.f.ground[point]! + this.lowest[this.kinds[orientation]![point]! & ~KNOWN]!;
  }

  /** Highest deck the standing kinds allow [m above the site datum]; ask `stands` first. */
  high(point: number, orientation: number): number {
    return this.f.ground[point]! + this.highest[this.kinds[orientation]![point]! & ~KNOWN]!;
  }

  /** Cheapest cost any support can have on ground of a sensitivity [money]. */
  leastCost(sensitivity: number): number {
    return Math.min(
      ...this.facts.supports.map(
        (_, n) => (this.costs.support[n]!.least ?? 0) * this.choice.money + this.contact[n]! * sensitivity,
      ),
    );
  }

  groundAt(point: number): number {
    const i = point % this.l.nx;
    return groundAt(this.terrain, ...placeOf(this.l, i, (point - i) / this.l.nx));
  }

  /** Rules a point out for both orientations: a layout that used it broke a rule the search cannot see. */
  ban(point: number): void {
    this.banned.add(point);
    this.forget(point);
  }

  /** Lets every point be used again that was ruled out; returns these points. */
  lift(): readonly number[] {
    const lifted = [...this.banned];
    this.banned.clear();
    for (const point of lifted) this.forget(point);
    return lifted;
  }

  /** Other plots on the same ground: forgets the points whose supports the keep-off circles of `moved` could touch. */
  replot(plots: readonly Plot[], moved: readonly Plot[]): void {
    this.plots = plots;
    for (const plot of moved)
      for (const point of pointsAround(this.l, plot.x, plot.y, plot.keep_off_m + this.reach))
        this.forget(point);
  }

  private forget(point: number): void {
    this.kinds[0][point] = 0;
    this.kinds[1][point] = 0;
  }

  private look(point: number, orientation: number): number {
    let bits = 0;
    let cost = Infinity;
    const ground = this.f.ground[point]!;
    if (!Number.isNaN(ground) && !this.banned.has(point))
      this.facts.supports.forEach((kind, n) => {
        if (leastHeight(kind, this.choice) > kind.height_max_mm / 1000 + 1e-9) return;
        if (!this.kindStands(n, point, orientation)) return;
        bits |= 1 << n;
        const money = (this.costs.support[n]!.least ?? 0) * this.choice.money;
        cost = Math.min(cost, money + this.contact[n]! * this.f.sensitivity[point]!);
      });
    this.cost[orientation]![point] = cost;
    return (this.kinds[orientation]![point] = bits | KNOWN);
  }

  /** Whether one kind may stand at a point: by masks and window where they decide, else foot by foot. */
  kindStands(n: number, point: number, orientation: number): boolean {
    const kind = this.facts.supports[n]!;
    const i = point % this.l.nx;
    const [x, y] = placeOf(this.l, i, (point - i) / this.l.nx);
    const cell = this.cellAt(x, y);
    const least = kind.stands.ground_above_m ?? -Number.MAX_VALUE;
    if (cell < 0 || this.window.high[cell]! < least) return false;
    const mark = this.masks[n]![point]!;
    if (mark === 1) return false;
    const low = this.window.low[cell]!;
    const isGoodAround = low >= least && this.window.high[cell]! - low <= MOST_FALL_M;
    const heading = headingOf(this.l, orientation);
    if (this.plots.length > 0 && entersKeepOff(kind, this.plots, this.reach, x, y, heading)) return false;
    if (mark === 0 && isGoodAround) return true;
    const areas = mark === 0 ? [] : this.areas[n]!;
    return mayStand(kind, this.terrain, areas, x, y, heading, isGoodAround);
  }

  private cellAt(x: number, y: number): number {
    const r = this.terrain;
    const i = Math.round((x - r.x0) / r.dx);
    const j = Math.round((y - r.y0) / r.dy);
    return i < 0 || j < 0 || i >= r.cols || j >= r.rows ? -1 : j * r.cols + i;
  }
}

/** Least height of a support that keeps its own range and the plan's clearance [m]. */
const leastHeight = (kind: SupportKind, choice: JointChoice): number =>
  Math.max(kind.height_min_mm / 1000, choice.min_clear_m);

function markAll(l: Lattice, areas: readonly Polygons[], radius: number): Uint8Array {
  const mask = new Uint8Array(l.nx * l.ny);
  for (const area of areas) markZone(l, area, radius, mask);
  return mask;
}

/** Lattice points within a distance of a place, and some beyond. */
export function pointsAround(l: Lattice, x: number, y: number, within_m: number): number[] {
  const [u, v] = latticeOf(l, x, y);
  const r = Math.ceil(within_m / l.step) + 1;
  const points: number[] = [];
  for (let j = Math.max(0, Math.floor(v) - r); j <= Math.min(l.ny - 1, Math.ceil(v) + r); j++)
    for (let i = Math.max(0, Math.floor(u) - r); i <= Math.min(l.nx - 1, Math.ceil(u) + r); i++)
      points.push(j * l.nx + i);
  return points;
}
