import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { solveKnapsack } from "./knapsack.ts";

const kinds = fc.array(
  fc.record({
    width: fc.integer({ min: 1, max: 12 }),
    value: fc.integer({ min: 0, max: 30 }),
    bound: fc.integer({ min: 0, max: 6 }),
  }),
  { minLength: 1, maxLength: 4 },
);
type Kind = { readonly width: number; readonly value: number; readonly bound: number };

/** Every filling of the room, one by one. */
function allFillings(given: readonly Kind[], room: number): number[][] {
  const [first, ...others] = given;
  if (!first) return [[]];
  const found: number[][] = [];
  for (let n = 0; n <= first.bound && n * first.width <= room; n++)
    for (const more of allFillings(others, room - n * first.width)) found.push([n, ...more]);
  return found;
}
const worth = (given: readonly Kind[], counts: readonly number[]): number =>
  counts.reduce((sum, n, k) => sum + n * given[k]!.value, 0);
const taken = (given: readonly Kind[], counts: readonly number[]): number =>
  counts.reduce((sum, n, k) => sum + n * given[k]!.width, 0);
const solve = (given: readonly Kind[], capacity: number) =>
  solveKnapsack(
    given.map((k) => k.width),
    given.map((k) => k.value),
    given.map((k) => k.bound),
    capacity,
  );
const room = fc.integer({ min: 0, max: 40 });

describe("knapsack", () => {
  test("finds the best of all fillings at every capacity", () => {
    fc.assert(
      fc.property(kinds, room, (given, capacity) => {
        const knapsack = solve(given, capacity);
        for (let c = 0; c <= capacity; c++)
          expect(knapsack.best(c)).toBe(Math.max(...allFillings(given, c).map((f) => worth(given, f))));
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  test("its filling fits, keeps the bounds, is worth the best and has no room for more", () => {
    fc.assert(
      fc.property(kinds, room, (given, capacity) => {
        const knapsack = solve(given, capacity);
        const filling = knapsack.filling(capacity);
        expect(worth(given, filling)).toBe(knapsack.best(capacity));
        const left = capacity - taken(given, filling);
        expect(left).toBeGreaterThanOrEqual(0);
        filling.forEach((n, k) => {
          expect(n).toBeLessThanOrEqual(given[k]!.bound);
          expect(n === given[k]!.bound || given[k]!.width > left).toBe(true);
        });
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  test("lists exactly the full fillings worth enough", () => {
    fc.assert(
      fc.property(kinds, room, fc.integer({ min: 0, max: 60 }), (given, capacity, least) => {
        const isFull = (f: readonly number[]): boolean =>
          f.every((n, k) => n === given[k]!.bound || given[k]!.width > capacity - taken(given, f));
        const wanted = allFillings(given, capacity).filter((f) => isFull(f) && worth(given, f) >= least);
        const listed = solve(given, capacity).fillingsWorth(capacity, least, 100_000);
        expect(new Set(listed!.map(String))).toEqual(new Set(wanted.map(String)));
        expect(listed).toHaveLength(wanted.length);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test("answers null when there are more than asked for", () => {
    const given = [1, 2, 3, 4, 5].map((width) => ({ width, value: 1, bound: 9 }));
    const count = solve(given, 30).fillingsWorth(30, 0, 100_000)!.length;
    expect(count).toBeGreaterThan(10);
    expect(solve(given, 30).fillingsWorth(30, 0, 10)).toBeNull();
  });
});
