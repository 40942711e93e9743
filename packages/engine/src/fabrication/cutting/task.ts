import type { Solver } from "../solver.ts";
import type { CostLadder } from "./cost-ladder.ts";
import type { CuttingModel, WholePlan } from "./model.ts";

/** What every step of the search works with. */
export interface Task {
  readonly model: CuttingModel;
  readonly solver: Solver;
  readonly ladder: CostLadder;
  /** The work ends once the cost is within this fraction of itself above the bound. */
  readonly closeEnough: number;
}

/** What is known so far: `lower` <= the cost of every plan; `best` the cheapest plan met. Price units. */
export interface Standing {
  readonly best: WholePlan | null;
  readonly lower: number;
}

/** True when the cost is close enough to the bound, or when there is no plan at all. */
export const isClosed = ({ best, lower }: Standing, { closeEnough }: Task): boolean =>
  best ? best.cost - lower <= closeEnough * best.cost : lower === Infinity;
