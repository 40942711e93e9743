export { parseJson, JSON_DEPTH } from "./parse-json.ts";
export { jsonBytes, roundTo } from "./write-json.ts";
