import { describe, expect, test } from "vitest";
import { costLadder } from "./cost-ladder.ts";
import type { CuttingModel } from "./model.ts";

const model = (
  sticks: CuttingModel["sticks"],
  width: number,
  demand: number,
  tick: number,
): CuttingModel => ({
  widths: [width],
  demand: [demand],
  sticks,
  tick,
});
const short = { capacity: 100, cost: 500, limit: Infinity };
const long = { capacity: 160, cost: 750, limit: Infinity };

describe("cost ladder", () => {
  test("sums of stick prices that buy too little room are no rung", () => {
    const ladder = costLadder(model([short, long], 10, 25, 250), 2000);
    // 250 steps of pieces: 2 short are too few, a short and a long (1250) suffice; then 1500, 1750, 2000
    expect(ladder.atLeast(0)).toBe(1250);
    expect(ladder.atLeast(1250)).toBe(1250);
    expect(ladder.atLeast(1250.5)).toBe(1500);
    expect(ladder.below(1500)).toBe(1250);
    expect(ladder.below(1250)).toBe(-Infinity);
  });

  test("a limit takes rungs away", () => {
    const ladder = costLadder(model([short, { ...long, limit: 1 }], 10, 25, 250), 2000);
    expect(ladder.atLeast(1251)).toBe(1500); // three short
    expect(ladder.atLeast(1501)).toBe(1750); // two short and the long one
  });

  test("the table by price agrees with the list of sums", () => {
    const fine = [
      { capacity: 97, cost: 501, limit: Infinity },
      { capacity: 160, cost: 777, limit: Infinity },
      { capacity: 214, cost: 1003, limit: Infinity },
      { capacity: 333, cost: 1498, limit: Infinity },
    ];
    const given = model(fine, 7, 1400, 1);
    const table = costLadder(given, 60_000);
    const reachable = sumsWithRoom(fine, 60_000, 7 * 1400);
    for (let units = 40_000; units <= 50_000; units += 37)
      expect(table.atLeast(units)).toBe(reachable.find((c) => c >= units));
    expect(table.below(47_000)).toBe(reachable.findLast((c) => c < 47_000));
  });

  test("far from any list the common divisor of the prices is left", () => {
    const ladder = costLadder(model([short, { ...long, cost: 750 }], 1, 10, 250), Infinity);
    expect(ladder.atLeast(1_000_001)).toBe(1_000_250);
    expect(ladder.below(1_000_250)).toBe(1_000_000);
  });
});

/** Most room for each sum, by plain recursion over sums. */
function sumsWithRoom(sticks: CuttingModel["sticks"], top: number, wanted: number): number[] {
  const room = new Map<number, number>([[0, 0]]);
  for (let cost = 1; cost <= top; cost++)
    for (const s of sticks) {
      const before = room.get(cost - s.cost);
      if (before !== undefined) room.set(cost, Math.max(room.get(cost) ?? 0, before + s.capacity));
    }
  return [...room].filter(([, r]) => r >= wanted).map(([cost]) => cost);
}
