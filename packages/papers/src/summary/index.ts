export { summary } from "./summary.ts";
