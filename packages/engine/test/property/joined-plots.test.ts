import fc from "fast-check";
import { expect, test } from "vitest";
import { finish } from "../../src/formula/index.ts";
import { extendNetwork } from "../../src/layout/extend.ts";
import { joinableSets } from "../../src/layout/joinable.ts";
import { MOST_JOINING_BYTES, joiningBytes, plotsJoinedExactly } from "../../src/layout/join-size.ts";
import type { SearchInput } from "../../src/layout/search-input.ts";
import { NetworkSearch } from "../../src/layout/network.ts";
import type { Plot } from "../../src/site/index.ts";
import { leastTree } from "../support/grow-trees.ts";
import {
  plotAt,
  smallCosts,
  smallFacts,
  smallInput,
  smallSite,
  smallTerrain,
  zone,
} from "../support/small-site.ts";
import { smallSpace } from "../support/small-space.ts";

const NO_LIMIT = 1e9;

/** Numbers below 1 from a seed: the same sites in every run. */
function numbers(seed: number): () => number {
  let state = seed * 7919 + 1;
  return () => (state = (state * 16807) % 2147483647) / 2147483647;
}

function somePlots(count: number, side: number, next: () => number): Plot[] {
  const at = (): number => 2 + Math.floor(next() * (side - 3));
  return Array.from({ length: count }, (_, k) => plotAt(`p${k}`, at(), at()));
}

const exactCost = (input: SearchInput): number => {
  const { space, goals } = smallSpace(input);
  const network = finish(new NetworkSearch(space, goals, "").join((1 << goals.length) - 1, NO_LIMIT));
  return network?.cost ?? Infinity;
};

/** The nearest one or two plots joined exactly, the others one after another to free exits; null when one is left out. */
function oneAfterAnother(input: SearchInput): number | null {
  const { space, goals } = smallSpace(input);
  const costs = new NetworkSearch(space, goals, "").reach();
  const near = goals.filter((g) => costs[g.plot] !== null).sort((a, b) => costs[a.plot]! - costs[b.plot]!);
  const first = near.slice(0, 2);
  const base = finish(new NetworkSearch(space, first, "").join((1 << first.length) - 1, NO_LIMIT));
  if (base === null) return null;
  const whole = finish(extendNetwork(input, space, base, near.slice(2), ""));
  return whole.joined.length === goals.length ? whole.cost : null;
}

test("on 50 seeded sites four plots joined at once never cost more than one after another", () => {
  let compared = 0;
  let cheaper = 0;
  for (let seed = 1; seed <= 50; seed++) {
    const next = numbers(seed);
    const [x, y] = [Math.floor(next() * 14), Math.floor(next() * 14)];
    const soft = zone("rush", "habitat", x, y, x + 7, y + 4, { sensitivity: 5 });
    const ground = smallTerrain(22, 22, (i, j) => 1 + 0.1 * Math.sin(i + seed) * Math.cos(j));
    const input = smallInput(smallSite(ground, somePlots(4, 22, next), [soft]));
    const apart = oneAfterAnother(input);
    if (apart === null) continue;
    const together = exactCost(input);
    expect(together, `seed ${seed}`).toBeLessThanOrEqual(apart);
    compared++;
    if (together < apart) cheaper++;
  }
  expect(compared).toBeGreaterThan(30);
  expect(cheaper).toBeGreaterThan(10);
});

const kits: Record<string, Partial<SearchInput>> = {
  "a plain kit": {},
  "cheap platforms, wide modules and dear shade": {
    facts: { ...smallFacts, width_m: 1.6 },
    costs: { ...smallCosts, platform: 12, support: [{ least: 1, per_m: 5 }] },
    choice: {
      ...smallInput(
        smallSite(
          smallTerrain(2, 2, () => 1),
          [],
        ),
      ).choice,
      weights: { money: 1, shade_per_m2: 20, contact_per_m2: 1, crossing: 30 },
    },
  },
};

for (const [kit, more] of Object.entries(kits))
  for (const [plots, side] of [
    [3, 16],
    [4, 16],
  ] as const)
    test(`${plots} plots on tiny sites, ${kit}: growing every tree of parts finds the same cost`, () => {
      let joined = 0;
      for (let seed = 1; seed <= (plots === 4 ? 10 : 16); seed++) {
        const next = numbers(100 * plots + seed);
        const [x, y] = [Math.floor(next() * 8), Math.floor(next() * 8)];
        const soft = zone("rush", "habitat", x, y, x + 2, y + 2, { sensitivity: 9 });
        const site = smallSite(
          smallTerrain(side, side, () => 1),
          somePlots(plots, side, next),
          [soft],
          { x: 3 + Math.floor(next() * 4), y: 3 },
        );
        const { space, goals } = smallSpace(smallInput(site, more));
        const all = (1 << goals.length) - 1;
        const search = new NetworkSearch(space, goals, "");
        const network = finish(search.join(all, NO_LIMIT));
        if (network === null) continue;
        joined++;
        expect(leastTree(space, goals, network.cost), `seed ${seed}`).toBe(network.cost);
        // A limit at the least cost cuts nothing of use off; one below leaves nothing.
        expect(finish(new NetworkSearch(space, goals, "").join(all, network.cost))?.cost).toBe(network.cost);
        expect(finish(new NetworkSearch(space, goals, "").join(all, network.cost - 1))).toBeNull();
        expect(search.leastNetwork(goals.map((_, k) => k))).toBeLessThanOrEqual(network.cost);
      }
      expect(joined).toBeGreaterThan(6);
    });

test("property: the sets of plots that can be joined are those for which a network exists at any cost", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), (seed) => {
      const next = numbers(seed);
      // A wall with one narrow gap: a module fits through, a platform does not, so some sets have no room to part.
      const gap = 2 + Math.floor(next() * 9);
      const walls = [
        zone("west", "closed", -1, 6.3, gap, 7.7),
        zone("east", "closed", gap + 2, 6.3, 13, 7.7),
      ];
      const site = smallSite(
        smallTerrain(12, 12, () => 1),
        somePlots(3, 12, next),
        walls,
        { x: 5, y: 3 },
      );
      const { space, goals } = smallSpace(smallInput(site));
      const sets = finish(joinableSets(space, goals, ""));
      for (let set = 1; set < 8; set++) {
        const some = goals.filter((_, k) => (set & (1 << k)) !== 0);
        const network = finish(new NetworkSearch(space, some, "").join((1 << some.length) - 1, NO_LIMIT));
        expect(sets.has(set)).toBe(network !== null);
      }
    }),
    { numRuns: 40 },
  );
});

test("four plots are joined exactly while their fifteen tables fit the memory set aside, else three", () => {
  expect(joiningBytes(1_000_000, 4)).toBe((15 * 7 + 2) * 1_000_000);
  const most = MOST_JOINING_BYTES / (15 * 7 + 2);
  expect(plotsJoinedExactly(Math.floor(most))).toBe(4);
  expect(plotsJoinedExactly(Math.ceil(most + 1))).toBe(3);
  expect(plotsJoinedExactly(160_000_000)).toBe(3);
});
