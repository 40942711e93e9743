import type { LinearProgram, Solver } from "@causey/engine/fabrication";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { beforeAll, describe, expect, test } from "vitest";
import { loadSolver } from "./load-solver.ts";

const wasm = createRequire(import.meta.url).resolve("highs/runtime");
let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const column = (cost: number, integer = false, upper = Infinity) => ({ cost, lower: 0, upper, integer });

/** Two products from three shops, profit 3 and 5 (Hillier and Lieberman's glass company, from memory). */
const shops = (integer = false): LinearProgram => ({
  sense: "max",
  columns: [column(3, integer), column(5, integer)],
  rows: [
    { lower: -Infinity, upper: 4, entries: [[0, 1]] },
    { lower: -Infinity, upper: 12, entries: [[1, 2]] },
    {
      lower: -Infinity,
      upper: 18,
      entries: [
        [0, 3],
        [1, 2],
      ],
    },
  ],
});

/** 30 things to carry, all of one density but for a little, so that branching is needed. */
const knapsack: LinearProgram = {
  sense: "max",
  columns: Array.from({ length: 30 }, (_, i) => column(100 + ((i * 37) % 29), true, 1)),
  rows: [0, 1, 2].map((r) => ({
    lower: -Infinity,
    upper: 1000 + 7 * r,
    entries: Array.from({ length: 30 }, (_, i) => [i, 60 + ((i * (13 + r)) % 41)] as const),
  })),
};

describe("solver", () => {
  test("solves the glass company example with its shadow prices (Hillier and Lieberman, from memory)", () => {
    const answer = solver.solve(shops());
    expect(answer.status).toBe("optimal");
    expect(answer.objective).toBeCloseTo(36, 9);
    expect(answer.bound).toBeCloseTo(36, 9);
    expect(answer.values.map((v) => Math.round(v * 1e9) / 1e9)).toEqual([2, 6]);
    expect(answer.duals.map((d) => Math.round(d * 1e9) / 1e9)).toEqual([0, 1.5, 1]);
  });

  test("duals of a least-cost program price its lower limits, and add up to its cost", () => {
    const answer = solver.solve({
      sense: "min",
      columns: [column(2), column(3)],
      rows: [
        {
          lower: 10,
          upper: Infinity,
          entries: [
            [0, 1],
            [1, 1],
          ],
        },
        { lower: 4, upper: Infinity, entries: [[1, 1]] },
      ],
    });
    expect(answer.objective).toBeCloseTo(24, 9);
    expect(answer.duals[0]! * 10 + answer.duals[1]! * 4).toBeCloseTo(24, 9);
    expect(answer.duals.every((d) => d >= 0)).toBe(true);
  });

  test("whole numbers: bound meets objective, no duals", () => {
    const answer = solver.solve({
      ...shops(true),
      rows: [
        ...shops().rows.slice(0, 2),
        {
          lower: -Infinity,
          upper: 17.5,
          entries: [
            [0, 3],
            [1, 2],
          ],
        },
      ],
    });
    expect(answer.status).toBe("optimal");
    expect(answer.values.map(Math.round)).toEqual([1, 6]);
    expect(answer.objective).toBeCloseTo(33, 6);
    expect(answer.bound).toBeCloseTo(33, 6);
    expect(answer.duals).toEqual([]);
  });

  test("a node limit is told, and the bound stays on the right side", () => {
    const best = solver.solve(knapsack);
    expect(best.status).toBe("optimal");
    const limited = solver.solve({ ...knapsack, node_limit: 1 });
    expect(["node-limit", "optimal"]).toContain(limited.status);
    expect(limited.bound).toBeGreaterThanOrEqual(best.objective - 1e-6);
    expect(limited.objective).toBeLessThanOrEqual(best.objective + 1e-6);
  });

  test("a start is where the search starts: with no node it is still there", () => {
    const best = solver.solve(knapsack);
    const started = solver.solve({ ...knapsack, node_limit: 0, start: best.values });
    expect(started.objective).toBeCloseTo(best.objective, 6);
  });

  test("infeasible and unbounded programs are told apart", () => {
    const impossible = solver.solve({
      ...shops(),
      rows: [...shops().rows, { lower: 5, upper: Infinity, entries: [[0, 1]] }],
    });
    expect(impossible).toMatchObject({ status: "infeasible", objective: -Infinity, values: [] });
    const endless = solver.solve({ sense: "min", columns: [column(-1)], rows: [] });
    expect(endless).toMatchObject({ status: "unbounded", bound: -Infinity });
    const wholeImpossible = solver.solve({
      sense: "min",
      columns: [column(1, true)],
      rows: [{ lower: 0.2, upper: 0.8, entries: [[0, 1]] }],
    });
    expect(wholeImpossible).toMatchObject({ status: "infeasible", objective: Infinity, bound: Infinity });
  });

  test("a program without columns, and a column named twice in a row", () => {
    const row = (lower: number) => ({ lower, upper: Infinity, entries: [] });
    expect(solver.solve({ sense: "min", columns: [], rows: [row(0)] })).toMatchObject({
      status: "optimal",
      objective: 0,
    });
    expect(solver.solve({ sense: "min", columns: [], rows: [row(1)] }).status).toBe("infeasible");
    const twice = solver.solve({
      sense: "min",
      columns: [column(1)],
      rows: [
        {
          lower: 6,
          upper: Infinity,
          entries: [
            [0, 1],
            [0, 2],
          ],
        },
      ],
    });
    expect(twice.objective).toBeCloseTo(2, 9);
  });

  test("broken programs are refused by name", () => {
    expect(() => solver.solve({ ...shops(), columns: [column(NaN), column(5)] })).toThrow("bad-column");
    expect(() =>
      solver.solve({ sense: "min", columns: [column(1)], rows: [{ lower: 0, upper: 1, entries: [[1, 1]] }] }),
    ).toThrow("bad-row-entry");
  });

  test("the same program gives the same answer, also from a second solver and after hundreds of others", async () => {
    const first = JSON.stringify(solver.solve(knapsack));
    for (let i = 0; i < 300; i++) solver.solve(shops());
    expect(JSON.stringify(solver.solve(knapsack))).toBe(first);
    const second = await loadSolver({ wasmBinary: readFileSync(wasm) });
    expect(JSON.stringify(second.solve(knapsack))).toBe(first);
  });

  test("takes the WebAssembly file from where the page says, and rejects when it is not there", async () => {
    const asked: string[] = [];
    const there = await loadSolver({
      locateFile: (file) => {
        asked.push(file);
        return wasm;
      },
    });
    expect(asked).toContain("highs.wasm");
    expect(there.name).toMatch(/^HiGHS \d+\.\d+/);
    expect(there.solve(shops()).objective).toBeCloseTo(36, 9);
    await expect(loadSolver({ locateFile: () => "/no/such/file.wasm" })).rejects.toThrow();
  });
});
