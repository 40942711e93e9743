import type { JointSpace } from "../../src/layout/joint-space.ts";
import type { Goal } from "../../src/layout/network.ts";
import { allArcs, sweep } from "./small-space.ts";

interface Growth {
  readonly cost: number;
  readonly to: readonly number[];
}

/**
 * The least tree of parts from the start that serves every plot, by growing every tree part by part: at each open end
 * stop, lay each module, or lay a platform and go on from each choice of its exits. Nothing of the search's subsets or
 * tables is in it. Trees above `limit` are not grown; Infinity when there is none up to it.
 */
export function leastTree(space: JointSpace, goals: readonly Goal[], limit: number): number {
  const grower = new Grower(space, goals, limit);
  const start = space.l.sj * space.l.nx + space.l.si;
  for (let d = 0; d < 4; d++) grower.grow([start * 4 + d], 0, 0);
  return grower.best;
}

class Grower {
  best = Infinity;
  private limit: number;
  private readonly goals: readonly Goal[];
  private readonly space: JointSpace;
  private readonly growths = new Map<number, Growth[]>();
  /** Cheapest line from each joint to each plot: a tree that cannot be finished within the limit is given up. */
  private readonly back: readonly Float64Array[];

  constructor(space: JointSpace, goals: readonly Goal[], limit: number) {
    this.space = space;
    this.goals = goals;
    this.limit = limit;
    const arcs = allArcs(space);
    for (const a of arcs) if (a.arc <= space.steps.length) this.add(a.from, { cost: a.cost, to: [a.to] });
    this.addPlatforms();
    this.back = goals.map((g) =>
      sweep(
        space.nodes,
        [...g.points].flatMap((p) =>
          [0, 1, 2, 3].filter((d) => space.table.stands(p, d & 1)).map((d) => p * 4 + d),
        ),
        arcs.map((a) => [a.to, a.from, a.cost] as const),
      ),
    );
  }

  grow(open: readonly number[], served: number, cost: number): void {
    const all = (1 << this.goals.length) - 1;
    if (open.length === 0) {
      if (served === all && cost < this.best) this.best = this.limit = cost;
      return;
    }
    if (!this.canFinish(open, served, cost)) return;
    const [node, ...rest] = open as [number, ...number[]];
    let here = 0;
    this.goals.forEach((g, k) => {
      if (g.points.has(node >> 2)) here |= 1 << k;
    });
    if ((here & ~served) !== 0) this.grow(rest, served | here, cost);
    if ((served | here) === all) return;
    for (const { cost: more, to } of this.growths.get(node) ?? [])
      this.grow([...to, ...rest], served | here, cost + more);
  }

  private canFinish(open: readonly number[], served: number, cost: number): boolean {
    let waiting = 0;
    for (let k = 0; k < this.goals.length; k++) {
      if ((served & (1 << k)) !== 0) continue;
      waiting++;
      if (cost + Math.min(...open.map((node) => this.back[k]![node]!)) > this.limit) return false;
    }
    return waiting >= open.length;
  }

  private addPlatforms(): void {
    const { l, half } = this.space;
    for (let cj = half; cj < l.ny - half; cj++)
      for (let ci = half; ci < l.nx - half; ci++) {
        const platform = this.space.platformAt(ci, cj);
        if (platform < 0) continue;
        for (let e = 0; e < 4; e++) {
          const from = (this.space.exitOf(ci, cj, (e + 2) & 3) >> 2) * 4 + e;
          const exits = [e, (e + 1) & 3, (e + 3) & 3].map((d) => this.space.exitOf(ci, cj, d));
          const cost = this.space.entryCost(ci, cj, e, platform);
          for (let choice = 1; choice < 8; choice++)
            this.add(from, { cost, to: exits.filter((_, n) => (choice & (1 << n)) !== 0) });
        }
      }
  }

  private add(from: number, growth: Growth): void {
    const list = this.growths.get(from);
    if (list) list.push(growth);
    else this.growths.set(from, [growth]);
  }
}
