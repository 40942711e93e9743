import {
  planCutting,
  tryCutting,
  type CuttingPlan,
  type CuttingProblem,
  type Solver,
} from "@causey/engine/fabrication";
import { finish, ProblemError } from "@causey/engine/formula";
import { beforeAll, describe, expect, test } from "vitest";
import { drive, type Driven } from "../src/jobs/index.ts";
import { loadSolver } from "../src/solver/index.ts";
import { auditCutting } from "./support/audit-cutting.ts";
import { cheapestCutting } from "./support/cheapest-cutting.ts";
import { handfulOfPieces, randomNumbers, twoThousandPieces } from "./support/random-cutting.ts";

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});
const thorough = { close_enough: 0 };
const plan = (problem: CuttingProblem): CuttingPlan => finish(planCutting(problem, solver, thorough));
const seeds = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);

describe("by hand", () => {
  const boards = {
    kerf_mm: 3,
    stock: [{ length_mm: 3658, price: 9.5 }],
    pieces: [{ length_mm: 483, count: 60 }],
  };

  test("60 deck boards of 483 mm from 12 ft sticks, 3 mm kerf: 7 from a stick, 9 sticks, 85.50", () => {
    // 7 x 483 + 6 cuts of 3 = 3399, an eighth board would need 3885 of 3658; 60 / 7 = 8.57
    const found = plan(boards);
    expect(found).toEqual({
      cost: 85.5,
      bound: 85.5,
      proven: true,
      stock_used: [{ length_mm: 3658, count: 9 }],
      patterns: [
        { stock_mm: 3658, times: 8, cuts: [{ length_mm: 483, count: 7 }], offcut_mm: 3658 - 7 * 486 },
        { stock_mm: 3658, times: 1, cuts: [{ length_mm: 483, count: 4 }], offcut_mm: 3658 - 4 * 486 },
      ],
    });
    expect(auditCutting(boards, found)).toEqual([]);
  });

  test("the last cut is free: two halves less half a cut come from one stick, a millimetre more takes two", () => {
    const halves = (length_mm: number): CuttingProblem => ({
      kerf_mm: 4,
      stock: [{ length_mm: 2000, price: 5 }],
      pieces: [{ length_mm, count: 2 }],
    });
    expect(plan(halves(998))).toMatchObject({ cost: 5, proven: true, patterns: [{ offcut_mm: 0 }] });
    expect(plan(halves(999))).toMatchObject({ cost: 10, proven: true });
  });

  test("a longer stick is bought when it is the cheaper way, a shorter one for the rest", () => {
    // 3 pieces of 1200: a 3658 holds three (3606), a 2438 two; one 3658 (9) beats 2438 + 2438 (12)
    const two = {
      kerf_mm: 3,
      stock: [
        { length_mm: 2438, price: 6 },
        { length_mm: 3658, price: 9 },
      ],
    };
    expect(plan({ ...two, pieces: [{ length_mm: 1200, count: 3 }] }).stock_used).toEqual([
      { length_mm: 3658, count: 1 },
    ]);
    expect(plan({ ...two, pieces: [{ length_mm: 1200, count: 5 }] })).toMatchObject({
      cost: 15,
      proven: true,
    });
  });

  test("offcuts on hand are free and are used up first", () => {
    const stock = [
      { length_mm: 600, price: 0, available: 2 },
      { length_mm: 3658, price: 9.5 },
    ];
    const found = plan({ kerf_mm: 3, stock, pieces: [{ length_mm: 580, count: 8 }] });
    expect(found).toMatchObject({ cost: 9.5, proven: true });
    expect(found.stock_used).toEqual([
      { length_mm: 600, count: 2 },
      { length_mm: 3658, count: 1 },
    ]);
  });

  test("no pieces: nothing to buy, and that is proven", () => {
    expect(plan({ ...boards, pieces: [] })).toEqual({
      cost: 0,
      bound: 0,
      proven: true,
      stock_used: [],
      patterns: [],
    });
  });
});

describe("against every way of cutting", () => {
  test("400 random handfuls: the cheapest is found and proven; where there is none, that is said", () => {
    for (const seed of seeds(400)) {
      const problem = handfulOfPieces(seed);
      const cheapest = cheapestCutting(problem);
      const outcome = finish(tryCutting(problem, solver, thorough));
      expect(outcome.ok, `seed ${seed}`).toBe(cheapest < Infinity);
      if (!outcome.ok) continue;
      expect(auditCutting(problem, outcome.plan), `seed ${seed}`).toEqual([]);
      expect(outcome.plan.cost, `seed ${seed}`).toBeCloseTo(cheapest, 9);
      expect(outcome.plan.bound, `seed ${seed}`).toBeLessThanOrEqual(cheapest * (1 + 1e-12));
      expect(outcome.plan.proven, `seed ${seed}`).toBe(true);
    }
  });
});

describe("2,000 pieces of 15 lengths, four priced stock lengths", () => {
  for (const seed of seeds(8))
    test(`seed ${seed}: every piece is cut, at most 0.1 % above the bound`, () => {
      const problem = twoThousandPieces(seed);
      const found = finish(planCutting(problem, solver));
      expect(auditCutting(problem, found)).toEqual([]);
      expect(found.cost / found.bound - 1).toBeLessThanOrEqual(0.001);
    });

  test("asked for more it goes on: the cost falls or stays, the bound rises or stays", () => {
    const problem = twoThousandPieces(6);
    const quick = finish(planCutting(problem, solver));
    const slow = plan(problem);
    expect(slow.cost).toBeLessThanOrEqual(quick.cost);
    expect(slow.bound).toBeGreaterThanOrEqual(quick.bound);
    expect(slow.cost - slow.bound).toBeLessThan(quick.cost - quick.bound);
    expect(auditCutting(problem, slow)).toEqual([]);
  });

  test("the same input gives the same bytes, whatever was planned between", async () => {
    const problem = twoThousandPieces(3);
    const first = JSON.stringify(finish(planCutting(problem, solver)));
    plan(handfulOfPieces(7));
    expect(JSON.stringify(finish(planCutting(problem, solver)))).toBe(first);
    expect(JSON.stringify(finish(planCutting(problem, await loadSolver())))).toBe(first);
  });

  test("reports its progress and can be stopped", async () => {
    const notes: string[] = [];
    const run = (stopAfter: number): Promise<Driven<CuttingPlan>> => {
      const cancel = { aborted: false };
      notes.length = 0;
      const report = (p: { note: string }): void => {
        if (notes.push(p.note) === stopAfter) cancel.aborted = true;
      };
      return drive(planCutting(twoThousandPieces(4), solver), cancel, report, async () => {});
    };
    expect((await run(Infinity)).ok).toBe(true);
    expect(new Set(notes).size).toBeGreaterThan(2);
    expect(await run(3)).toEqual({ ok: false, why: "cancelled" });
    expect(notes).toHaveLength(3);
  });
});

/** Middling problems: too many pieces to try everything, few enough to be proven. */
function middling(seed: number): CuttingProblem {
  const random = randomNumbers(1000 + seed);
  return {
    kerf_mm: Math.floor(random() * 5),
    stock: [
      { length_mm: 2438, price: 5.98 },
      { length_mm: 3658, price: 9.48 },
      { length_mm: 4877, price: 12.6, available: 3 },
    ],
    pieces: Array.from({ length: 5 }, (_, i) => ({
      length_mm: 300 + 350 * i + Math.floor(random() * 340),
      count: 1 + Math.floor(random() * 9),
    })),
  };
}

describe("what must hold of any plan", () => {
  test("the order of the rows does not show in the plan", () => {
    for (const seed of seeds(10)) {
      const problem = middling(seed);
      const turned = { ...problem, stock: problem.stock.toReversed(), pieces: problem.pieces.toReversed() };
      expect(JSON.stringify(plan(turned))).toBe(JSON.stringify(plan(problem)));
    }
  });

  test("kerf k is kerf 0 with k more on every length and every stick", () => {
    for (const seed of seeds(10)) {
      const problem = middling(seed);
      const k = problem.kerf_mm;
      const bare = plan({
        kerf_mm: 0,
        stock: problem.stock.map((s) => ({ ...s, length_mm: s.length_mm + k })),
        pieces: problem.pieces.map((p) => ({ ...p, length_mm: p.length_mm + k })),
      });
      expect(plan(problem).cost).toBe(bare.cost);
    }
  });

  test("a wider saw cut, one more piece or one stock length less never make it cheaper", () => {
    for (const seed of seeds(10)) {
      const problem = middling(seed);
      const { cost, bound, proven } = plan(problem);
      expect(bound).toBeLessThanOrEqual(cost);
      expect(proven).toBe(true);
      const [first, ...others] = problem.pieces;
      const more = [{ ...first!, count: first!.count + 1 }, ...others];
      expect(plan({ ...problem, kerf_mm: problem.kerf_mm + 4 }).cost).toBeGreaterThanOrEqual(cost);
      expect(plan({ ...problem, pieces: more }).cost).toBeGreaterThanOrEqual(cost);
      expect(plan({ ...problem, stock: problem.stock.slice(0, 2) }).cost).toBeGreaterThanOrEqual(cost);
    }
  });

  test("prices twice as high cost twice as much", () => {
    for (const seed of seeds(5)) {
      const problem = middling(seed);
      const dear = { ...problem, stock: problem.stock.map((s) => ({ ...s, price: 2 * s.price })) };
      expect(plan(dear).cost).toBeCloseTo(2 * plan(problem).cost, 9);
    }
  });
});

describe("what cannot be planned", () => {
  const boards: CuttingProblem = {
    kerf_mm: 3,
    stock: [{ length_mm: 3658, price: 9.5, available: 2 }],
    pieces: [{ length_mm: 483, count: 14 }],
  };

  test("enough sticks just suffice; one piece more and the shortage is named", () => {
    expect(plan(boards)).toMatchObject({ cost: 19, proven: true });
    const outcome = finish(tryCutting({ ...boards, pieces: [{ length_mm: 483, count: 15 }] }, solver));
    expect(outcome).toMatchObject({ ok: false, problems: [{ place: "stock" }] });
    expect(!outcome.ok && outcome.problems[0]!.message).toContain("486 mm");
  });

  test("sticks that would do if pieces could be split are found wanting too", () => {
    // 2 sticks of 100 for 60 + 60 + 40 + 40: fits; for 70 + 50 + 40 + 40 (total 200 too): does not
    const stock = [{ length_mm: 100, price: 1, available: 2 }];
    const of = (...lengths: number[]): CuttingProblem => ({
      kerf_mm: 0,
      stock,
      pieces: lengths.map((length_mm) => ({ length_mm, count: 1 })),
    });
    expect(plan(of(60, 60, 40, 40)).cost).toBe(2);
    expect(finish(tryCutting(of(70, 50, 40, 40), solver)).ok).toBe(false);
  });

  test("planCutting throws every fault at once, tryCutting answers them", () => {
    const broken: CuttingProblem = { kerf_mm: -3, stock: [], pieces: [{ length_mm: 482.6, count: 0 }] };
    const outcome = finish(tryCutting(broken, solver));
    expect(!outcome.ok && outcome.problems.map((p) => p.place)).toEqual([
      "kerf_mm",
      "pieces[0].length_mm",
      "pieces[0].count",
    ]);
    expect(() => finish(planCutting(broken, solver))).toThrow(ProblemError);
  });
});
