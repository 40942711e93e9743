export { moduleStructure, type PictureLook, type StructurePicture } from "./module-structure.ts";
export {
  EFFECTS,
  effectTitles,
  effectUnits,
  governingEffect,
  peakWords,
  showSmall,
  stringerName,
  structureView,
  type Effect,
  type EffectLimit,
  type PeakWords,
  type StructureView,
} from "./view.ts";
