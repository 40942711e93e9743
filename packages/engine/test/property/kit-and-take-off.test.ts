import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { costFormulas, partCosts } from "../../src/cost/index.ts";
import { boardPattern, modulePieces, overlaps, platformPieces, type Kit } from "../../src/kit/index.ts";
import { layingFormulas } from "../../src/laying/index.ts";
import {
  cheapestPacks,
  cuttingProblems,
  orderList,
  takeOff,
  type Pack,
  type TakeOff,
} from "../../src/materials/index.ts";
import { layChain, type Link } from "../support/chain.ts";
import { commonPracticeKit as kit } from "../support/common-practice-kit.ts";
import { evaluateText } from "../support/evaluate-text.ts";
import { firstFitPlans, yardPrices } from "../support/yard-prices.ts";
import { yardTables } from "../support/yard-tables.ts";

fc.configureGlobal({ seed: 20_270_301 });

const { sizes } = yardTables;
const link = fc.constantFrom<Link>(
  3657.6,
  2438.4,
  1219.2,
  "platform-left",
  "platform-right",
  "platform-ahead",
);
const chain = fc.array(link, { minLength: 1, maxLength: 8 });
const height = fc.integer({ min: 8, max: 20 }).map((inches) => inches * 0.0254);
const off = (links: readonly Link[], h: number): TakeOff =>
  takeOff(kit, layChain(kit, links, "open-crate", h, sizes), sizes);

/** A take-off as a table from what to how many. */
const table = (t: TakeOff): Map<string, number> =>
  new Map([
    ...t.timber.map((l) => [`${l.size} ${l.length_mm}`, l.count] as const),
    ...t.counted.map((c) => [c.item, c.count] as const),
  ]);
const plus = (a: Map<string, number>, b: Map<string, number>): Map<string, number> => {
  const sum = new Map(a);
  for (const [key, n] of b) sum.set(key, (sum.get(key) ?? 0) + n);
  return sum;
};
const sorted = (m: Map<string, number>): [string, number][] => [...m].sort(([a], [b]) => (a < b ? -1 : 1));

describe("take-off", () => {
  test("is the sum over its parts: two chains laid apart need what both need", () => {
    fc.assert(
      fc.property(chain, chain, height, (a, b, h) => {
        const [first, second] = [a, b].map((links) => layChain(kit, links, "open-crate", h, sizes));
        const rename = (id: string): string => `b-${id}`;
        const parts = second!.parts.map((p) =>
          p.kind === "module"
            ? { ...p, from: rename(p.from), to: rename(p.to) }
            : {
                ...p,
                from: rename(p.from),
                exits: {
                  ahead: rename(p.exits.ahead),
                  left: rename(p.exits.left),
                  right: rename(p.exits.right),
                },
              },
        );
        const both = {
          joints: [...first!.joints, ...second!.joints.map((j) => ({ ...j, id: rename(j.id) }))],
          parts: [...first!.parts, ...parts],
        };
        expect(sorted(table(takeOff(kit, both, sizes)))).toEqual(
          sorted(plus(table(off(a, h)), table(off(b, h)))),
        );
      }),
      { numRuns: 60 },
    );
  });

  test("the order does not depend on the order of parts and joints", () => {
    fc.assert(
      fc.property(chain, height, (links, h) => {
        const run = layChain(kit, links, "open-crate", h, sizes);
        const back = { joints: run.joints.toReversed(), parts: run.parts.toReversed() };
        expect(takeOff(kit, back, sizes)).toEqual(takeOff(kit, run, sizes));
      }),
      { numRuns: 40 },
    );
  });

  test("one more module never needs less of anything, and its order never costs less", () => {
    fc.assert(
      fc.property(chain, height, fc.constantFrom(3657.6, 2438.4, 1219.2), (links, h, more) => {
        const [before, after] = [table(off(links, h)), table(off([...links, more], h))];
        for (const [key, n] of before) expect(after.get(key) ?? 0).toBeGreaterThanOrEqual(n);
        expect(total(orderOfSticks(off([...links, more], h)))).toBeGreaterThanOrEqual(
          total(orderOfSticks(off(links, h))),
        );
      }),
      { numRuns: 40 },
    );
  });
});

const ordered = (t: TakeOff) =>
  orderList(t, firstFitPlans(cuttingProblems(t, yardPrices, 3).problems), yardPrices);
const total = ({ order }: ReturnType<typeof orderList>): number =>
  order.reduce((sum, l) => sum + l.amount, 0);
const orderTotal = (t: TakeOff): number => total(ordered(t));

/** An order in which each piece takes a stick of its own: unlike a heuristic plan, it can only grow with the need. */
const orderOfSticks = (t: TakeOff) => {
  const plans = cuttingProblems(t, yardPrices, 3).problems.map(({ size, problem }) => {
    const stick = problem.stock.at(-1)!;
    const count = problem.pieces.reduce((n, p) => n + p.count, 0);
    const stock_used = [{ length_mm: stick.length_mm, count }];
    return { size, plan: { cost: count * stick.price, bound: 0, proven: false, stock_used, patterns: [] } };
  });
  return orderList(t, plans, yardPrices);
};

describe("order list", () => {
  test("covers the need: every piece fits the sticks bought, every count the packs", () => {
    fc.assert(
      fc.property(chain, height, (links, h) => {
        const need = off(links, h);
        const { order, unpriced } = ordered(need);
        expect(unpriced).toEqual([]);
        for (const size of new Set(need.timber.map((l) => l.size))) {
          const bought = order
            .filter((l) => l.item === size)
            .reduce((mm, l) => mm + l.quantity * l.length_mm!, 0);
          const sawn = need.timber
            .filter((l) => l.size === size)
            .reduce((mm, l) => mm + l.count * l.length_mm, 0);
          expect(bought).toBeGreaterThanOrEqual(sawn - 1e-6);
        }
        for (const c of need.counted) {
          const packs = order.filter((l) => l.item === c.item);
          const per = (l: (typeof order)[number]): number =>
            yardPrices.find((p) => p.item === l.item && p.price === l.unit_price)!.pack;
          expect(packs.reduce((n, l) => n + l.quantity * per(l), 0)).toBeGreaterThanOrEqual(c.count);
          expect(packs.reduce((n, l) => n + l.needed, 0)).toBe(c.count);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("the search's part costs add up to no more than the order they estimate", () => {
    const costs = partCosts(kit, yardPrices, sizes);
    fc.assert(
      fc.property(chain, height, (links, h) => {
        const run = layChain(kit, links, "open-crate", h, sizes);
        const parts = run.parts.map((p) =>
          p.kind === "module" ? costs.module(p.length_m * 1000)! : costs.platform!,
        );
        const supports = run.joints.map((j) => costs.support(j.support, j.support_height_m)!);
        const estimate = [...parts, ...supports].reduce((sum, c) => sum + c, 0);
        expect(estimate).toBeLessThanOrEqual(orderTotal(takeOff(kit, run, sizes)) + 0.05);
      }),
      { numRuns: 40 },
    );
  });

  test("cheapest packs: exact against trying every mix", () => {
    const pack = fc.record({
      pack: fc.integer({ min: 1, max: 12 }),
      price: fc.integer({ min: 0, max: 900 }).map((c) => c / 100),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40 }),
        fc.array(pack, { minLength: 1, maxLength: 3 }),
        (need, packs) => {
          const counts = cheapestPacks(need, packs);
          const sum = (of: (p: Pack) => number): number =>
            counts.reduce((s, n, i) => s + n * of(packs[i]!), 0);
          expect(sum((p) => p.pack)).toBeGreaterThanOrEqual(need);
          expect(sum((p) => p.price)).toBeCloseTo(leastByTrial(need, packs), 9);
        },
      ),
    );
  });
});

function leastByTrial(need: number, packs: readonly Pack[]): number {
  if (need <= 0) return 0;
  const [first, ...rest] = packs;
  if (!first) return Infinity;
  let least = Infinity;
  for (let n = 0; n <= Math.ceil(need / first.pack); n++)
    least = Math.min(least, n * first.price + leastByTrial(need - n * first.pack, rest));
  return least;
}

describe("recipes", () => {
  test("boards: count and gap close the length, first and last flush", () => {
    const mm = fc.double({ min: 400, max: 6000, noNaN: true });
    fc.assert(
      fc.property(
        mm,
        fc.double({ min: 60, max: 250, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (length, board, gap) => {
          const found = boardPattern(length, board, gap);
          expect(found.count * board + (found.count - 1) * found.gap_mm).toBeCloseTo(length, 6);
          for (const n of [found.count - 1, found.count + 1].filter((k) => k > 1)) {
            const other = (length - n * board) / (n - 1);
            expect(Math.abs(found.gap_mm - gap)).toBeLessThanOrEqual(Math.abs(other - gap) + 1e-9);
          }
        },
      ),
    );
  });

  test("modules and platforms of many widths have no two pieces in one place, and a deck that rests on timber", () => {
    const width = fc.integer({ min: 20, max: 48 });
    const count = fc.constantFrom<2 | 3>(2, 3);
    fc.assert(
      fc.property(
        width,
        count,
        fc.constantFrom("2x4", "2x6"),
        fc.constantFrom(12, 16, 24),
        (w, n, cross, spacing) => {
          const of: Kit = {
            ...kit,
            stringers: { count: n, size: "2x8", overall_mm: w * 25.4 },
            cross_pieces: { ...kit.cross_pieces, size: cross, spacing_mm: spacing * 25.4 },
            deck: { ...kit.deck, width_mm: (w + 2) * 25.4 },
            platform: { ...kit.platform, stringers: { size: "2x8", count: 4 } },
          };
          for (const length of of.lengths_mm) {
            const pieces = modulePieces(of, length, sizes);
            expect(overlaps(pieces)).toEqual([]);
            const top = Math.max(...pieces.filter((p) => p.role === "stringer").map((p) => p.z1));
            for (const p of pieces.filter((q) => q.role === "mesh panel")) expect(p.z0).toBeCloseTo(top, 9);
          }
          expect(overlaps(platformPieces(of, sizes))).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("formulas: the printed text computes what the code computes", () => {
  for (const formula of [...layingFormulas, ...costFormulas])
    test(formula.spec.id, () => {
      const symbols = Object.keys(formula.spec.inputs);
      const values = fc.record(
        Object.fromEntries(symbols.map((s) => [s, fc.double({ min: 0.1, max: 5000, noNaN: true })])),
      );
      fc.assert(
        fc.property(values, (args) => {
          fc.pre(args["d_long"] !== args["d_short"] || args["d_long"] === undefined);
          const code = formula(args as never);
          const text = evaluateText(formula.spec.text, args as Record<string, number>);
          expect(Math.abs(code - text)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(code)));
        }),
      );
    });
});
