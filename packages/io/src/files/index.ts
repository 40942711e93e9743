export { FILE_LIMITS, type PlanFiles } from "./plan-files.ts";
export { fileNameFault } from "./file-name.ts";
export { decodeText } from "./decode-text.ts";
