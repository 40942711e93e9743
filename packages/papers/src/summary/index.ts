export { noCrossingWords } from "./crossings.ts";
export { summary } from "./summary.ts";
