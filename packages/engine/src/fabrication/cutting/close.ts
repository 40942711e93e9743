import type { Job } from "../../formula/index.ts";
import type { LinearProgram, LinearSolution, Solver } from "../solver.ts";
import type { CostLadder } from "./cost-ladder.ts";
import { solveKnapsack } from "./knapsack.ts";
import { masterProgram } from "./linear-master.ts";
import { addColumns, wholeRest, type Column, type CuttingModel, type WholePlan } from "./model.ts";
import type { ProvenBound } from "./safe-bound.ts";
import { tidyPlan } from "./tidy.ts";

/** What is known so far: `lower` <= the cost of every plan; `best` the cheapest plan met. Price units. */
export interface Standing {
  readonly best: WholePlan | null;
  readonly lower: number;
}

/** Most patterns handed to the whole-number search, and its work: nodes shrink as patterns grow. */
const STAGES = JSON.parse((globalThis as any).process.env.STAGES ?? '[300,1000,4000]') as number[];
const NODE_WORK = Number((globalThis as any).process.env.NW ?? 100000);
const LEAST_NODES = 50;
const MOST_ROUNDS = STAGES.length;

/**
 * Closes the gap by reduced costs: a plan cheaper than `best` can only use patterns whose reduced cost is below
 * the gap between `best` and the bound. Where those patterns are few enough, all of them are listed and the
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
): Job<Standing> {
  let standing = start;
  for (let round = 1; round <= MOST_ROUNDS && !isClosed(standing); round++) {
    yield { done: round, total: MOST_ROUNDS, note: "Choosing among patterns in whole sticks" };
    const list = listPatterns(model, proven, pool, standing, STAGES[round - 1]!);
    const answer = solver.solve(wholeProgram(model, list.columns, standing));
    const next = learn(model, list, answer, standing, ladder);
    const isStuck = next.best === standing.best && next.lower === standing.lower;
    standing = next;
    if (isStuck && list.reach === Infinity) break;
  }
  return standing;
}

export const isClosed = ({ best, lower }: Standing): boolean => best !== null && best.cost - lower <= Number((globalThis as any).process.env.CE ?? 2.5e-4) * best.cost;

interface PatternList {
  readonly columns: readonly Column[];
  /** Every plan that costs no more than this, and less than the best, uses listed patterns only. */
  readonly reach: number;
}

function listPatterns(
  model: CuttingModel,
  proven: ProvenBound,
  pool: ReadonlyMap<string, Column>,
  { best }: Standing,
  most: number,
): PatternList {
  const gap = best ? best.cost - model.tick - proven.bound : Infinity;
  const whole = patternsWithin(model, proven, gap, most);
  if (whole) return { columns: whole, reach: Infinity };
  let slack = best ? gap : Math.max(...model.sticks.map((s) => s.cost));
  let some: Column[] | null = null;
  while (!some && slack > 1e-9 * (proven.bound + 1)) some = patternsWithin(model, proven, (slack /= 2), most);
  const cost = reducedCost(model, proven);
  const known = [...pool.values()].map((column) => ({ column, cost: cost(column) })).filter((c) => c.cost <= gap);
  known.sort((a, b) => a.cost - b.cost);
  const listed = new Map<string, Column>();
  addColumns(listed, some ?? []);
  for (const { column } of known) if (listed.size < most) addColumns(listed, [column]);
  return { columns: [...listed.values()], reach: some ? proven.bound + slack : proven.bound };
}

/** What a pattern costs beyond the worth of its pieces, the gain of its stick already taken off. Price units, 0 or more. */
function reducedCost(model: CuttingModel, { values, rate }: ProvenBound): (column: Column) => number {
  const base = stickCosts(model, { values, rate });
  return (column) => base[column.stick]! - rate * column.counts.reduce((sum, n, k) => sum + n * values[k]!, 0);
}

function stickCosts(model: CuttingModel, { values, rate }: Pick<ProvenBound, "values" | "rate">): number[] {
  const knapsack = solveKnapsack(model.widths, values, model.demand, largestCapacity(model));
  return model.sticks.map((s) => Math.max(s.cost, rate * knapsack.best(s.capacity)));
}

const largestCapacity = (model: CuttingModel): number => Math.max(...model.sticks.map((s) => s.capacity));

/** All full patterns with a reduced cost up to `slack`; null when they are too many. */
function patternsWithin(model: CuttingModel, proven: ProvenBound, slack: number, most: number): Column[] | null {
  const { values, rate } = proven;
  const base = stickCosts(model, proven);
  const knapsack = solveKnapsack(model.widths, values, model.demand, largestCapacity(model));
  const found: Column[] = [];
  for (const [s, stick] of model.sticks.entries()) {
    const worth = rate > 0 ? ((base[s]! - slack) / rate) * (1 - 1e-12) - 1 : 0;
    const fillings = knapsack.fillingsWorth(stick.capacity, worth, most - found.length);
    if (!fillings) return null;
    for (const counts of fillings) if (counts.some((n) => n > 0)) found.push({ stick: s, counts });
  }
  return found;
}

/** The integer master, its cost kept between the bound and the next cost below the best plan. */
function wholeProgram(model: CuttingModel, columns: readonly Column[], { best, lower }: Standing): LinearProgram {
  const scale = Math.max(...model.sticks.map((s) => s.cost), 1);
  const costs = { sticks: model.sticks.map((s) => s.cost / scale), uncut: null };
  const { program } = masterProgram(model, wholeRest(model), columns, costs, true);
  const n = columns.length;
  const cost = model.sticks.map((_, s) => [n + s, costs.sticks[s]!] as const);
  const countRows = model.sticks.map((_, s) => ({ lower: 0, upper: 0, entries: [...columns.flatMap((c, i) => c.stick === s ? [[i, 1] as const] : []), [n + s, -1] as const] }));
  const top = best ? (best.cost - model.tick / 2) / scale : Infinity;
  const nodes = Math.ceil(NODE_WORK / (columns.length + 1));
  return {
    ...program,
    columns: [...program.columns.map((c) => ({ ...c, cost: 0 })), ...model.sticks.map((s, i) => ({ cost: costs.sticks[i]!, lower: 0, upper: s.limit, integer: true }))],
    rows: [...program.rows, ...countRows, { lower: (lower - model.tick / 2) / scale, upper: top, entries: cost }],
    node_limit: Math.max(LEAST_NODES, nodes),
    absolute_gap: (0.5 * model.tick) / scale,
  };
}

/** The solver works with a tolerance: its bound counts less this part of the dearest stick and of itself. */
const SOLVER_TOLERANCE = 1e-6;
const SOLVER_RELATIVE = 1e-9;

function learn(
  model: CuttingModel,
  list: PatternList,
  answer: LinearSolution,
  { best, lower }: Standing,
  ladder: CostLadder,
): Standing {
  const scale = Math.max(...model.sticks.map((s) => s.cost), 1);
  const uses = answer.values.slice(0, list.columns.length).flatMap((x, c) => {
    const times = Math.round(x);
    return times > 0 ? [{ column: list.columns[c]!, times }] : [];
  });
  const plan = uses.length > 0 ? tidyPlan(model, uses) : null;
  const cheaper = plan && (!best || plan.cost < best.cost) ? plan : best;
  const none = best?.cost ?? Infinity;
  const shown =
    answer.status === "infeasible" ? none : answer.bound * scale * (1 - SOLVER_RELATIVE) - SOLVER_TOLERANCE * scale;
  const within = answer.status === "error" ? 0 : Math.min(shown, none);
  const reached = Math.min(within, list.reach);
  const lifted = reached === Infinity ? Infinity : ladder(Math.max(0, reached));
  return { best: cheaper, lower: Math.max(lower, lifted) };
}
