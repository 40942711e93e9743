import type { Job } from "../../formula/index.ts";
import { relax, type Relaxation } from "./column-generation.ts";
import { quickPlan } from "./greedy.ts";
import { costOf, isDone, take, wholeRest, type Column, type CuttingModel, type WholePlan } from "./model.ts";
import type { Task } from "./task.ts";
import { tidyPlan, widthOf } from "./tidy.ts";

export interface Dive {
  /** A plan cheaper than the one known before; null when the dive found none. */
  readonly plan: WholePlan | null;
  /** Patterns met on the way. */
  readonly columns: readonly Column[];
}

/**
 * One dive: cut the whole parts of the relaxed amounts, relax what is left again with patterns made for it, and
 * so on to the ground; at each depth the quick plans try to finish the rest. A heuristic. It ends where the
 * bound of the rest shows that a cost of `below` or more is all there is.
 *
 * `turn` picks, at the first depth with no whole part, the column of that rank instead of the best one.
 */
export function* dive(
  { model, solver, ladder }: Task,
  root: Relaxation,
  below: number,
  turn: number,
): Job<Dive> {
  const met: Column[] = [];
  const done: Use[] = [];
  let plan: WholePlan | null = null;
  let rest = wholeRest(model);
  let rank = turn;
  for (let relaxed: Relaxation | null = root; relaxed;) {
    const cut = nextCut(model, relaxed, rank);
    if (cut.uses.length === 0) break;
    if (cut.isBroken) rank = 0;
    done.push(...cut.uses);
    for (const { column, times } of cut.uses) rest = take(rest, column, times);
    if (rest.limits.some((l) => l < 0)) break;
    const finish = quickPlan(model, rest, "light");
    const found = finish && tidyPlan(model, [...done, ...finish.uses]);
    if (found && found.cost < (plan?.cost ?? below)) plan = found;
    if (isDone(rest)) break;
    yield { done: done.length, total: done.length + 1, note: "Rounding patterns to whole sticks" };
    const spent = costOf(model, done);
    const cutoff = plan?.cost ?? below;
    const isEnough = (bound: number, objective: number): boolean => {
      const least = ladder.atLeast(spent + bound);
      return least >= cutoff || least >= ladder.atLeast(spent + objective);
    };
    relaxed = yield* relax(model, rest, relaxed.columns, solver, {
      kindsPerExtra: KINDS_PER_EXTRA,
      isEnough,
    });
    if (relaxed) met.push(...relaxed.columns);
    if (relaxed && ladder.atLeast(spent + relaxed.proven.bound) >= cutoff) break;
  }
  return { plan, columns: met };
}

type Use = WholePlan["uses"][number];
const NEARLY = 1e-6;
const KINDS_PER_EXTRA = 20;

/** Amounts rounded down; where all are below one stick, one stick of the column of the given rank. */
function nextCut(
  model: CuttingModel,
  relaxed: Relaxation,
  rank: number,
): { readonly uses: readonly Use[]; readonly isBroken: boolean } {
  const whole = relaxed.columns
    .map((column, c) => ({ column, times: Math.floor(relaxed.amounts[c]! + NEARLY) }))
    .filter((u) => u.times > 0);
  return whole.length > 0
    ? { uses: whole, isBroken: false }
    : { uses: closestToOne(model, relaxed, rank), isBroken: true };
}

/** The largest broken amount gets one whole stick; the fuller stick where amounts are alike. */
function closestToOne(model: CuttingModel, relaxed: Relaxation, rank: number): readonly Use[] {
  const order = relaxed.columns
    .map((column, c) => ({
      column,
      amount: Math.round(relaxed.amounts[c]! / NEARLY),
      width: widthOf(model, column.counts),
    }))
    .filter((c) => c.amount > 0);
  order.sort((a, b) => b.amount - a.amount || b.width - a.width);
  const chosen = order[Math.min(rank, order.length - 1)];
  return chosen ? [{ column: chosen.column, times: 1 }] : [];
}
