import type { Job } from "../../formula/index.ts";
import type { LinearProgram, Solver } from "../solver.ts";
import { closeGap } from "./close.ts";
import { coverRest, relax, type Relaxation } from "./column-generation.ts";
import { costLadder } from "./cost-ladder.ts";
import { dive } from "./dive.ts";
import { quickPlan } from "./greedy.ts";
import { addColumns, wholeRest, type Column, type CuttingModel, type WholePlan } from "./model.ts";
import { isClosed, type Standing, type Task } from "./task.ts";
import { tidyPlan } from "./tidy.ts";

export type Found =
  | { readonly plan: WholePlan; readonly lower: number }
  /**
   * The sticks do not suffice. `uncut`: least width of pieces, in steps, that finds no stick even if patterns
   * could be cut in part; `isCertain` false where no plan was found, but none was ruled out either.
   */
  | { readonly plan: null; readonly uncut: number; readonly isCertain: boolean };

const MOST_DIVES = 4;
/** Rows times columns over all linear programs of the dives, after which no further dive starts. */
const DIVE_WORK = 10_000_000;
const KINDS_PER_EXTRA = 4;

/**
 * Quick plans, column generation, dives and the whole-number search, each only while the cost stands further
 * than the fraction `closeEnough` above the bound. No clock: all limits are counts of work.
 */
export function* search(model: CuttingModel, solver: Solver, closeEnough: number): Job<Found> {
  const rest = wholeRest(model);
  const quick = quickPlan(model, rest, "full");
  const first = quick && tidyPlan(model, quick.uses);
  yield { done: 0, total: 4, note: "Quick plans made" };
  const pool = new Map<string, Column>();
  addColumns(pool, first?.uses.map((u) => u.column) ?? []);
  if (!first) {
    const cover = yield* coverRest(model, rest, solver);
    if (cover.uncut > 0) return { plan: null, uncut: cover.uncut, isCertain: true };
    addColumns(pool, cover.columns);
  }
  const ladder = costLadder(model, first?.cost ?? Infinity);
  const task: Task = { model, solver, ladder, closeEnough };
  const relaxed = yield* relax(model, rest, [...pool.values()], solver, {
    kindsPerExtra: KINDS_PER_EXTRA,
    isEnough: (bound, objective) => ladder.atLeast(bound) >= ladder.atLeast(objective),
  });
  if (!relaxed) return { plan: null, uncut: 0, isCertain: false };
  addColumns(pool, relaxed.columns);
  const start = { best: first, lower: ladder.atLeast(relaxed.proven.bound) };
  const dived = yield* diveWhileOpen(task, relaxed, pool, start);
  const end = yield* closeGap(task, relaxed.proven, pool, dived);
  if (!end.best) return { plan: null, uncut: 0, isCertain: end.lower === Infinity };
  return { plan: end.best, lower: Math.min(end.lower, end.best.cost) };
}

/** Dives from one column after the other, as long as they are worth their work. */
function* diveWhileOpen(
  task: Task,
  relaxed: Relaxation,
  pool: Map<string, Column>,
  start: Standing,
): Job<Standing> {
  const meter = metered(task.solver);
  let standing = start;
  for (let turn = 0; turn < MOST_DIVES && meter.work() < DIVE_WORK; turn++) {
    if (isClosed(standing, task)) break;
    const below = standing.best?.cost ?? Infinity;
    const { plan, columns } = yield* dive({ ...task, solver: meter }, relaxed, below, turn);
    addColumns(pool, columns);
    if (plan) standing = { ...standing, best: plan };
  }
  return standing;
}

/** Counts the work of the linear programs that pass through. */
function metered(solver: Solver): Solver & { readonly work: () => number } {
  let work = 0;
  return {
    name: solver.name,
    work: () => work,
    solve: (program: LinearProgram) => {
      work += program.rows.length * program.columns.length;
      return solver.solve(program);
    },
  };
}
