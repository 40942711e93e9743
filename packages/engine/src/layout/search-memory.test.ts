import fc from "fast-check";
import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import type { Plot, Site } from "../site/index.ts";
import type { SearchInput } from "./search-input.ts";
import { SearchMemory } from "./search-memory.ts";
import { searchNetwork } from "./search.ts";
import type { Layout } from "./types.ts";

const LOTS = 1e9;
const bumpy = smallTerrain(26, 26, (x, y) => 1 + 0.15 * Math.sin(x / 2) * Math.cos(y / 3));
const creek = zone("creek", "channel", -1, 12.2, 27, 13.6);
const rush = zone("rush", "habitat", 8, 4, 16, 11, { sensitivity: 4 });
const shut = zone("shut", "closed", 16, 15, 19, 22);

const inputFor = (plots: readonly Plot[], zones: Site["zones"] = [creek, rush, shut]): SearchInput => {
  const base = smallInput(smallSite(bumpy, plots, zones));
  return { ...base, choice: { ...base.choice, heading_step_deg: 30 } };
};
const search = (input: SearchInput, memory?: SearchMemory): Layout => finish(searchNetwork(input, memory));
const same = (a: Layout, b: Layout): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));

const place = fc.tuple(fc.integer({ min: 3, max: 23 }), fc.integer({ min: 8, max: 23 }));

test("property: plots moved again and again are given the same layout with and without a memory", () => {
  fc.assert(
    fc.property(
      fc.array(place, { minLength: 1, maxLength: 5 }),
      fc.array(fc.tuple(fc.nat(4), place, fc.double({ min: 0.2, max: 1.5, noNaN: true })), {
        minLength: 2,
        maxLength: 4,
      }),
      fc.constantFrom(LOTS, 400_000, 1),
      (places, moves, bytes) => {
        const memory = new SearchMemory(bytes);
        let plots = places.map(([x, y], k) => plotAt(`p${k}`, x, y));
        same(search(inputFor(plots), memory), search(inputFor(plots)));
        for (const [k, [x, y], keepOff] of moves) {
          plots = plots.map((p, n) => (n === k % plots.length ? plotAt(p.id, x, y, keepOff) : p));
          same(search(inputFor(plots), memory), search(inputFor(plots)));
        }
      },
    ),
    { numRuns: 25 },
  );
});

test("a kept lattice spares work, and the places that an earlier search gave up can be used again", () => {
  const memory = new SearchMemory(LOTS);
  const far = [plotAt("a", 20, 22), plotAt("b", 8, 23), plotAt("c", 22, 10)];
  const near = [plotAt("a", 19, 21), plotAt("b", 8, 23), plotAt("c", 22, 10)];
  search(inputFor(far), memory);
  const first = memory.settled;
  same(search(inputFor(near), memory), search(inputFor(near)));
  same(search(inputFor(far), memory), search(inputFor(far)));
  expect((memory.settled - first) / 2).toBeLessThan(first);
});

test("other zones, other headings and another start are not taken for the same ground", () => {
  const memory = new SearchMemory(LOTS);
  const plots = [plotAt("a", 20, 22), plotAt("b", 8, 23)];
  const inputs = [
    inputFor(plots),
    inputFor(plots, [creek, rush]),
    { ...inputFor(plots), choice: { ...inputFor(plots).choice, heading_step_deg: 45 } },
    {
      ...inputFor(plots),
      site: { ...inputFor(plots).site, starts: [{ id: "start", name: "Start", x: 6, y: 4 }] },
    },
    { ...inputFor(plots), laying: { from: "2026-09-02", to: "2026-09-10" } },
    inputFor(plots),
  ];
  for (const input of inputs) same(search(input, memory), search(input));
});

test("a search that is stopped half way leaves a memory that is still right", () => {
  const memory = new SearchMemory(LOTS);
  const [one, two] = [[plotAt("a", 20, 22)], [plotAt("a", 6, 23), plotAt("b", 21, 9)]];
  for (const steps of [1, 2, 3]) {
    const job = searchNetwork(inputFor(one), memory);
    for (let n = 0; n < steps; n++) job.next();
    job.return({} as Layout);
    same(search(inputFor(two), memory), search(inputFor(two)));
  }
});
