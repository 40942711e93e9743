import { budgetOf, costOf, type Budget, type Cost } from "../cost/index.ts";
import { planCutting, type CuttingPlan, type Solver } from "../fabrication/index.ts";
import type { Job, Trace } from "../formula/index.ts";
import { labourHours } from "../laying/index.ts";
import type { Layout, SpareModules } from "../layout/index.ts";
import { cuttingProblems, orderList, type Price, type Tables, type TakeOff } from "../materials/index.ts";
import type { Plan } from "./document.ts";
import { atOnce, type Stages } from "./stages.ts";

export interface MoneyInputs {
  readonly plan: Plan;
  readonly prices: readonly Price[];
  readonly tables: Tables;
  readonly layout: Layout;
  readonly spares: readonly SpareModules[];
  readonly off: TakeOff;
  /** Length along the walkway [m]. */
  readonly length_m: number;
}

type SizeCut = { readonly size: string; readonly plan: CuttingPlan };

/** A cost with the working of its hours and shares. */
export interface Priced {
  readonly cost: Cost;
  readonly working: Trace;
}
/** A budget with its working. */
export interface Budgeted {
  readonly budget: Budget;
  readonly working: Trace;
}
export interface Money {
  readonly cutting: readonly SizeCut[];
  readonly priced: Priced;
  readonly budgeted: Budgeted;
}

/** Stages "cutting", "cost" and "budget": from the take-off to what is ordered and paid, year by year. */
export function* moneyStages(inputs: MoneyInputs, solver: Solver, stages: Stages): Job<Money> {
  const { plan, prices } = inputs;
  const cutting = yield* cutAll(inputs, solver, stages);
  const priced = yield* stages.run<Priced>(
    "cost",
    3,
    [stages.keyOf("take-off"), prices, plan.saw, plan.money, plan.laying.carry_m],
    () => atOnce(() => priceAll(inputs, cutting)),
  );
  const budgeted = yield* stages.run<Budgeted>(
    "budget",
    2,
    [stages.keyOf("cost"), plan.money, plan.laying, plan.removal, plan.visits, plan.papers.date, prices],
    () => atOnce(() => budgetAll(inputs, priced.cost)),
  );
  return { cutting, priced, budgeted };
}

/** One stage a size: a change that asks for the same pieces of a size keeps its plan. */
function* cutAll(
  { off, prices, plan }: MoneyInputs,
  solver: Solver,
  stages: Stages,
): Job<readonly SizeCut[]> {
  const plans: SizeCut[] = [];
  for (const { size, problem } of cuttingProblems(off, prices, plan.saw.kerf_mm).problems) {
    const work = (): Job<CuttingPlan> => planCutting(problem, solver);
    plans.push({ size, plan: yield* stages.run<CuttingPlan>(`cutting ${size}`, 1, problem, work) });
  }
  return plans;
}

function priceAll({ off, prices, plan, length_m, tables }: MoneyInputs, cutting: readonly SizeCut[]): Priced {
  const working: Trace = [];
  const { order, unpriced } = orderList(off, cutting, prices);
  const terms = { length_m, carry_m: plan.laying.carry_m, removal_share: plan.money.removal_share };
  const labour = labourHours(terms, tables.labour, working);
  return { cost: costOf(plan, order, unpriced, labour, working), working };
}

function budgetAll({ plan, layout, spares, prices, length_m }: MoneyInputs, cost: Cost): Budgeted {
  const working: Trace = [];
  const { money, laying, removal, visits, papers } = plan;
  const budget = budgetOf(
    {
      money,
      cost,
      built: layout.parts.length + spares.reduce((sum, s) => sum + s.spares, 0),
      length_m,
      laying,
      out: removal.by,
      visits,
      prices,
      on: papers.date ?? laying.from,
    },
    working,
  );
  return { budget, working };
}
