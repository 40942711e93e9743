import fc from "fast-check";
import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import type { Site } from "../site/index.ts";
import { makeFields } from "./fields.ts";
import { JointSpace } from "./joint-space.ts";
import { JointTable } from "./joint-table.ts";
import { latticeOf, layLattice, placeOf } from "./lattice.ts";
import { NetworkSearch, type Goal } from "./network.ts";
import type { Settle } from "./settle.ts";
import { groundWindow } from "./standing.ts";

function makeSpace(site: Site): { space: JointSpace; goals: Goal[] } {
  const input = smallInput(site);
  const { facts, costs, choice, laying } = input;
  const l = layLattice(site.terrain, 1, 0, site.starts[0]!.x, site.starts[0]!.y);
  const fields = makeFields(l, site, laying.from, laying.to);
  const table = new JointTable(l, fields, site, groundWindow(site.terrain, facts.supports), facts, costs, {
    ...laying,
    min_clear_m: 0,
    contact_per_m2: choice.weights.contact_per_m2,
    money: 1,
  });
  const goals = site.plots.map((p, plot) => {
    const points = new Set<number>();
    for (let k = 0; k < l.nx * l.ny; k++) {
      const [x, y] = placeOf(l, k % l.nx, Math.floor(k / l.nx));
      const d = Math.hypot(x - p.x, y - p.y);
      if (d >= p.keep_off_m && d <= p.keep_off_m + p.reach_m) points.add(k);
    }
    expect(latticeOf(l, p.x, p.y).every(Number.isFinite)).toBe(true);
    return { plot, points };
  });
  return {
    space: new JointSpace(l, fields, table, facts, costs, { ...choice.weights, max_grade: choice.max_grade }),
    goals,
  };
}

interface Arc {
  readonly from: number;
  readonly to: number;
  readonly cost: number;
}

/** Every arc of the space, written out, with no search in between. */
function allArcs(space: JointSpace): Arc[] {
  const arcs: Arc[] = [];
  for (let to = 0; to < space.nodes; to++) {
    if (!space.table.stands(to >> 2, to & 1)) continue;
    space.expand(to, {
      relax: (from: number, cost: number) => arcs.push({ from, to, cost }),
    } as unknown as Settle);
  }
  return arcs;
}

/** Bellman and Ford: sweeps over all arcs until nothing improves. */
function sweep(
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

/** Least network to two plots by trying every platform, entry and pair of exits, and every way through one plot to the other. */
function bruteForce(space: JointSpace, goals: readonly Goal[]): number {
  const arcs = allArcs(space);
  const { l, half } = space;
  const start = l.sj * l.nx + l.si;
  const out = sweep(
    space.nodes,
    [0, 1, 2, 3].map((d) => start * 4 + d),
    arcs.map((a) => [a.from, a.to, a.cost] as const),
  );
  const back = goals.map((g) =>
    sweep(
      space.nodes,
      [...g.points].flatMap((p) =>
        [0, 1, 2, 3].filter((d) => space.table.stands(p, d & 1)).map((d) => p * 4 + d),
      ),
      arcs.map((a) => [a.to, a.from, a.cost] as const),
    ),
  );
  let least = Infinity;
  for (let cj = half; cj < l.ny - half; cj++)
    for (let ci = half; ci < l.nx - half; ci++) {
      const platform = space.platformAt(ci, cj);
      if (platform < 0) continue;
      for (let e = 0; e < 4; e++) {
        const entry = space.exitOf(ci, cj, (e + 2) & 3);
        const node = (entry >> 2) * 4 + e;
        const before = out[node]! + space.entryCost(ci, cj, e, platform);
        for (const a of [e, (e + 1) & 3, (e + 3) & 3])
          for (const b of [e, (e + 1) & 3, (e + 3) & 3])
            if (a !== b)
              least = Math.min(
                least,
                before + back[0]![space.exitOf(ci, cj, a)]! + back[1]![space.exitOf(ci, cj, b)]!,
              );
      }
    }
  for (const [k, other] of [
    [0, 1],
    [1, 0],
  ] as const)
    for (const p of goals[k]!.points)
      for (let d = 0; d < 4; d++) least = Math.min(least, out[p * 4 + d]! + back[other]![p * 4 + d]!);
  return least;
}

test("property: two plots are joined at the cost that trying everything finds", () => {
  fc.assert(
    fc.property(
      fc.record({
        a: fc.tuple(fc.integer({ min: 4, max: 18 }), fc.integer({ min: 8, max: 18 })),
        b: fc.tuple(fc.integer({ min: 4, max: 18 }), fc.integer({ min: 8, max: 18 })),
        soft: fc.tuple(fc.integer({ min: 0, max: 14 }), fc.integer({ min: 6, max: 14 })),
      }),
      ({ a, b, soft }) => {
        const habitat = zone("rush", "habitat", soft[0], soft[1], soft[0] + 6, soft[1] + 4, {
          sensitivity: 6,
        });
        const bumps = smallTerrain(22, 22, (x, y) => 1 + 0.1 * Math.sin(x + y));
        const { space, goals } = makeSpace(
          smallSite(bumps, [plotAt("a", ...a), plotAt("b", ...b)], [habitat]),
        );
        const search = new NetworkSearch(space, goals, "");
        const alone = finish(search.reach(1e9));
        if (alone.some((c) => c === null)) return;
        const network = finish(search.join(3, 1e9));
        expect(network?.cost ?? Infinity).toBe(bruteForce(space, goals));
        // A limit at the optimum still finds it; one below finds nothing.
        if (network) {
          expect(finish(search.join(3, network.cost))!.cost).toBe(network.cost);
          expect(finish(search.join(3, network.cost - 1))).toBeNull();
        }
      },
    ),
    { numRuns: 20, seed: 7 },
  );
});
