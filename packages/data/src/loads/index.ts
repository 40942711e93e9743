export { loadRules } from "./load-rules.ts";
