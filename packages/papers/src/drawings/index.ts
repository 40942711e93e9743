export { sitePlan } from "./site-plan.ts";
export { crossSection } from "./cross-section.ts";
export { linePicture } from "./line-picture.ts";
export { longSection } from "./long-section.ts";
export { partSheets } from "./part-sheets.ts";
export {
  EFFECTS,
  effectTitles,
  effectUnits,
  governingEffect,
  moduleStructure,
  peakWords,
  showSmall,
  stringerName,
  structureView,
  type Effect,
  type EffectLimit,
  type PeakWords,
  type PictureLook,
  type StructurePicture,
  type StructureView,
} from "./module-structure/index.ts";
