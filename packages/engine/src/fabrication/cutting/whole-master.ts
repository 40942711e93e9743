import type { LinearProgram, LinearSolution, Solver } from "../solver.ts";
import { masterProgram } from "./linear-master.ts";
import { wholeRest, type Column, type CuttingModel, type WholePlan } from "./model.ts";
import { tidyPlan } from "./tidy.ts";

export interface WholeAnswer {
  /** The cheapest plan met, whose cost is checked in whole numbers; null when none was met. */
  readonly plan: WholePlan | null;
  /** No plan made of these columns costs less; Infinity when there is none up to the top. Price units. */
  readonly lower: number;
}

/** Branch-and-bound nodes for a program of one row and one column; larger programs get fewer. */
const NODE_WORK = 3_000_000;
const LEAST_NODES = 10;
/** The solver works with a tolerance: its bound counts less this part of the dearest stick and of itself. */
const TOLERANCE = 1e-6;
const RELATIVE = 1e-9;

/** The cheapest plan in whole sticks over the given columns, with a cost from `lower` to `top` price units. */
export function solveWhole(
  model: CuttingModel,
  columns: readonly Column[],
  within: { readonly lower: number; readonly top: number },
  solver: Solver,
): WholeAnswer {
  const scale = Math.max(...model.sticks.map((s) => s.cost), 1);
  const answer = solver.solve(wholeProgram(model, columns, within, scale));
  return { plan: readPlan(model, columns, answer), lower: readBound(answer, scale) };
}

/**
 * The integer master with one more whole variable per kind of stick: how many are bought. The cost hangs on
 * these few, so that branching on them moves the bound at once; on the pattern counts alone it hardly moves.
 */
function wholeProgram(
  model: CuttingModel,
  columns: readonly Column[],
  { lower, top }: { readonly lower: number; readonly top: number },
  scale: number,
): LinearProgram {
  const n = columns.length;
  const costs = model.sticks.map((s) => s.cost / scale);
  const { program, kinds } = masterProgram(
    model,
    wholeRest(model),
    columns,
    { sticks: costs, uncut: null },
    true,
  );
  const bought = model.sticks.map((s, i) => ({ cost: costs[i]!, lower: 0, upper: s.limit, integer: true }));
  const counted = model.sticks.map((_, s) => ({
    lower: 0,
    upper: 0,
    entries: [...columns.flatMap((c, i) => (c.stick === s ? [[i, 1] as const] : [])), [n + s, -1] as const],
  }));
  const half = model.tick / 2;
  const price = {
    lower: (lower - half) / scale,
    upper: (top + half) / scale,
    entries: costs.map((cost, s) => [n + s, cost] as const),
  };
  const rows = [...program.rows.slice(0, kinds.length), ...counted, price];
  return {
    sense: "min",
    columns: [...program.columns.map((c) => ({ ...c, cost: 0 })), ...bought],
    rows,
    node_limit: Math.max(LEAST_NODES, Math.ceil(NODE_WORK / (rows.length * (n + bought.length)))),
    absolute_gap: half / scale,
    neighbourhoods: false,
  };
}

function readPlan(model: CuttingModel, columns: readonly Column[], answer: LinearSolution): WholePlan | null {
  if (answer.values.length === 0) return null;
  const uses = columns.map((column, c) => ({ column, times: Math.round(answer.values[c]!) }));
  return tidyPlan(
    model,
    uses.filter((u) => u.times > 0),
  );
}

function readBound(answer: LinearSolution, scale: number): number {
  if (answer.status === "infeasible") return Infinity;
  if (answer.status === "error" || !(answer.bound > 0)) return 0;
  return Math.max(0, answer.bound * scale * (1 - RELATIVE) - TOLERANCE * scale);
}
