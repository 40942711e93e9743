import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import { rectangle, type Site } from "../site/index.ts";
import { M_PER_FT, M_PER_IN } from "../units/index.ts";
import { evaluateLayout, searchLayout, type Joint, type Layout, type ModulePart } from "./index.ts";

const weights = { money: 1, shade_per_m2: 2, contact_per_m2: 10, crossing: 30 };
const big = smallTerrain(200, 20, () => 1);

/** A straight walkway heading east: modules of one length, one sleeper a joint. */
function straight(
  count: number,
  length: number,
  width: number,
  sleeper: { along: number; across: number },
): Layout {
  const joints = Array.from({ length: count + 1 }, (_, k): Joint => ({
    id: `J${k + 1}`,
    x: 5 + k * length,
    y: 10,
    heading_deg: 90,
    branch: "A",
    along_m: k * length,
    ground_m: 1,
    deck_m: 1.3,
    support: "sleeper",
    support_height_m: 0.15,
    feet: [[rectangle(5 + k * length, 10, 90, sleeper.along, sleeper.across)]],
  }));
  const parts = Array.from({ length: count }, (_, k): ModulePart => ({
    id: `A${k + 1}`,
    kind: "module",
    branch: "A",
    length_m: length,
    heading_deg: 90,
    from: `J${k + 1}`,
    to: `J${k + 2}`,
    along_m: k * length,
    outline: [[rectangle(5 + (k + 0.5) * length, 10, 90, length, width)]],
    bridges: [],
  }));
  return {
    heading_deg: 90,
    lattice_m: 0.3048,
    joints,
    parts,
    branches: [
      { id: "A", from: "start", to_plot: "p", parts: parts.map((p) => p.id), length_m: count * length },
    ],
    reached: [],
    unreached: [],
    notes: [],
    search: { headings: 1, estimate: 0 },
    line: null,
    as_laid: null,
  };
}

const evaluate = (layout: Layout, site: Site) =>
  evaluateLayout({ layout, site, weights, depth_m: 0.15, gap_m: 0, money: 100 });

test("500 ft x 4 ft of walkway shade 2,000 sq ft = 0.0459 acre = 185.8 m2 (hand arithmetic)", () => {
  const figures = evaluate(
    straight(50, 10 * M_PER_FT, 4 * M_PER_FT, { along: 0.1, across: 1 }),
    smallSite(big, []),
  );
  expect(figures.shaded_m2 / M_PER_FT ** 2).toBeCloseTo(2000, 6);
  expect(figures.shaded_m2).toBeCloseTo(185.8, 1);
  expect(figures.length_m).toBeCloseTo(500 * M_PER_FT, 9);
});

test("51 sleepers of 5.5 in x 4 ft touch 93.5 sq ft (hand arithmetic)", () => {
  const figures = evaluate(
    straight(50, 10 * M_PER_FT, 4 * M_PER_FT, { along: 5.5 * M_PER_IN, across: 4 * M_PER_FT }),
    smallSite(big, []),
  );
  expect(figures.contact_m2 / M_PER_FT ** 2).toBeCloseTo(93.5, 9);
});

test("shade is weighed by habitat, and where two overlap the more sensitive one counts once", () => {
  const low = zone("low", "habitat", 0, 0, 200, 20, { sensitivity: 2 });
  const rush = zone("rush", "habitat", 5, 9, 15, 11, { sensitivity: 5 });
  const figures = evaluate(straight(10, 2, 1, { along: 0.1, across: 1 }), smallSite(big, [], [low, rush]));
  // 20 m x 1 m from x = 5: 10 m2 in the rush (5), 10 m2 in the low meadow (2); weight 2 a square metre.
  expect(
    Object.fromEntries(figures.shaded_by_zone.map((z) => [z.zone, Math.round(z.area_m2 * 1000) / 1000])),
  ).toEqual({ rush: 10, low: 10 });
  expect(figures.weighted.shade).toBeCloseTo(2 * (10 * 5 + 10 * 2), 6);
  expect(figures.weighted.total).toBeCloseTo(
    figures.weighted.money + figures.weighted.shade + figures.weighted.contact,
    9,
  );
});

test("shade outside every habitat counts as plain ground", () => {
  const figures = evaluate(straight(10, 2, 1, { along: 0.1, across: 1 }), smallSite(big, []));
  expect(figures.weighted.shade).toBeCloseTo(2 * 20, 6);
});

test("a crossing's clear width is measured along the middle line", () => {
  const creek = zone("creek", "channel", 10, 0, 11.7, 20);
  const site = smallSite(
    smallTerrain(40, 40, () => 1),
    [plotAt("p", 20, 5)],
    [creek],
  );
  const layout = finish(searchLayout(smallInput(site)));
  const figures = evaluateLayout({ layout, site, weights, depth_m: 0.15, gap_m: 0, money: 0 });
  expect(figures.crossings.map((c) => [c.zone, c.clear_m.toFixed(2)])).toEqual([["creek", "1.70"]]);
});

test("the search's estimate of harm lies within a tenth of the true value on even ground", () => {
  const habitat = zone("low", "habitat", 0, 0, 40, 40, { sensitivity: 3 });
  const site = smallSite(
    smallTerrain(40, 40, () => 1),
    [plotAt("p", 30, 30)],
    [habitat],
  );
  const dear = finish(searchLayout(smallInput(site)));
  const figures = evaluateLayout({ layout: dear, site, weights, depth_m: 0.15, gap_m: 0, money: 0 });
  const supports = dear.joints.length;
  const modules = dear.parts.filter((p) => p.kind === "module");
  const money =
    modules.reduce((s, m) => s + { 3: 90, 2: 70, 1: 50 }[m.length_m]! + 3 * m.length_m, 0) +
    (dear.parts.length - modules.length) * 126 +
    (supports - 1) * 20;
  const harm = dear.search.estimate - money;
  expect(Math.abs(harm - figures.weighted.shade - figures.weighted.contact) / harm).toBeLessThan(0.1);
});
