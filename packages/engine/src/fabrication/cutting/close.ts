import type { Job } from "../../formula/index.ts";
import type { Column } from "./model.ts";
import { PatternLister, type PatternList } from "./pattern-list.ts";
import type { ProvenBound } from "./safe-bound.ts";
import { isClosed, type Standing, type Task } from "./task.ts";
import { solveWhole } from "./whole-master.ts";

/** Patterns handed to the whole-number search: first few, to find a better plan; then, if need be, all that matter. */
const FEW_PATTERNS = 150;
const FEW_PER_KIND = 2;
const MOST_PATTERNS = 1500;

/**
 * Closes the gap by reduced costs: a plan cheaper than `best` can only use patterns whose reduced cost is within
 * the gap between its cost and the bound. Where those patterns are few enough, all of them are listed and the
 * whole-number program over them settles the optimum; where they are too many, the list is cut at a lower
 * reduced cost, which still finds plans and still lifts the bound, as far as the list reaches.
 */
export function* closeGap(
  task: Task,
  proven: ProvenBound,
  pool: ReadonlyMap<string, Column>,
  start: Standing,
): Job<Standing> {
  if (isClosed(start, task)) return start;
  const lister = new PatternLister(task.model, proven);
  const few = Math.max(FEW_PATTERNS, FEW_PER_KIND * task.model.widths.length);
  let standing = start;
  for (const most of [few, MOST_PATTERNS, MOST_PATTERNS]) {
    if (isClosed(standing, task)) break;
    yield { done: 3, total: 4, note: "Choosing among patterns in whole sticks" };
    const top = standing.best ? task.ladder.below(standing.best.cost) : null;
    const list = lister.list(top, most, pool.values());
    const next = improve(task, list, standing, top ?? Infinity);
    const isStuck = next.best === standing.best;
    standing = next;
    if (isStuck && (list.reach === Infinity || most === MOST_PATTERNS)) break;
  }
  return standing;
}

function improve(
  { model, solver, ladder }: Task,
  list: PatternList,
  { best, lower }: Standing,
  top: number,
): Standing {
  const answer = solveWhole(model, list.columns, { lower, top }, solver);
  const plan = answer.plan && (!best || answer.plan.cost < best.cost) ? answer.plan : best;
  const reached = Math.min(answer.lower, list.reach, best?.cost ?? Infinity);
  return { best: plan, lower: Math.max(lower, reached === Infinity ? Infinity : ladder.atLeast(reached)) };
}
