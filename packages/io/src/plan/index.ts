export {
  PLACES_FILE,
  PLAN_FILE,
  ZONES_FILE,
  readPlan,
  type ReadPlan,
  type ReadPlanOptions,
} from "./read-plan.ts";
export { namedFiles } from "./named-files.ts";
export { writePlan } from "./write-plan.ts";
export { planFileSchema, type PlanFile } from "./plan-schema.ts";
export { kitSchema, type KitChoice } from "./kit-schema.ts";
export { MIGRATIONS, migrate, type Migration } from "./migrations.ts";
export { planJsonSchema } from "./json-schema.ts";
export { upgradePlan } from "./stored-plan.ts";
