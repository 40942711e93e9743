export type * from "./types.ts";
export { costOf, type MoneyTerms } from "./cost-of.ts";
export { costFormulas, hoursAtRate, shareOfAmount } from "./money-formulas.ts";
export { partCosts, type PartCosts } from "./part-costs.ts";
export { costCalculations } from "./calculations.ts";
