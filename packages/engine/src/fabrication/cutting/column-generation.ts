import type { Job } from "../../formula/index.ts";
import type { Solver } from "../solver.ts";
import { solveKnapsack, type Knapsack } from "./knapsack.ts";
import { solveMaster, type MasterAnswer, type MasterCosts } from "./linear-master.ts";
import { addColumns, take, trim, type Column, type CuttingModel, type Rest } from "./model.ts";
import { proveBound, wholeValues, type ProvenBound } from "./safe-bound.ts";

/** The cutting problem with broken amounts of patterns allowed. */
export interface Relaxation {
  readonly columns: readonly Column[];
  /** How often each column is cut, broken amounts. */
  readonly amounts: readonly number[];
  /** Price units. */
  readonly objective: number;
  /** The best bound met on the way. */
  readonly proven: ProvenBound;
}

/** A reduced cost smaller than this part of the dearest stick is taken for zero. */
const ZERO_GAIN = 1e-8;
/** Uncut pieces up to this part of the widest piece are the rounding of the linear program. */
const ZERO_UNCUT = 1e-6;

export interface RelaxOptions {
  /** One more column a round for every so many kinds of piece: more columns mean fewer rounds, but less apt ones. */
  readonly kindsPerExtra: number;
  /** May stop the work early: can more be learnt from this bound and this objective (price units)? */
  readonly isEnough: (bound: number, objective: number) => boolean;
}

/**
 * Column generation: solve the master over the known columns, price the pieces by its duals, and let the exact
 * knapsack find the fillings worth more than their stick, until there are none.
 *
 * Answers null when `seeds` cannot cut the rest even in broken amounts.
 */
export function* relax(
  model: CuttingModel,
  rest: Rest,
  seeds: readonly Column[],
  solver: Solver,
  { kindsPerExtra, isEnough }: RelaxOptions,
): Job<Relaxation | null> {
  const scale = Math.max(...model.sticks.map((s) => s.cost), 1);
  const costs: MasterCosts = { sticks: model.sticks.map((s) => s.cost / scale), uncut: null };
  const pool = seedPool(seeds, rest);
  let proven: ProvenBound | null = null;
  for (let round = 1; ; round++) {
    const columns = [...pool.values()];
    const answer = solveMaster(model, rest, columns, costs, solver);
    if (!answer) return null;
    const { values, knapsack } = price(model, rest, answer, scale);
    const bound = proveBound(model, rest, values, knapsack);
    if (!proven || bound.bound > proven.bound) proven = bound;
    const objective = answer.objective * scale;
    const isLast =
      isEnough(proven.bound, objective * (1 - ZERO_GAIN)) ||
      addColumns(pool, gainful(model, rest, { values, knapsack }, answer, costs, kindsPerExtra)) === 0;
    if (isLast) return { columns, amounts: answer.values, objective, proven };
    yield { done: round, total: round + 1, note: `Finding patterns: ${pool.size} so far` };
  }
}

/**
 * Columns that cut the whole rest in broken amounts, found with no eye to the price; or the least width of
 * pieces (in steps) for which the sticks do not suffice. Needed where the number of sticks is limited.
 */
export function* coverRest(
  model: CuttingModel,
  rest: Rest,
  solver: Solver,
): Job<{ readonly columns: readonly Column[]; readonly uncut: number }> {
  const scale = Math.max(...model.widths);
  const costs: MasterCosts = { sticks: model.sticks.map(() => 0), uncut: model.widths.map((w) => w / scale) };
  const pool = new Map<string, Column>();
  for (let round = 1; ; round++) {
    const columns = [...pool.values()];
    const answer = solveMaster(model, rest, columns, costs, solver);
    if (!answer) return { columns, uncut: Infinity };
    const priced = price(model, rest, answer, scale);
    const isCovered = answer.objective <= ZERO_UNCUT;
    if (isCovered || addColumns(pool, gainful(model, rest, priced, answer, costs, model.widths.length)) === 0)
      return { columns, uncut: isCovered ? 0 : answer.objective * scale };
    yield { done: round, total: round + 1, note: "Looking whether the sticks suffice" };
  }
}

function seedPool(seeds: readonly Column[], rest: Rest): Map<string, Column> {
  const pool = new Map<string, Column>();
  addColumns(
    pool,
    seeds.map((c) => trim(c, rest)).filter((c) => c !== null),
  );
  return pool;
}

interface Priced {
  readonly values: readonly number[];
  readonly knapsack: Knapsack;
}

function price(model: CuttingModel, rest: Rest, answer: MasterAnswer, scale: number): Priced {
  const prices = answer.piecePrices.map((p) => p * scale);
  const values = wholeValues(prices, model, rest);
  const capacity = Math.max(...model.sticks.map((s) => s.capacity));
  return { values, knapsack: solveKnapsack(model.widths, values, rest.demand, capacity) };
}

/**
 * Per kind of stick the best filling, where it is worth more than the stick and its rent; then more of the kind
 * that gains most, each from the pieces that the ones before left over: unlike columns teach the master more.
 */
function gainful(
  model: CuttingModel,
  rest: Rest,
  { values, knapsack }: Priced,
  answer: MasterAnswer,
  costs: MasterCosts,
  kindsPerExtra: number,
): Column[] {
  const gain = ({ stick, counts }: Column): number =>
    counts.reduce((sum, n, k) => sum + n * answer.piecePrices[k]!, 0) -
    costs.sticks[stick]! -
    answer.rents[stick]!;
  const fill = (filled: Knapsack): Column[] =>
    model.sticks
      .map((stick, s) => ({ stick: s, counts: rest.limits[s]! > 0 ? filled.filling(stick.capacity) : [] }))
      .filter((column) => column.counts.length > 0 && gain(column) > ZERO_GAIN);
  const found = fill(knapsack);
  let left = rest;
  let last = mostGain(found, gain);
  const capacity = Math.max(...model.sticks.map((s) => s.capacity));
  for (let more = extras(rest, kindsPerExtra); last && more > 0; more--) {
    left = take(left, last, 1);
    last = mostGain(fill(solveKnapsack(model.widths, values, left.demand, capacity)), gain);
    if (last) found.push(last);
  }
  return found;
}

const extras = (rest: Rest, kindsPerExtra: number): number =>
  Math.floor(rest.demand.filter((d) => d > 0).length / kindsPerExtra);

function mostGain(columns: readonly Column[], gain: (column: Column) => number): Column | null {
  return columns.reduce<Column | null>((best, c) => (best === null || gain(c) > gain(best) ? c : best), null);
}
