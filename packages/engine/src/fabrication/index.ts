export type * from "./types.ts";
export type * from "./solver.ts";
export { checkCutting } from "./cutting/check-cutting.ts";
export { cuttingGap, cuttingPlan, cuttingWaste, fabricationCalculations } from "./cutting/cutting-method.ts";
export { planWaste } from "./cutting/plan-waste.ts";
export { planCutting, tryCutting, type CuttingOptions, type CuttingOutcome } from "./cutting/cutting-plan.ts";
