/**
 * One-dimensional cutting instances with known optimum:
 * Falkenauer (1996), A hybrid grouping genetic algorithm for bin packing, J. Heuristics 2, doi 10.1007/BF00226291;
 * Scholl, Klein and Juergens (1997), BISON, Computers and Operations Research 24(7);
 * Schwerin and Waescher (1997), The bin-packing problem, Int. Trans. Operational Research 4(5-6).
 */
import { planCutting, type CuttingProblem, type Solver } from "@causey/engine/fabrication";
import { finish } from "@causey/engine/formula";
import { beforeAll, describe, expect, test } from "vitest";
import { loadSolver } from "../../src/solver/index.ts";
import { auditCutting } from "../support/audit-cutting.ts";
import { publishedCases, readCase } from "../support/cutting-data.ts";

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});
const cases = publishedCases();

describe.skipIf(cases.length === 0)("published cutting instances", () => {
  for (const { file, source, optimum } of cases)
    test(`${source}, ${file}: reaches the published optimum of ${optimum} sticks and proves it`, () => {
      const problem = readCase(file);
      const plan = finish(planCutting(problem, solver));
      expect(auditCutting(problem, plan)).toEqual([]);
      expect(plan.cost).toBe(optimum);
      expect(plan.bound).toBeLessThanOrEqual(optimum);
      expect(plan.proven).toBe(true);
    });

  test("Falkenauer (1996), t60_00.txt with a 3 mm kerf: kerf added to every length and the stock changes nothing", () => {
    const bare = readCase("t60_00.txt");
    const wide = {
      kerf_mm: 0,
      stock: bare.stock.map((s) => ({ ...s, length_mm: s.length_mm + 3 })),
      pieces: bare.pieces.map((p) => ({ ...p, length_mm: p.length_mm + 3 })),
    };
    const sawn = finish(planCutting({ ...bare, kerf_mm: 3 }, solver));
    expect(auditCutting({ ...bare, kerf_mm: 3 }, sawn)).toEqual([]);
    expect(sawn.cost).toBe(finish(planCutting(wide, solver)).cost);
  });

  test("there are the 20 instances of the three sources", () => {
    expect(cases.map((c) => c.source).filter((s, i, all) => all.indexOf(s) === i)).toEqual([
      "Falkenauer (1996)",
      "Scholl, Klein and Juergens (1997)",
      "Schwerin and Waescher (1997)",
    ]);
    expect(cases).toHaveLength(20);
  });
});

test("Chvatal (1983), Linear programming, rolls of 100 in (from memory): 453 rolls", () => {
  const problem: CuttingProblem = {
    kerf_mm: 0,
    stock: [{ length_mm: 100, price: 1 }],
    pieces: [
      { length_mm: 45, count: 97 },
      { length_mm: 36, count: 610 },
      { length_mm: 31, count: 395 },
      { length_mm: 14, count: 211 },
    ],
  };
  const plan = finish(planCutting(problem, solver));
  expect(auditCutting(problem, plan)).toEqual([]);
  expect(plan).toMatchObject({ cost: 453, bound: 453, proven: true });
});
