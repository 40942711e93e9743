import fc from "fast-check";
import { expect, test } from "vitest";
import { postPair, sleeper, smallCosts, smallFacts, smallTerrain } from "../../test/support/small-site.ts";
import type { PlacedJoint, PlacedNetwork } from "./assemble.ts";
import { LEVEL_STEP, deckProfile } from "./profile.ts";

/** A straight run of modules, `pitch` steps each, over joints at given ground heights. */
function run(ground: readonly number[], kinds = 1): PlacedNetwork {
  const joints = ground.map((g, k): PlacedJoint => ({
    id: `J${k}`,
    x: 5 + 3 * k,
    y: 5,
    point: k,
    orientation: 0,
    heading_deg: 90,
    branch: "A",
    along_m: 3 * k,
    walk_m: 3 * k,
    ground_m: g,
    kinds,
  }));
  const parts = ground.slice(1).map((_, k) => ({
    id: `A${k}`,
    kind: "module" as const,
    branch: "A",
    length: 0,
    heading_deg: 90,
    from: `J${k}`,
    to: `J${k + 1}`,
    along_m: 3 * k,
    outline: [],
  }));
  return { joints, parts, branches: [], arrivals: [] };
}

const deep = smallTerrain(60, 10, () => -5);
const rules = { max_grade: 0.1, min_clear_m: 0 };

/** All height combinations on the level grid, the cheapest feasible one; the objective is written out anew. */
function tryEverything(ground: readonly number[]): number {
  const low = ground.map((g) => Math.ceil((g + 0.15 + 0.09) / LEVEL_STEP - 1e-9));
  const high = ground.map((g) => Math.floor((g + 0.15 + 0.5) / LEVEL_STEP + 1e-9));
  let best = Infinity;
  const visit = (k: number, previous: number, cost: number): void => {
    if (cost >= best) return;
    if (k === ground.length) {
      best = cost;
      return;
    }
    for (let level = low[k]!; level <= high[k]!; level++) {
      if (k > 0 && Math.abs(level - previous) > Math.floor((0.1 * 3) / LEVEL_STEP + 1e-9)) continue;
      const height = level * LEVEL_STEP - ground[k]! - 0.15;
      const price = (20 + 5 * (height - 0.09)) / 100;
      visit(k + 1, level, cost + price + height + (k > 0 ? 3 * LEVEL_STEP * Math.abs(level - previous) : 0));
    }
  };
  visit(0, 0, 0);
  return best;
}

function costOf(ground: readonly number[]): number {
  const profile = deckProfile(run(ground), deep, smallFacts, smallCosts, rules);
  if (!profile.ok) return Infinity;
  const heights = ground.map((_, k) => profile.heights.get(`J${k}`)!);
  return heights.reduce(
    (sum, h, k) =>
      sum +
      (20 + 5 * (h.height_m - 0.09)) / 100 +
      h.height_m +
      (k > 0 ? 3 * Math.abs(h.deck_m - heights[k - 1]!.deck_m) : 0),
    0,
  );
}

test("property: the profile costs what trying every height finds, and is refused exactly when none exists", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 90 }), { minLength: 2, maxLength: 4 }), (cm) => {
      const ground = cm.map((v) => v / 100 + 0.003);
      const best = tryEverything(ground);
      const found = costOf(ground);
      if (best === Infinity) expect(found).toBe(Infinity);
      else expect(found).toBeCloseTo(best, 9);
    }),
    { numRuns: 60, seed: 3 },
  );
});

test("a chain of steps that fit two by two but not all together is refused, naming a joint", () => {
  const profile = deckProfile(run([0, 0.7, 1.4], 1), deep, smallFacts, smallCosts, rules);
  expect(profile.ok).toBe(false);
  if (!profile.ok) expect(profile.because).toContain("grade");
});

test("a hump between two joints lifts the deck over it", () => {
  const hump = smallTerrain(60, 10, (x) => (x === 6 ? 0.4 : 0));
  const flat = deckProfile(
    run([0, 0]),
    smallTerrain(60, 10, () => 0),
    smallFacts,
    smallCosts,
    rules,
  );
  const over = deckProfile(run([0, 0]), hump, smallFacts, smallCosts, rules);
  if (!flat.ok || !over.ok) throw new Error("no profile");
  expect(flat.heights.get("J0")!.deck_m).toBeCloseTo(0.24, 9);
  expect(over.heights.get("J0")!.deck_m - 0.15).toBeGreaterThanOrEqual(0.4 - 1e-9);
});

test("the kind that reaches the height is chosen, the cheaper one where both do", () => {
  const facts = { ...smallFacts, supports: [sleeper, postPair] };
  const costs = { ...smallCosts, support: [smallCosts.support[0]!, { least: 60, per_m: 20 }] };
  const profile = deckProfile(run([1.2, 0.6, 0.2], 3), deep, facts, costs, rules);
  if (!profile.ok) throw new Error(profile.because);
  expect([...profile.heights.values()].map((h) => h.kind)).toEqual([0, 0, 1]);
});
