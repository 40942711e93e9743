import type { JsonObject, Problem, Trace } from "../formula/index.ts";
import { unitSuffix } from "../formula/index.ts";
import type { Qty, Unit } from "../units/index.ts";
import { judge, type Backwards, type CheckBase, type CheckResult } from "./types.ts";

/** Demand against capacity with the way both were found. */
export interface Verdict<U extends Unit = Unit> {
  readonly unit: U;
  readonly demand: Qty<U>;
  readonly capacity: Qty<U>;
  readonly governs: string;
  readonly working: Trace;
}

export const resultOf = (base: CheckBase, v: Verdict, backwards: Backwards): CheckResult =>
  judge(base, v.unit, v.demand, v.capacity, v.governs, v.working, backwards);

export const cannotCheck = (base: CheckBase, missing: readonly string[]): CheckResult => ({
  ...base,
  status: "cannot-check",
  missing,
});

export const notApplicable = (base: CheckBase, because: string): CheckResult => ({
  ...base,
  status: "not-applicable",
  because,
});

/** What is missing, in one line each, from the problems of a look-up. */
export const missingOf = (problems: readonly Problem[]): string[] =>
  problems.map((p) => `${p.place}: ${p.message}. ${p.mend}`);

/** A check's answer as outputs of a registered calculation: bare numbers, units in the keys. */
export function outputsOf(result: CheckResult): JsonObject {
  const { status, caution } = result;
  if (status === "cannot-check") return { status, missing: [...result.missing], caution };
  if (status === "not-applicable") return { status, because: result.because, caution };
  const suffix = unitSuffix(result.unit);
  return {
    status,
    utilisation: result.utilisation,
    [`demand${suffix}`]: result.demand,
    [`capacity${suffix}`]: result.capacity,
    governs: result.governs,
    carries: result.backwards.carries,
    change: result.backwards.change,
    from_memory: result.from_memory,
    caution,
  };
}
