import type { CuttingModel } from "./model.ts";

/** The costs that a whole plan can have at all, as far as stick prices and room tell. Price units. */
export interface CostLadder {
  /** The lowest such cost that is no less than `units`. */
  readonly atLeast: (units: number) => number;
  /** The highest such cost below `cost`; the bound for whoever wants to beat it. */
  readonly below: (cost: number) => number;
}

const MOST_SUMS = 100_000;
const MOST_RUNGS = 2_000_000;

/**
 * A plan costs a sum of stick prices, and the sticks bought for that sum must offer as much room as the pieces
 * take. Few sums up to `top` are listed one by one; many go into a table by price; where even the table would
 * grow too long, only the common divisor of the prices is used.
 */
export function costLadder(model: CuttingModel, top: number): CostLadder {
  const wanted = model.widths.reduce((sum, w, k) => sum + w * model.demand[k]!, 0);
  const priced = model.sticks.filter((s) => s.cost > 0);
  const ways = priced.reduce((product, s) => product * (Math.min(s.limit, Math.floor(top / s.cost)) + 1), 1);
  if (model.sticks.some((s) => s.cost === 0 && s.limit === Infinity)) return plainLadder(model.tick);
  if (ways <= MOST_SUMS) return listedLadder(model, top, wanted);
  return top / model.tick <= MOST_RUNGS ? tableLadder(model, top, wanted) : plainLadder(model.tick);
}

const plainLadder = (tick: number): CostLadder => ({
  atLeast: (units) => Math.ceil(units / tick) * tick,
  below: (cost) => (Math.ceil(cost / tick) - 1) * tick,
});

const freeRoom = (model: CuttingModel): number =>
  model.sticks.reduce((sum, s) => (s.cost === 0 ? sum + s.limit * s.capacity : sum), 0);

/** Every sum that buys room enough, in order; limits are kept. Above the top any cost may be one. */
function listedLadder(model: CuttingModel, top: number, wanted: number): CostLadder {
  let sums: { cost: number; room: number }[] = [{ cost: 0, room: freeRoom(model) }];
  for (const { cost, capacity, limit } of model.sticks.filter((s) => s.cost > 0))
    sums = sums.flatMap((sum) => {
      const most = Math.min(limit, Math.floor((top - sum.cost) / cost));
      return Array.from({ length: most + 1 }, (_, n) => ({
        cost: sum.cost + n * cost,
        room: sum.room + n * capacity,
      }));
    });
  const rungs = Float64Array.from(new Set(sums.filter((s) => s.room >= wanted).map((s) => s.cost))).sort();
  return {
    atLeast: (units) => rungs[firstAtLeast(rungs, units)] ?? Math.max(units, top),
    below: (cost) => rungs[firstAtLeast(rungs, cost) - 1] ?? -Infinity,
  };
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** For each sum up to the top the most room it buys; limits left aside, which keeps a bound a bound. */
function tableLadder(model: CuttingModel, top: number, wanted: number): CostLadder {
  const { tick } = model;
  const rungs = Math.ceil(top / tick);
  const room = new Float64Array(rungs + 1).fill(-Infinity);
  room[0] = freeRoom(model);
  for (const { cost, capacity } of model.sticks.filter((s) => s.cost > 0)) {
    const price = cost / tick;
    for (let r = price; r <= rungs; r++) room[r] = Math.max(room[r]!, room[r - price]! + capacity);
  }
  return {
    atLeast: (units) => {
      let rung = Math.ceil(units / tick);
      while (rung < rungs && room[rung]! < wanted) rung++;
      return rung * tick;
    },
    below: (cost) => {
      let rung = Math.ceil(cost / tick) - 1;
      while (rung >= 0 && !(room[rung]! >= wanted)) rung--;
      return rung >= 0 ? rung * tick : -Infinity;
    },
  };
}
