import { finish } from "../../src/formula/index.ts";
import { arrivalPoints } from "../../src/layout/arrival.ts";
import { makeFields } from "../../src/layout/fields.ts";
import { JointSpace } from "../../src/layout/joint-space.ts";
import { JointTable } from "../../src/layout/joint-table.ts";
import { layLattice } from "../../src/layout/lattice.ts";
import type { Goal } from "../../src/layout/network.ts";
import type { SearchInput } from "../../src/layout/search-input.ts";
import type { Settle } from "../../src/layout/settle.ts";
import { groundWindow } from "../../src/layout/standing.ts";

/** The joints of one lattice, heading north through the start of a small site, measured for its plots. */
export function smallSpace(input: SearchInput): { space: JointSpace; goals: Goal[] } {
  const { site, facts, costs, choice, laying } = input;
  const l = layLattice(site.terrain, facts.lattice_m, 0, site.starts[0]!.x, site.starts[0]!.y);
  const fields = makeFields(l, site, laying.from, laying.to);
  const table = new JointTable(l, fields, site, groundWindow(site.terrain, facts.supports), facts, costs, {
    ...laying,
    min_clear_m: 0,
    contact_per_m2: choice.weights.contact_per_m2,
    money: choice.weights.money,
  });
  const weights = { ...choice.weights, max_grade: choice.max_grade };
  const space = new JointSpace(l, fields, table, facts, costs, weights);
  const goals = site.plots.map((p, plot) => ({ plot, points: arrivalPoints(l, p) }));
  finish(
    space.fromStart.measure(
      goals.map((g) => g.points),
      "",
    ),
  );
  return { space, goals };
}

export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly cost: number;
  readonly arc: number;
}

/** Every arc of the space, written out, with no search in between. */
export function allArcs(space: JointSpace): Arc[] {
  const arcs: Arc[] = [];
  for (let to = 0; to < space.nodes; to++) {
    if (!space.table.stands(to >> 2, to & 1)) continue;
    space.expand(to, {
      relax: (from: number, cost: number, arc: number) => arcs.push({ from, to, cost, arc }),
    } as unknown as Settle);
  }
  return arcs;
}

/** Bellman and Ford: sweeps over all arcs until nothing improves. */
export function sweep(
  nodes: number,
  seeds: readonly number[],
  arcs: readonly (readonly [number, number, number])[],
): Float64Array {
  const cost = new Float64Array(nodes).fill(Infinity);
  for (const s of seeds) cost[s] = 0;
  for (let changed = true; changed;) {
    changed = false;
    for (const [a, b, c] of arcs)
      if (cost[a]! + c < cost[b]!) {
        cost[b] = cost[a]! + c;
        changed = true;
      }
  }
  return cost;
}
