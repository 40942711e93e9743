import type { LinearProgram, LinearSolution } from "@causey/engine/fabrication";
import type { Highs, Model } from "highs";
import { packProgram } from "./pack-program.ts";

/** One program, one native model, freed before the answer is handed over. */
export function solveWithHighs(highs: Highs, program: LinearProgram): LinearSolution {
  const data = packProgram(highs, program);
  if (data.numCols === 0) return emptyProgram(program);
  const model = highs.createModel(data);
  try {
    model.options.set(options(program));
    if (program.start && isWhole(program)) model.setSolution({ colValue: program.start });
    model.run();
    return readSolution(highs, model, program);
  } finally {
    model.dispose();
  }
}

const isWhole = (program: LinearProgram): boolean => program.columns.some((c) => c.integer);

const options = (program: LinearProgram): Record<string, number | boolean> => ({
  output_flag: false,
  random_seed: 0,
  mip_rel_gap: program.relative_gap ?? 0,
  mip_abs_gap: program.absolute_gap ?? 1e-6,
  ...(program.time_limit_s === undefined ? {} : { time_limit: program.time_limit_s }),
  ...(program.node_limit === undefined ? {} : { mip_max_nodes: program.node_limit }),
  ...(program.neighbourhoods === false ? noNeighbourhoods : {}),
});

const noNeighbourhoods = {
  mip_heuristic_run_rens: false,
  mip_heuristic_run_rins: false,
  mip_heuristic_run_root_reduced_cost: false,
};

function readSolution(highs: Highs, model: Model, program: LinearProgram): LinearSolution {
  const status = statusOf(highs, model);
  const worst = program.sense === "min" ? Infinity : -Infinity;
  const isKnown = model.info.get("primal_solution_status") === highs.constants.solutionStatus.feasible;
  const solution = isKnown ? model.getSolution() : null;
  const objective = solution ? model.getObjectiveValue() : worst;
  return {
    status,
    objective,
    bound: boundOf(model, program, status, objective),
    values: solution ? [...solution.colValue] : [],
    duals: solution && status === "optimal" && !isWhole(program) ? [...solution.rowDual] : [],
  };
}

function boundOf(
  model: Model,
  program: LinearProgram,
  status: LinearSolution["status"],
  objective: number,
): number {
  if (status === "infeasible") return program.sense === "min" ? Infinity : -Infinity;
  if (isWhole(program) && status !== "unbounded") return Number(model.info.get("mip_dual_bound"));
  return status === "optimal" ? objective : program.sense === "min" ? -Infinity : Infinity;
}

function statusOf(highs: Highs, model: Model): LinearSolution["status"] {
  const { modelStatus } = highs.constants;
  switch (model.getModelStatus()) {
    case modelStatus.optimal:
      return "optimal";
    case modelStatus.infeasible:
      return "infeasible";
    case modelStatus.unbounded:
    case modelStatus.unboundedOrInfeasible:
      return settleUnbounded(highs, model);
    case modelStatus.timeLimit:
      return "time-limit";
    case modelStatus.solutionLimit:
      return "node-limit";
    default:
      return "error";
  }
}

/** Presolve may leave "unbounded or infeasible" open; a run without presolve settles it. */
function settleUnbounded(highs: Highs, model: Model): LinearSolution["status"] {
  const { modelStatus } = highs.constants;
  if (model.getModelStatus() === modelStatus.unbounded) return "unbounded";
  model.options.set("presolve", "off");
  model.run();
  const settled = model.getModelStatus();
  if (settled === modelStatus.infeasible) return "infeasible";
  return settled === modelStatus.unbounded ? "unbounded" : "error";
}

/** No column to choose: feasible when every row admits zero. */
function emptyProgram(program: LinearProgram): LinearSolution {
  const isFeasible = program.rows.every((r) => r.lower <= 0 && r.upper >= 0);
  const worst = program.sense === "min" ? Infinity : -Infinity;
  return isFeasible
    ? { status: "optimal", objective: 0, bound: 0, values: [], duals: program.rows.map(() => 0) }
    : { status: "infeasible", objective: worst, bound: worst, values: [], duals: [] };
}
