export { readWholePlan } from "./read-whole-plan.ts";
export { Deriver, type DeriveAnswer, type DeriveHooks, type DeriveRequest } from "./derive-in-page.ts";
