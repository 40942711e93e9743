export { sitePlan } from "./site-plan.ts";
export { crossSection } from "./cross-section.ts";
export { linePicture } from "./line-picture.ts";
export { longSection } from "./long-section.ts";
export { partSheets } from "./part-sheets.ts";
