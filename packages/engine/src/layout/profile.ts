import type { SupportKind } from "../kit/index.ts";
import { groundAt, type Raster } from "../site/index.ts";
import type { PlacedJoint, PlacedModule, PlacedNetwork } from "./assemble.ts";
import type { LayoutFacts, SearchCosts } from "./facts.ts";
import { levelGroups } from "./level-groups.ts";

/** Deck heights are chosen on this grid; the supports are cut or packed to fit [m]. */
export const LEVEL_STEP = 0.01;
/** Ground is read this far apart under a module [m]. */
export const READ_SPACING = 0.1;
/** What one metre of rise or fall between two joints counts beside one metre of support height. */
export const UNEVENNESS = 3;

export interface JointHeight {
  readonly deck_m: number;
  readonly kind: number;
  readonly height_m: number;
}

export interface ProfileRules {
  readonly max_grade: number;
  readonly min_clear_m: number;
}

export type Profile =
  | { readonly ok: true; readonly heights: ReadonlyMap<string, JointHeight> }
  | { readonly ok: false; readonly joint: string; readonly because: string };

/**
 * Deck height and support of every joint: dynamic programming over height levels on the tree of parts.
 *
 * Exact on levels 10 mm apart: among all heights that the standing supports allow, whose grade between the joints of
 * a module stays within the rule, which keep platforms level and modules off the ground between their joints, the
 * one with the least sum of support height, price and unevenness. The start is the root. `ok: false` names the joint
 * at which no height is left.
 */
export function deckProfile(
  network: PlacedNetwork,
  terrain: Raster,
  facts: LayoutFacts,
  costs: SearchCosts,
  rules: ProfileRules,
): Profile {
  const solver = new ProfileSolver(network, terrain, facts, costs, rules);
  return solver.solve();
}

/** Joints that must share one deck height: a platform's four, or one alone. */
interface Seat {
  readonly joints: readonly PlacedJoint[];
  readonly low: number;
  readonly cost: Float64Array;
  readonly links: { readonly module: PlacedModule; readonly to: Seat; choice: Int32Array }[];
}

class ProfileSolver {
  private readonly n: PlacedNetwork;
  private readonly terrain: Raster;
  private readonly facts: LayoutFacts;
  private readonly costs: SearchCosts;
  private readonly rules: ProfileRules;
  private readonly seatOf = new Map<string, Seat>();

  constructor(
    n: PlacedNetwork,
    terrain: Raster,
    facts: LayoutFacts,
    costs: SearchCosts,
    rules: ProfileRules,
  ) {
    this.n = n;
    this.terrain = terrain;
    this.facts = facts;
    this.costs = costs;
    this.rules = rules;
  }

  solve(): Profile {
    const joints = new Map(this.n.joints.map((j) => [j.id, j]));
    for (const group of levelGroups(this.n)) this.addSeat(group.map((id) => joints.get(id)!));
    for (const joint of this.n.joints) if (!this.seatOf.has(joint.id)) this.addSeat([joint]);
    for (const part of this.n.parts)
      if (part.kind === "module")
        this.seatOf
          .get(part.from)!
          .links.push({ module: part, to: this.seatOf.get(part.to)!, choice: new Int32Array(0) });
    const order = [...new Set(this.n.joints.map((j) => this.seatOf.get(j.id)!))];
    for (const seat of order.reverse()) {
      const because = this.fold(seat);
      if (because !== null) return { ok: false, joint: seat.joints[0]!.id, because };
    }
    return { ok: true, heights: this.readOut(order.at(-1)!) };
  }

  private addSeat(joints: readonly PlacedJoint[]): void {
    const ranges = joints.map((j) => this.rangeOf(j));
    const low = Math.ceil(Math.max(...ranges.map((r) => r[0])) / LEVEL_STEP - 1e-9);
    const high = Math.floor(Math.min(...ranges.map((r) => r[1])) / LEVEL_STEP + 1e-9);
    const cost = new Float64Array(Math.max(0, high - low + 1));
    for (let k = 0; k < cost.length; k++)
      for (const joint of joints)
        cost[k]! += this.standingCost(joint, (low + k) * LEVEL_STEP)?.cost ?? Infinity;
    const seat: Seat = { joints, low, cost, links: [] };
    for (const joint of joints) this.seatOf.set(joint.id, seat);
  }

  private rangeOf(joint: PlacedJoint): [number, number] {
    const kinds = this.kindsOf(joint);
    const base = joint.ground_m + this.facts.depth_m;
    return [
      base + Math.max(this.rules.min_clear_m, Math.min(...kinds.map((k) => k.kind.height_min_mm)) / 1000),
      base + Math.max(...kinds.map((k) => k.kind.height_max_mm)) / 1000,
    ];
  }

  private kindsOf(joint: PlacedJoint): { kind: SupportKind; n: number }[] {
    return this.facts.supports.flatMap((kind, n) => ((joint.kinds & (1 << n)) !== 0 ? [{ kind, n }] : []));
  }

  /** Cheapest kind that stands at a joint and brings the deck to a height; null when none does. */
  private standingCost(joint: PlacedJoint, deck: number): { cost: number; n: number; height: number } | null {
    const height = deck - joint.ground_m - this.facts.depth_m;
    let best: { cost: number; n: number; height: number } | null = null;
    for (const { kind, n } of this.kindsOf(joint)) {
      if (height < kind.height_min_mm / 1000 - 1e-9 || height > kind.height_max_mm / 1000 + 1e-9) continue;
      const price =
        (this.costs.support[n]!.least ?? 0) +
        this.costs.support[n]!.per_m * (height - kind.height_min_mm / 1000);
      const cost = price / 100 + height;
      if (best === null || cost < best.cost) best = { cost, n, height };
    }
    return best;
  }

  /** Folds the best of everything beyond a seat into its own levels. Returns why none is left, or null. */
  private fold(seat: Seat): string | null {
    if (!seat.cost.some(Number.isFinite))
      return seat.joints.length > 1
        ? "no height carries all edges of the platform level"
        : "no support reaches any height here";
    for (const link of seat.links) {
      link.choice = new Int32Array(seat.cost.length).fill(-1);
      const ground = this.groundUnder(link.module);
      const pitch = this.facts.lengths_m[link.module.length]! + this.facts.gap_m;
      const reach = Math.floor((this.rules.max_grade * pitch) / LEVEL_STEP + 1e-9);
      for (let k = 0; k < seat.cost.length; k++) {
        if (!Number.isFinite(seat.cost[k]!)) continue;
        const [m, cost] = this.bestBeyond(seat.low + k, link.to, reach, ground);
        seat.cost[k]! += cost;
        link.choice[k] = m;
      }
      if (!seat.cost.some(Number.isFinite))
        return `no height of ${link.module.to} lies within the grade of ${link.module.id} and clear of the ground below it`;
    }
    return null;
  }

  private bestBeyond(level: number, to: Seat, reach: number, ground: readonly number[]): [number, number] {
    let best = -1;
    let least = Infinity;
    for (
      let m = Math.max(0, level - reach - to.low);
      m <= Math.min(to.cost.length - 1, level + reach - to.low);
      m++
    ) {
      const cost = to.cost[m]! + UNEVENNESS * LEVEL_STEP * Math.abs(level - to.low - m);
      if (cost < least && this.clears(level * LEVEL_STEP, (to.low + m) * LEVEL_STEP, ground)) {
        least = cost;
        best = m;
      }
    }
    return [best, least];
  }

  private clears(from: number, to: number, ground: readonly number[]): boolean {
    return ground.every(
      (z, k) =>
        from + ((to - from) * k) / (ground.length - 1) - this.facts.depth_m - this.rules.min_clear_m >=
        z - 1e-9,
    );
  }

  private groundUnder(module: PlacedModule): number[] {
    const from = this.n.joints.find((j) => j.id === module.from)!;
    const to = this.n.joints.find((j) => j.id === module.to)!;
    const pieces = Math.max(2, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / READ_SPACING));
    return Array.from({ length: pieces + 1 }, (_, k) => {
      const z = groundAt(
        this.terrain,
        from.x + ((to.x - from.x) * k) / pieces,
        from.y + ((to.y - from.y) * k) / pieces,
      );
      return Number.isNaN(z) ? -Infinity : z;
    });
  }

  private readOut(root: Seat): Map<string, JointHeight> {
    const heights = new Map<string, JointHeight>();
    const visit = (seat: Seat, k: number): void => {
      const deck = (seat.low + k) * LEVEL_STEP;
      for (const joint of seat.joints) {
        const standing = this.standingCost(joint, deck)!;
        heights.set(joint.id, { deck_m: deck, kind: standing.n, height_m: standing.height });
      }
      for (const link of seat.links) visit(link.to, link.choice[k]!);
    };
    let best = 0;
    for (let k = 1; k < root.cost.length; k++) if (root.cost[k]! < root.cost[best]!) best = k;
    visit(root, best);
    return heights;
  }
}
