import { formulaCalculation, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/context.ts";
import { budgetFormulas } from "./budget-formulas.ts";
import { costFormulas } from "./money-formulas.ts";

/** Registered calculations of money. */
export const costCalculations: readonly Calculation<CalcContext>[] = [...costFormulas, ...budgetFormulas].map(
  formulaCalculation,
);
