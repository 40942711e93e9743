import fc from "fast-check";
import { expect, test } from "vitest";
import { smallCosts, smallFacts, smallTerrain } from "../../../test/support/small-site.ts";
import type { PlacedJoint, PlacedNetwork } from "../assemble.ts";
import { deckProfile, type JointHeight } from "../profile.ts";
import { softProfile } from "./soft-profile.ts";

/** A straight run of modules of 3 m over joints at given ground heights. */
function run(ground: readonly number[]): PlacedNetwork {
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
    kinds: 1,
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
const decks = (heights: ReadonlyMap<string, JointHeight>): number[] =>
  [...heights.values()].map((h) => h.deck_m);
const soft = (ground: readonly number[], fixed?: ReadonlyMap<string, number>): Map<string, JointHeight> =>
  softProfile(run(ground), deep, smallFacts, smallCosts, rules, fixed);

test("property: where every rule can be kept the heights are those of the exact profile", () => {
  const cm = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 2, maxLength: 6 });
  fc.assert(
    fc.property(cm, (heights) => {
      const ground = heights.map((v) => v / 100 + 0.003);
      const exact = deckProfile(run(ground), deep, smallFacts, smallCosts, rules);
      const own = soft(ground);
      expect(decks(own).every(Number.isFinite)).toBe(true);
      if (exact.ok) expect(own).toEqual(exact.heights);
    }),
    { numRuns: 80, seed: 31 },
  );
});

test("a bank that is too high breaks the grade once, and by as little as can be", () => {
  // Supports reach 0.09 to 0.5 m: from 0 to 1.5 m of ground the deck must rise by 1.09 m or more where 0.3 m are allowed.
  const [a, b, c, d] = decks(soft([0, 0, 1.5, 1.5])) as [number, number, number, number];
  expect(Math.abs(b - a)).toBeLessThanOrEqual(0.3 + 1e-9);
  expect(c - b).toBeCloseTo(1.09, 2);
  expect(Math.abs(d - c)).toBeLessThanOrEqual(0.3 + 1e-9);
});

test("a deck that is known already stays, though no support is that high, and the rest follows within the grade", () => {
  const [a, b, c] = decks(soft([0, 0, 0], new Map([["J0", 0.9123]]))) as [number, number, number];
  expect(a).toBe(0.9123);
  expect(b).toBeLessThanOrEqual(0.65 + 1e-9);
  expect(a - b).toBeLessThanOrEqual(0.3 + 1e-9);
  expect(Math.abs(c - b)).toBeLessThanOrEqual(0.3 + 1e-9);
});
