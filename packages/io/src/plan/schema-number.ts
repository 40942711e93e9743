import type { Plan, Results } from "@causey/engine/plan";

/**
 * Schema numbers of the engine's documents. Taken as types, which the compiler holds to the engine's constants: a page
 * that only reads files need not load the whole pipeline.
 */
export const PLAN_SCHEMA: Plan["schema"] = 3;
export const RESULTS_SCHEMA: Results["schema"] = 1;
