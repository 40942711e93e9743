export { freshPlanFiles } from "./fresh-plan-files.ts";
