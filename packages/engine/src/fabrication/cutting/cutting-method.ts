import {
  defineFormula,
  defineMethod,
  finish,
  formulaCalculation,
  inputProblem,
  type Calculation,
  type JsonObject,
  type Source,
  type Trace,
} from "../../formula/index.ts";
import { qty } from "../../units/index.ts";
import type { Solver } from "../solver.ts";
import type { CuttingPlan, CuttingProblem } from "../types.ts";
import { tryCutting } from "./cutting-plan.ts";

const source: Source = {
  id: "causey-cutting",
  title: "Decision of this project: how a cutting plan is judged",
  status: "project",
};

export const cuttingGap = defineFormula(
  {
    id: "cutting.gap",
    title: "How far a cutting plan can be from the cheapest",
    symbol: "g",
    unit: "1",
    text: "(C - B) / C",
    inputs: { C: "money", B: "money" },
    validity:
      "Cost C above zero and no less than the bound B. The true gap is smaller: the cheapest plan lies between.",
    source,
  },
  ({ C, B }) => (C - B) / C,
);

export const cuttingWaste = defineFormula(
  {
    id: "cutting.waste",
    title: "Share of the bought length that becomes no piece",
    symbol: "w",
    unit: "1",
    text: "1 - P / S",
    inputs: { P: "m", S: "m" },
    validity:
      "Length of all pieces P no more than that of all sticks S, S above zero. Saw cuts count as waste.",
    source,
  },
  ({ P, S }) => 1 - P / S,
);

/** Gap and waste of a plan, as working. Nothing to show for a plan without sticks or without cost. */
function showWorking(problem: CuttingProblem, plan: CuttingPlan, trace: Trace): void {
  const metres = (rows: CuttingPlan["stock_used"]): number =>
    rows.reduce((sum, r) => sum + r.length_mm * r.count, 0) / 1000;
  if (plan.cost > 0) cuttingGap({ C: qty(plan.cost, "money"), B: qty(plan.bound, "money") }, trace);
  if (plan.stock_used.length > 0)
    cuttingWaste({ P: qty(metres(problem.pieces), "m"), S: qty(metres(plan.stock_used), "m") }, trace);
}

/** `cutting.plan`: the cutting planner for the shell and the interface; its context brings the solver. */
export const cuttingPlan: Calculation<{ readonly solver?: Solver }> = defineMethod<{
  readonly solver?: Solver;
}>(
  {
    id: "cutting.plan",
    title: "Cutting plan: pieces from priced stock lengths at the least cost",
    inputs: [
      { key: "kerf_mm", title: "Width of the saw cut, 0 to 100", type: "number" },
      { key: "stock", title: "Stock: length_mm, price, available (if limited)", type: "array" },
      { key: "pieces", title: "Pieces: length_mm, count", type: "array" },
    ],
    outputs: [
      { key: "cost", title: "Cost of the sticks, in the currency of the prices", type: "number" },
      { key: "bound", title: "No plan costs less than this", type: "number" },
      { key: "stock_used", title: "Sticks to buy: length_mm, count", type: "array" },
      {
        key: "patterns",
        title: "How sticks are sawn: stock_mm, times, cuts (length_mm, count), offcut_mm",
        type: "array",
      },
      { key: "proven", title: "The cost is the least possible", type: "boolean" },
    ],
    validity:
      "Lengths 1 to 100,000 mm, read to a millionth of a millimetre (finer digits are dropped) and planned exactly " +
      "where they share a step coarse enough; counts are never changed. n pieces fit a stick when the sum of " +
      "(length + kerf) is no more than the stick + kerf. No allowance for crooked or split ends. " +
      "bound <= cheapest plan <= cost; the search stops at a gap of 0.025 %.",
    sources: [
      {
        id: "gilmore-gomory-1961",
        title:
          "Gilmore and Gomory (1961), A linear programming approach to the cutting-stock problem, Operations Research 9(6)",
        at: "doi 10.1287/opre.9.6.849",
        status: "seen",
      },
      {
        id: "farley-1990",
        title:
          "Farley (1990), A note on bounding a class of linear programming problems, Operations Research 38(5)",
        at: "doi 10.1287/opre.38.5.922",
        status: "seen",
      },
      { id: "highs", title: "HiGHS 1.15, linear and whole-number programs (MIT licence)", status: "seen" },
    ],
  },
  (input, { solver }, trace) => {
    if (!solver)
      return {
        problems: [
          inputProblem(
            "solver",
            undefined,
            "this method needs a solver and none was given",
            "Run it from the shell, the page or the server.",
          ),
        ],
      };
    const problem = readProblem(input);
    const outcome = finish(tryCutting(problem, solver, {}, "number"));
    if (!outcome.ok) return { problems: outcome.problems };
    showWorking(problem, outcome.plan, trace);
    return toJson(outcome.plan);
  },
);

const toJson = ({ cost, bound, stock_used, patterns, proven }: CuttingPlan): JsonObject => ({
  cost,
  bound,
  stock_used: stock_used.map((used) => ({ ...used })),
  patterns: patterns.map((p) => ({ ...p, cuts: p.cuts.map((cut) => ({ ...cut })) })),
  proven,
});

/** The rows are checked where they are planned: every fault of every row is reported there. */
const readProblem = (input: JsonObject): CuttingProblem => ({
  kerf_mm: input["kerf_mm"] as number,
  stock: input["stock"] as unknown as CuttingProblem["stock"],
  pieces: input["pieces"] as unknown as CuttingProblem["pieces"],
});

export const fabricationCalculations: readonly Calculation<{ readonly solver?: Solver }>[] = [
  cuttingPlan,
  formulaCalculation(cuttingGap),
  formulaCalculation(cuttingWaste),
];
