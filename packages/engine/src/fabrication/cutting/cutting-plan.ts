import { inputProblem, ProblemError, type Job, type Problem } from "../../formula/index.ts";
import type { Solver } from "../solver.ts";
import type { CuttingPlan, CuttingProblem } from "../types.ts";
import { buildModel, type BuiltModel } from "./build-model.ts";
import { checkLengths, type LengthType } from "./check-cutting.ts";
import { presentPlan } from "./present-plan.ts";
import { search, type Found } from "./search.ts";

export interface CuttingOptions {
  /**
   * The work stops once (cost - bound) / cost is no more than this; 0 goes on until the plan is proven or the
   * work limits are reached. Default 0.00025: a quarter of a thousandth is not worth seconds of waiting.
   */
  readonly close_enough?: number;
}

export type CuttingOutcome =
  | { readonly ok: true; readonly plan: CuttingPlan }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const CLOSE_ENOUGH = 0.000_25;

/**
 * The cheapest way to cut pieces from priced stock lengths, with a bound below which no plan can cost.
 *
 * problem   lengths in whole mm (1 to 100,000), kerf 0 to 100 mm; n pieces fit a stick of length L when the
 *           sum of (length + kerf) is no more than L + kerf: the last cut is free where the pieces end with the
 *           stick. Crooked or split ends must be off the stock length before.
 * solver    linear and whole-number programs; same solver, same problem: same plan
 * returns   exactly the pieces asked for; bound <= optimum <= cost, in the currency of the prices;
 *           `proven` only where the two agree to 1e-9 of the cost
 *
 * Throws `ProblemError` with every fault of the problem (see `checkCutting`), or when the sticks to be had do
 * not suffice. Method and limits: docs/methods/cutting-plan.md.
 */
export function* planCutting(
  problem: CuttingProblem,
  solver: Solver,
  options: CuttingOptions = {},
): Job<CuttingPlan> {
  const outcome = yield* tryCutting(problem, solver, options, "integer");
  if (!outcome.ok) throw new ProblemError(outcome.problems);
  return outcome.plan;
}

/** `planCutting` that answers faults instead of throwing them; with "number" lengths may have decimals of a mm. */
export function* tryCutting(
  problem: CuttingProblem,
  solver: Solver,
  options: CuttingOptions = {},
  lengths: LengthType = "integer",
): Job<CuttingOutcome> {
  const problems = checkLengths(problem, lengths);
  if (problems.length > 0) return { ok: false, problems };
  if (problem.pieces.length === 0)
    return { ok: true, plan: { cost: 0, bound: 0, proven: true, stock_used: [], patterns: [] } };
  const built = buildModel(problem);
  if (!("model" in built)) return { ok: false, problems: built };
  const found = yield* search(built.model, solver, options.close_enough ?? CLOSE_ENOUGH);
  return found.plan
    ? { ok: true, plan: presentPlan(built, found.plan, found.lower) }
    : { ok: false, problems: [tooFewSticks(built, found)] };
}

function tooFewSticks({ coarsening, perMm }: BuiltModel, found: Extract<Found, { plan: null }>): Problem {
  const short = Math.ceil((found.uncut * coarsening) / perMm);
  const message =
    found.uncut > 0
      ? `the sticks to be had do not suffice: pieces of about ${short} mm together, saw cuts included, find no stick`
      : found.isCertain
        ? "the sticks to be had do not suffice, however they are cut"
        : "no way was found to cut all pieces from the sticks to be had, and there may be none";
  return inputProblem("stock", "number available", message, 'Raise "available", or add a stock length.');
}
