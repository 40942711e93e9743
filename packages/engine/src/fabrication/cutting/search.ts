import type { Job } from "../../formula/index.ts";
import type { Solver } from "../solver.ts";
import { closeGap, isClosed, type Standing } from "./close.ts";
import { coverRest, relax } from "./column-generation.ts";
import { costLadder } from "./cost-ladder.ts";
import { dive } from "./dive.ts";
import { quickPlan } from "./greedy.ts";
import { addColumns, wholeRest, type Column, type CuttingModel, type WholePlan } from "./model.ts";
import { tidyPlan } from "./tidy.ts";

export type Found =
  | { readonly plan: WholePlan; readonly lower: number }
  /** Least width of pieces, in steps, that finds no stick; null when it is not known whether the sticks suffice. */
  | { readonly plan: null; readonly uncut: number | null };

const MOST_DIVES = 4;

/** Quick plans, column generation, dives, and the whole-number search, each only while the gap is open. */
export function* search(model: CuttingModel, solver: Solver): Job<Found> {
  const t0 = performance.now();
  const rest = wholeRest(model);
  const quick = quickPlan(model, rest, 'full');
  let best = quick && tidyPlan(model, quick.uses);
  yield { done: 0, total: 4, note: "Quick plans made" };
  const pool = new Map<string, Column>();
  addColumns(pool, best?.uses.map((u) => u.column) ?? []);
  if (!best) {
    const cover = yield* coverRest(model, rest, [...pool.values()], solver);
    if (cover.uncut > 0) return { plan: null, uncut: cover.uncut };
    addColumns(pool, cover.columns);
  }
  const everything = model.sticks.reduce((sum, s) => sum + s.cost * s.limit, 0);
  const ladder = costLadder(model, best?.cost ?? everything);
  const relaxed = yield* relax(model, rest, [...pool.values()], solver, (b, o) => ladder(b) >= ladder(o));
  if (!relaxed) return { plan: null, uncut: null };
  addColumns(pool, relaxed.columns);
  let standing: Standing = { best, lower: ladder(relaxed.proven.bound) };
  (globalThis as any).DIVING = true;
  for (let turn = 0; turn < MOST_DIVES && !isClosed(standing); turn++) {
    const below = standing.best?.cost ?? Infinity;
    const { plan, columns } = yield* dive(model, relaxed, solver, ladder, below, turn);
    addColumns(pool, columns);
    if ((globalThis as any).process.env.V) console.log('   dive', turn, plan?.cost, performance.now() - t0);
    if (plan) standing = { ...standing, best: plan };
  }
  if ((globalThis as any).process.env.V) console.log("    dived", standing.best?.cost, standing.lower, ((standing.best!.cost / standing.lower - 1) * 1e4).toFixed(2), "e-4", performance.now() - t0);
  (globalThis as any).DIVING = false;
  standing = yield* closeGap(model, relaxed.proven, pool, standing, ladder, solver);
  best = standing.best;
  if (!best) return { plan: null, uncut: null };
  return { plan: best, lower: Math.min(standing.lower, best.cost) };
}
