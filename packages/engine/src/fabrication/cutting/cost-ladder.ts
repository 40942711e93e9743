import type { CuttingModel } from "./model.ts";

/** The next cost, at or above a lower bound, that a whole plan can have at all. Price units. */
export type CostLadder = (units: number) => number;

const MOST_RUNGS = 2_000_000;

/**
 * A plan costs a sum of stick prices, and the sticks bought for that sum must offer as much room as the pieces
 * take. For each sum of prices up to `top` the table holds the most room it buys (limits left aside: a bound
 * stays a bound). Where the table would grow too long only the common divisor of the prices is used.
 */
export function costLadder(model: CuttingModel, top: number): CostLadder {
  const { tick, sticks } = model;
  const rungs = Math.ceil(top / tick);
  const step = (units: number): number => Math.ceil(units / tick);
  if (!(rungs <= MOST_RUNGS)) return (units) => step(units) * tick;
  const wanted = model.widths.reduce((sum, w, k) => sum + w * model.demand[k]!, 0);
  const room = roomPerCost(model, rungs);
  const freeRoom = sticks.some((s) => s.cost === 0 && s.limit === Infinity);
  return (units) => {
    let rung = step(units);
    if (!freeRoom) while (rung < rungs && room[rung]! < wanted) rung++;
    return rung * tick;
  };
}

function roomPerCost({ sticks, tick }: CuttingModel, rungs: number): Float64Array {
  const room = new Float64Array(rungs + 1).fill(-Infinity);
  room[0] = sticks.reduce((sum, s) => (s.cost === 0 ? sum + s.limit * s.capacity : sum), 0);
  for (const { cost, capacity } of sticks) {
    const price = cost / tick;
    for (let r = price; price > 0 && r <= rungs; r++)
      room[r] = Math.max(room[r]!, room[r - price]! + capacity);
  }
  return room;
}
