export { calcDesk } from "./calc-desk.ts";
export { createApp } from "./create-app.ts";
export { planFormat } from "./plan-format.ts";
export type { Access, AppOptions, CalcDesk, CalcSummary, PlanFormat, PlanReading } from "./options.ts";
