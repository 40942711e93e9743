import fc from "fast-check";
import { expect, test } from "vitest";
import {
  plotAt,
  postPair,
  sleeper,
  smallCosts,
  smallFacts,
  smallInput,
  smallSite,
  smallTerrain,
  zone,
} from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import { searchLayout, type Layout, type SearchInput } from "./index.ts";

const flat = smallTerrain(30, 30, () => 1);
const search = (input: SearchInput): Layout => finish(searchLayout(input));

test("a plot straight ahead: the longest modules that fit, no platform", () => {
  const layout = search(smallInput(smallSite(flat, [plotAt("p", 5, 18)])));
  // Start (5, 5); the arrivals lie 2.5 m to 0.5 m before the plot, whose keep-off takes whole lattice cells:
  // (5, 16) is the nearest, 11 m on, and 3 + 3 + 3 + 2 is the cheapest way to lay 11 m.
  expect(layout.parts.map((p) => (p.kind === "module" ? p.length_m : 0)).sort((a, b) => a - b)).toEqual([
    2, 3, 3, 3,
  ]);
  expect(layout.reached).toEqual([{ plot: "p", joint: "J5", distance_m: 2, walk_m: 11 }]);
});

test("a plot to the side: one platform, and the estimate is the hand sum", () => {
  const layout = search(smallInput(smallSite(flat, [plotAt("p", 13, 12)])));
  expect(layout.parts.filter((p) => p.kind === "platform")).toHaveLength(1);
  const modules = layout.parts.filter((p) => p.kind === "module");
  const hand =
    modules.reduce(
      (sum, m) => sum + { 3: 90, 2: 70, 1: 50 }[m.length_m]! + 3 * m.length_m + 2 * 0.6 * m.length_m,
      0,
    ) +
    120 +
    3 * 2 +
    2 * 4 +
    (modules.length + 3) * (20 + 10 * 0.06);
  expect(layout.search.estimate).toBeCloseTo(hand, -1);
});

test("the walkway keeps out of a closed area and finds the way round", () => {
  const wall = zone("closed", "closed", 0, 10, 20, 12);
  const layout = search(smallInput(smallSite(flat, [plotAt("p", 5, 20)], [wall])));
  expect(layout.reached).toHaveLength(1);
  for (const part of layout.parts)
    for (const [x, y] of part.outline[0]![0]!) expect(x < 20 && x > 0 && y > 10 && y < 12).toBe(false);
});

test("a seasonal closure binds only on the days of laying", () => {
  const wall = zone("terns", "seasonal-closure", -1, 10, 31, 12, { from: "04-15", to: "08-31" });
  const site = smallSite(flat, [plotAt("p", 5, 20)], [wall]);
  expect(search(smallInput(site)).reached).toHaveLength(1);
  expect(search(smallInput(site, { laying: { from: "2026-08-20", to: "2026-09-02" } })).reached).toHaveLength(
    0,
  );
});

test("a channel is bridged by the module that spans it, and counted", () => {
  const creek = zone("creek", "channel", -1, 10.2, 31, 12.6);
  const layout = search(smallInput(smallSite(flat, [plotAt("p", 5, 20)], [creek])));
  const bridging = layout.parts.filter((p) => p.bridges.includes("creek"));
  expect(bridging.map((p) => p.kind === "module" && p.length_m)).toEqual([3]);
});

test("a channel wider than the longest module is named with its clear width", () => {
  const trench = smallTerrain(30, 30, (_, y) => (y >= 10 && y <= 15 ? -1 : 1));
  const kind = { ...sleeper, stands: { ground_above_m: 0.5, not_in: [] } };
  const site = smallSite(trench, [plotAt("p", 5, 24)], [zone("Long Creek", "channel", -1, 9, 31, 16)]);
  const layout = search(smallInput(site, { facts: { ...smallFacts, supports: [kind] } }));
  // Ground falls from 1 to -1 between y 9 and 10 and rises between 15 and 16: it is above 0.5 up to 9.25 and from 15.75.
  expect(layout.unreached[0]!.gap).toMatchObject({ over: "Long Creek", width_m: expect.closeTo(6.5, 1) });
});

test("tall supports reach what low ones cannot", () => {
  const hollow = smallTerrain(30, 30, (_, y) => (y >= 10 && y <= 15 ? 0.2 : 1));
  const low = { ...sleeper, stands: { ground_above_m: 0.5, not_in: [] } };
  const site = smallSite(hollow, [plotAt("p", 5, 24)]);
  expect(search(smallInput(site, { facts: { ...smallFacts, supports: [low] } })).reached).toHaveLength(0);
  const both = search(
    smallInput(site, {
      facts: { ...smallFacts, supports: [low, postPair] },
      costs: { ...smallCosts, support: [smallCosts.support[0]!, { least: 60, per_m: 20 }] },
    }),
  );
  expect(both.reached).toHaveLength(1);
  expect(both.joints.some((j) => j.support === "post-pair")).toBe(true);
});

test("two plots are joined at a platform, cheaper than the sum of their own lines", () => {
  const [p, q] = [plotAt("p", 10, 24), plotAt("q", 20, 20)];
  const both = search(smallInput(smallSite(flat, [p, q])));
  const alone = [p, q].map((one) => search(smallInput(smallSite(flat, [one]))).search.estimate);
  expect(both.reached.map((r) => r.plot).sort()).toEqual(["p", "q"]);
  expect(both.search.estimate).toBeLessThan(alone[0]! + alone[1]!);
  expect(both.search.estimate).toBeGreaterThanOrEqual(Math.max(...alone));
});

test("more plots than are joined exactly: each is reached from a free exit", () => {
  const plots = [
    plotAt("a", 5, 20),
    plotAt("b", 12, 24),
    plotAt("c", 20, 12),
    plotAt("d", 24, 22),
    plotAt("e", 14, 8),
  ];
  const layout = search(smallInput(smallSite(flat, plots)));
  expect(layout.reached.map((r) => r.plot).sort()).toEqual(["a", "b", "c", "d", "e"]);
  expect(layout.notes.join(" ")).toContain("one after another");
});

test("the same input gives the same layout", () => {
  const site = smallSite(
    smallTerrain(30, 30, (x, y) => 1 + 0.1 * Math.sin(x / 3) * Math.cos(y / 4)),
    [plotAt("p", 20, 22), plotAt("q", 8, 26)],
  );
  expect(JSON.stringify(search(smallInput(site)))).toBe(JSON.stringify(search(smallInput(site))));
});

test("property: raising any weight never lowers the estimate, and a wider closure never lowers it", () => {
  const bumpy = smallTerrain(24, 24, (x, y) => 1 + 0.2 * Math.sin(x) * Math.cos(y / 2));
  fc.assert(
    fc.property(
      fc.integer({ min: 10, max: 20 }),
      fc.integer({ min: 10, max: 20 }),
      fc.integer({ min: 3, max: 9 }),
      (px, py, w) => {
        const site = smallSite(bumpy, [plotAt("p", px, py)]);
        const base = smallInput(site);
        const dearer = smallInput(site, {
          choice: { ...base.choice, weights: { ...base.choice.weights, shade_per_m2: 2 + w } },
        });
        const shut = smallInput(
          smallSite(bumpy, [plotAt("p", px, py)], [zone("z", "closed", 7, 8, 7 + w, 9)]),
        );
        const estimate = search(base).search.estimate;
        expect(search(dearer).search.estimate).toBeGreaterThanOrEqual(estimate - 1);
        const closed = search(shut);
        if (closed.reached.length > 0) expect(closed.search.estimate).toBeGreaterThanOrEqual(estimate - 1);
      },
    ),
    { numRuns: 25, seed: 11 },
  );
});

test("no support stands where part of its foot would hang over a bank", () => {
  // A step of 0.3 m in one metre at y = 10 to 11: a foot of 0.1 m along falls 0.03 m there and may stand; one of 0.5 m may not.
  const bank = smallTerrain(30, 30, (_, y) => (y <= 10 ? 1 : 1.3));
  const long = { ...sleeper, feet: [{ along_mm: 500, across_mm: 600, offset_across_mm: 0 }] };
  const site = smallSite(bank, [plotAt("p", 5, 24)], [], { x: 5.25, y: 5.5 });
  const at = (kind: typeof sleeper): number[] =>
    search(smallInput(site, { facts: { ...smallFacts, supports: [kind] } }))
      .joints.map((j) => j.y)
      .filter((y) => y > 9.9 && y < 11.1);
  expect(at(long)).toEqual([]);
  expect(search(smallInput(site, { facts: { ...smallFacts, supports: [long] } })).reached).toHaveLength(1);
});
