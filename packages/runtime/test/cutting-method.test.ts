import {
  cuttingPlan,
  fabricationCalculations,
  type CuttingPlan,
  type Solver,
} from "@causey/engine/fabrication";
import type { JsonObject } from "@causey/engine/formula";
import { beforeAll, describe, expect, test } from "vitest";
import { loadSolver } from "../src/solver/index.ts";

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const boards: JsonObject = {
  kerf_mm: 3,
  stock: [{ length_mm: 3658, price: 9.5 }],
  pieces: [{ length_mm: 483, count: 60 }],
};
const outputs = (input: JsonObject): CuttingPlan => {
  const outcome = cuttingPlan.run(input, { solver });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.outputs as unknown as CuttingPlan;
};

describe("cutting.plan", () => {
  test("is registered with its two formulas, each with a source", () => {
    expect(fabricationCalculations.map((c) => c.id)).toEqual([
      "cutting.plan",
      "cutting.gap",
      "cutting.waste",
    ]);
    expect(cuttingPlan.inputs.map((f) => f.key)).toEqual(["kerf_mm", "stock", "pieces"]);
    expect(cuttingPlan.outputs.map((f) => f.key)).toEqual([
      "cost",
      "bound",
      "stock_used",
      "patterns",
      "proven",
    ]);
    for (const c of fabricationCalculations) expect(c.sources.length).toBeGreaterThan(0);
  });

  test("answers bare numbers and shows gap and waste as working", () => {
    const outcome = cuttingPlan.run(boards, { solver });
    expect(outcome).toMatchObject({
      ok: true,
      outputs: { cost: 85.5, bound: 85.5, proven: true, stock_used: [{ length_mm: 3658, count: 9 }] },
    });
    if (!outcome.ok) return;
    expect(outcome.working.map((step) => [step.id, step.value])).toEqual([
      ["cutting.gap", 0],
      ["cutting.waste", 1 - (60 * 0.483) / (9 * 3.658)],
    ]);
    expect(JSON.parse(JSON.stringify(outcome.outputs))).toEqual(outcome.outputs);
  });

  test("inches come exact: a 12 ft piece from a 12 ft stick, 19 in boards beside it", () => {
    const found = outputs({
      kerf_mm: 3.175,
      stock: [{ length_mm: 3657.6, price: 9.5 }],
      pieces: [
        { length_mm: 3657.6, count: 2 },
        { length_mm: 482.6, count: 14 },
      ],
    });
    expect(found.cost).toBe(38);
    expect(found.stock_used).toEqual([{ length_mm: 3657.6, count: 4 }]);
    expect(found.patterns).toContainEqual({
      stock_mm: 3657.6,
      times: 2,
      cuts: [{ length_mm: 482.6, count: 7 }],
      offcut_mm: 257.175,
    });
  });

  test("a stick in sevenths gives seven pieces: digits finer than the steps are dropped", () => {
    const found = outputs({
      kerf_mm: 0,
      stock: [{ length_mm: 3048, price: 2 }],
      pieces: [{ length_mm: 3048 / 7, count: 7 }],
    });
    expect(found).toMatchObject({ cost: 2, proven: true });
  });

  test("without a solver, and with faults in several rows, it says so", () => {
    expect(cuttingPlan.run(boards, {})).toMatchObject({ ok: false, problems: [{ place: "solver" }] });
    const outcome = cuttingPlan.run(
      {
        kerf_mm: -1,
        stock: [{ length_mm: 3658, price: -1 }, "12 ft", { length_mm: 3048, price: 8, colour: "green" }],
        pieces: [{ length_mm: 483, count: 1.5 }, { count: 3 }],
      },
      { solver },
    );
    expect(!outcome.ok && outcome.problems.map((p) => p.place)).toEqual([
      "kerf_mm",
      "stock[0].price",
      "stock[1]",
      "stock[2].colour",
      "pieces[0].count",
      "pieces[1].length_mm",
    ]);
  });

  test("a piece longer than the stock is named with its row", () => {
    const outcome = cuttingPlan.run({ ...boards, pieces: [{ length_mm: 4000, count: 1 }] }, { solver });
    expect(outcome).toMatchObject({ ok: false, problems: [{ place: "pieces[0].length_mm", value: "4000" }] });
  });
});
