export { resultFiles } from "./result-files.ts";
export { resultsSchema } from "./results-schema.ts";
export { resultsJsonSchema } from "./json-schema.ts";
export { branchLines, type BranchLine } from "./branch-lines.ts";
export { layoutGeoJson } from "./layout-geojson.ts";
export { withoutHidden } from "./without-hidden.ts";
