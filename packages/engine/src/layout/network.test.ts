import fc from "fast-check";
import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../test/support/small-site.ts";
import { allArcs, smallSpace, sweep } from "../../test/support/small-space.ts";
import { finish } from "../formula/index.ts";
import type { JointSpace } from "./joint-space.ts";
import { NetworkSearch, type Goal } from "./network.ts";

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
        const { space, goals } = smallSpace(
          smallInput(smallSite(bumps, [plotAt("a", ...a), plotAt("b", ...b)], [habitat])),
        );
        const search = new NetworkSearch(space, goals, "");
        const alone = search.reach();
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
