export { PLAN_SCHEMA } from "./document.ts";
export type * from "./document.ts";
export type * from "./edit.ts";
export { RESULTS_SCHEMA } from "./results.ts";
export type * from "./results.ts";
export type * from "./strip.ts";
