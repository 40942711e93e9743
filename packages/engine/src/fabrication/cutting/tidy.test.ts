import { describe, expect, test } from "vitest";
import type { CuttingModel } from "./model.ts";
import { tidyPlan } from "./tidy.ts";

const model: CuttingModel = {
  widths: [50, 20],
  demand: [3, 5],
  sticks: [
    { capacity: 120, cost: 12, limit: Infinity },
    { capacity: 60, cost: 7, limit: 1 },
  ],
  tick: 1,
};
const use = (stick: number, counts: readonly number[], times: number) => ({
  column: { stick, counts },
  times,
});

describe("tidy plan", () => {
  test("surplus pieces are left out and the emptier sticks become cheaper ones", () => {
    // cut: 4 of the first kind and 6 of the second, one of each too many
    const plan = tidyPlan(model, [use(0, [2, 1], 2), use(0, [0, 4], 1)])!;
    const cut = plan.uses.reduce<readonly number[]>(
      (sum, u) => sum.map((n, k) => n + u.times * u.column.counts[k]!),
      [0, 0],
    );
    expect(cut).toEqual([3, 5]);
    expect(plan.cost).toBeLessThanOrEqual(36);
    expect(plan.uses.reduce((sum, u) => sum + u.times * model.sticks[u.column.stick]!.cost, 0)).toBe(
      plan.cost,
    );
  });

  test("a limited cheaper stick is used once only", () => {
    const plan = tidyPlan(model, [use(0, [1, 0], 3), use(0, [0, 5], 1)])!;
    expect(plan.uses.filter((u) => u.column.stick === 1).map((u) => u.times)).toEqual([1]);
    expect(plan.cost).toBe(12 * 3 + 7);
  });

  test("a missing piece or a passed limit is no plan", () => {
    expect(tidyPlan(model, [use(0, [2, 1], 1)])).toBeNull();
    expect(tidyPlan(model, [use(0, [2, 1], 2), use(1, [0, 3], 2)])).toBeNull();
  });

  test("equal sticks are counted together, empty ones are dropped", () => {
    const plan = tidyPlan(model, [
      use(0, [1, 1], 1),
      use(0, [1, 1], 2),
      use(0, [0, 2], 1),
      use(0, [0, 0], 4),
    ])!;
    expect(plan.uses.reduce((sum, u) => sum + u.times, 0)).toBe(4);
    expect(new Set(plan.uses.map((u) => `${u.column.stick}:${u.column.counts.join()}`)).size).toBe(
      plan.uses.length,
    );
  });
});
