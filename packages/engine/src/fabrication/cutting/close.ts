import type { Job } from "../../formula/index.ts";
import type { Solver } from "../solver.ts";
import type { CostLadder } from "./cost-ladder.ts";
import type { Column, CuttingModel, WholePlan } from "./model.ts";
import { patternLister, type PatternList } from "./pattern-list.ts";
import type { ProvenBound } from "./safe-bound.ts";
import { solveWhole } from "./whole-master.ts";

/** What is known so far: `lower` <= the cost of every plan; `best` the cheapest plan met. Price units. */
export interface Standing {
  readonly best: WholePlan | null;
  readonly lower: number;
}

/** Patterns handed to the whole-number search: first few, to find a better plan; then, if need be, all that matter. */
const FEW_PATTERNS = 150;
const FEW_PER_KIND = 2;
const MOST_PATTERNS = 4000;

/** True when the cost is within the fraction `closeEnough` of the bound, or when there is no plan at all. */
export const isClosed = ({ best, lower }: Standing, closeEnough: number): boolean =>
  best ? best.cost - lower <= closeEnough * best.cost : lower === Infinity;

/**
 * Closes the gap by reduced costs: a plan cheaper than `best` can only use patterns whose reduced cost is within
 * the gap between its cost and the bound. Where those patterns are few enough, all of them are listed and the
 * whole-number program over them settles the optimum; where they are too many, the list is cut at a lower
 * reduced cost, which still finds plans and still lifts the bound, as far as the list reaches.
 */
export function* closeGap(
  model: CuttingModel,
  proven: ProvenBound,
  pool: ReadonlyMap<string, Column>,
  start: Standing,
  ladder: CostLadder,
  solver: Solver,
  closeEnough: number,
): Job<Standing> {
  const lister = patternLister(model, proven, pool);
  const few = Math.max(FEW_PATTERNS, FEW_PER_KIND * model.widths.length);
  let standing = start;
  for (const most of [few, MOST_PATTERNS, MOST_PATTERNS]) {
    if (isClosed(standing, closeEnough)) break;
    yield { done: 3, total: 4, note: "Choosing among patterns in whole sticks" };
    const list = lister(standing.best ? ladder.below(standing.best.cost) : null, most);
    const next = improve(model, list, standing, ladder, solver);
    const isStuck = next.best === standing.best && next.lower === standing.lower;
    standing = next;
    if (isStuck && (list.reach === Infinity || most === MOST_PATTERNS)) break;
  }
  return standing;
}

function improve(
  model: CuttingModel,
  list: PatternList,
  { best, lower }: Standing,
  ladder: CostLadder,
  solver: Solver,
): Standing {
  const top = best ? ladder.below(best.cost) : Infinity;
  const answer = solveWhole(model, list.columns, { lower, top }, solver);
  const plan = answer.plan && (!best || answer.plan.cost < best.cost) ? answer.plan : best;
  const reached = Math.min(answer.lower, list.reach, best?.cost ?? Infinity);
  return { best: plan, lower: Math.max(lower, reached === Infinity ? Infinity : ladder.atLeast(reached)) };
}
