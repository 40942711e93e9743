import { groundAt, type Raster } from "../../site/index.ts";
import type { PlacedJoint, PlacedModule, PlacedNetwork } from "../assemble.ts";
import type { LayoutFacts, SearchCosts } from "../facts.ts";
import { levelGroups } from "../level-groups.ts";
import { LEVEL_STEP, READ_SPACING, UNEVENNESS, type JointHeight, type ProfileRules } from "../profile.ts";

/** One broken rule of height, and each metre by which it is broken: beside metres of support height, far too much. */
const BROKEN = 1e4;

interface Seat {
  readonly joints: readonly PlacedJoint[];
  /** Deck at level 0 [m]. */
  readonly base: number;
  readonly cost: Float64Array;
  readonly links: { readonly module: PlacedModule; readonly to: Seat; readonly choice: Int32Array }[];
}

/**
 * Deck heights where the rules cannot all be kept: the same dynamic programming over levels 10 mm apart as in
 * `deckProfile`, but a support out of its range, too steep a module and one too near to the ground have a price, so that
 * there always is an answer, with as few broken rules as there can be and broken as little as can be. Platforms are level.
 *
 * fixed  joints whose deck is known already, by id [m above the site datum]
 */
export function softProfile(
  network: PlacedNetwork,
  terrain: Raster,
  facts: LayoutFacts,
  costs: SearchCosts,
  rules: ProfileRules,
  fixed: ReadonlyMap<string, number> = new Map(),
): Map<string, JointHeight> {
  return new SoftSolver(network, terrain, facts, costs, rules, fixed).solve();
}

class SoftSolver {
  private readonly n: PlacedNetwork;
  private readonly terrain: Raster;
  private readonly facts: LayoutFacts;
  private readonly costs: SearchCosts;
  private readonly rules: ProfileRules;
  private readonly fixed: ReadonlyMap<string, number>;
  private readonly joints: ReadonlyMap<string, PlacedJoint>;
  private readonly seatOf = new Map<string, Seat>();

  constructor(
    n: PlacedNetwork,
    terrain: Raster,
    facts: LayoutFacts,
    costs: SearchCosts,
    rules: ProfileRules,
    fixed: ReadonlyMap<string, number>,
  ) {
    this.n = n;
    this.terrain = terrain;
    this.facts = facts;
    this.costs = costs;
    this.rules = rules;
    this.fixed = fixed;
    this.joints = new Map(n.joints.map((j) => [j.id, j]));
  }

  solve(): Map<string, JointHeight> {
    for (const group of levelGroups(this.n)) this.addSeat(group.map((id) => this.joints.get(id)!));
    for (const joint of this.n.joints) if (!this.seatOf.has(joint.id)) this.addSeat([joint]);
    for (const part of this.n.parts)
      if (part.kind === "module") {
        const from = this.seatOf.get(part.from)!;
        const choice = new Int32Array(from.cost.length);
        from.links.push({ module: part, to: this.seatOf.get(part.to)!, choice });
      }
    const order = [...new Set(this.n.joints.map((j) => this.seatOf.get(j.id)!))];
    for (const seat of [...order].reverse()) for (const link of seat.links) this.fold(seat, link);
    const heights = new Map<string, JointHeight>();
    // A joint that nothing leads to is a root of its own: the start, or the last laid joint of each stretch.
    const led = new Set(order.flatMap((s) => s.links.map((l) => l.to)));
    for (const root of order.filter((s) => !led.has(s))) this.readOut(root, cheapest(root), heights);
    return heights;
  }

  private addSeat(joints: readonly PlacedJoint[]): void {
    const known = joints.map((j) => this.fixed.get(j.id)).filter((z) => z !== undefined);
    const ranges = joints.map((j) => this.rangeOf(j));
    const low = Math.ceil(Math.min(...ranges.map((r) => r[0])) / LEVEL_STEP - 1e-9);
    const high = Math.max(low, Math.floor(Math.max(...ranges.map((r) => r[1])) / LEVEL_STEP + 1e-9));
    const base = known[0] ?? low * LEVEL_STEP;
    const cost = new Float64Array(known.length > 0 ? 1 : high - low + 1);
    for (let k = 0; k < cost.length; k++)
      for (const joint of joints) cost[k]! += this.standing(joint, levelOf(base, k)).cost;
    const seat: Seat = { joints, base, cost, links: [] };
    for (const joint of joints) this.seatOf.set(joint.id, seat);
  }

  private rangeOf(joint: PlacedJoint): [number, number] {
    const kinds = this.facts.supports.filter((_, n) => (joint.kinds & (1 << n)) !== 0);
    const base = joint.ground_m + this.facts.depth_m;
    return [
      base + Math.max(this.rules.min_clear_m, Math.min(...kinds.map((k) => k.height_min_mm)) / 1000),
      base + Math.max(...kinds.map((k) => k.height_max_mm)) / 1000,
    ];
  }

  /** Cheapest kind at a joint for a deck; one out of its range costs by how far. */
  private standing(joint: PlacedJoint, deck: number): JointHeight & { readonly cost: number } {
    const height_m = deck - joint.ground_m - this.facts.depth_m;
    let best = { deck_m: deck, kind: 0, height_m, cost: Infinity };
    this.facts.supports.forEach((kind, n) => {
      if ((joint.kinds & (1 << n)) === 0) return;
      const short = Math.max(this.rules.min_clear_m, kind.height_min_mm / 1000) - height_m;
      const out = Math.max(short, height_m - kind.height_max_mm / 1000);
      const price =
        (this.costs.support[n]!.least ?? 0) +
        this.costs.support[n]!.per_m * (height_m - kind.height_min_mm / 1000);
      const cost = price / 100 + height_m + (out > 1e-9 ? BROKEN * (1 + out) : 0);
      if (cost < best.cost) best = { deck_m: deck, kind: n, height_m, cost };
    });
    return best;
  }

  private fold(seat: Seat, link: Seat["links"][number]): void {
    const ground = this.groundUnder(link.module);
    const pitch = this.facts.lengths_m[link.module.length]! + this.facts.gap_m;
    const reach = this.rules.max_grade * pitch + 1e-9;
    for (let k = 0; k < seat.cost.length; k++) {
      const from = levelOf(seat.base, k);
      let least = Infinity;
      for (let m = 0; m < link.to.cost.length; m++) {
        const to = levelOf(link.to.base, m);
        const steep = Math.abs(to - from) - reach;
        let cost = link.to.cost[m]! + UNEVENNESS * Math.abs(to - from);
        if (steep > 0) cost += BROKEN * (1 + steep);
        if (cost >= least) continue;
        const short = this.shortage(from, to, ground);
        if (short > 1e-9) cost += BROKEN * (1 + short);
        if (cost >= least) continue;
        least = cost;
        link.choice[k] = m;
      }
      seat.cost[k]! += least;
    }
  }

  /** By how much a module comes too near to the ground between its joints, at worst [m]. */
  private shortage(from: number, to: number, ground: readonly number[]): number {
    const under = from - this.facts.depth_m - this.rules.min_clear_m;
    let short = -Infinity;
    for (let k = 0; k < ground.length; k++)
      short = Math.max(short, ground[k]! - under - ((to - from) * k) / (ground.length - 1));
    return short;
  }

  private groundUnder(module: PlacedModule): number[] {
    const from = this.joints.get(module.from)!;
    const to = this.joints.get(module.to)!;
    const pieces = Math.max(2, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / READ_SPACING));
    return Array.from({ length: pieces + 1 }, (_, k) => {
      const at = (a: number, b: number): number => a + ((b - a) * k) / pieces;
      const z = groundAt(this.terrain, at(from.x, to.x), at(from.y, to.y));
      return Number.isNaN(z) ? -Infinity : z;
    });
  }

  private readOut(seat: Seat, k: number, heights: Map<string, JointHeight>): void {
    for (const joint of seat.joints) {
      const { deck_m, kind, height_m } = this.standing(joint, levelOf(seat.base, k));
      heights.set(joint.id, { deck_m, kind, height_m });
    }
    for (const link of seat.links) this.readOut(link.to, link.choice[k]!, heights);
  }
}

const levelOf = (base: number, k: number): number =>
  k === 0 ? base : (Math.round(base / LEVEL_STEP) + k) * LEVEL_STEP;

function cheapest(seat: Seat): number {
  let best = 0;
  for (let k = 1; k < seat.cost.length; k++) if (seat.cost[k]! < seat.cost[best]!) best = k;
  return best;
}
