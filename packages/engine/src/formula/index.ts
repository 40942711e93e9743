export type { Source, SourceStatus } from "./source.ts";
export { ProblemError, type Problem } from "./problem.ts";
export {
  defineFormula,
  type AnyFormula,
  type Args,
  type Formula,
  type FormulaSpec,
  type Trace,
  type TraceStep,
} from "./formula.ts";
export { defineConstant, recordValue, type Constant, type RecordedValue } from "./constant.ts";
export { canonicalJson, hashJson } from "./hash.ts";
export {
  checkFields,
  defineMethod,
  formulaCalculation,
  inputProblem,
  shorten,
  unitSuffix,
  type CalcOutcome,
  type Calculation,
  type Field,
  type Json,
  type JsonObject,
} from "./calculation.ts";
export { finish, type Cancel, type Job, type Progress } from "./job.ts";
