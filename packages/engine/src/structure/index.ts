import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import { boardFeet } from "./board-feet.ts";
import { densityAtMoisture, densityOfWetWood, gravityFromDensity } from "./density.ts";
import { strandSag, strandStress, strandTension, wireArea } from "./mesh-strand.ts";
import { structureMethods } from "./methods.ts";
import { equalPairMoment, equalPairReaction, unequalPairMoment } from "./moving-pair.ts";
import { rectangleArea, rectangleInertia, rectangleSectionModulus } from "./section.ts";
import {
  midspanPointDeflection,
  midspanPointMoment,
  overhangMoment,
  patchMoment,
  uniformDeflection,
  uniformMoment,
  uniformShear,
  uniformShearDeflection,
} from "./simple-span.ts";
import { slackStrandFormulas } from "./slack-strand.ts";
import { weightOf } from "./weight.ts";

export {
  boardFeet,
  densityAtMoisture,
  densityOfWetWood,
  equalPairMoment,
  equalPairReaction,
  gravityFromDensity,
  midspanPointDeflection,
  midspanPointMoment,
  overhangMoment,
  patchMoment,
  rectangleArea,
  rectangleInertia,
  rectangleSectionModulus,
  strandSag,
  strandStress,
  strandTension,
  unequalPairMoment,
  uniformDeflection,
  uniformMoment,
  uniformShear,
  uniformShearDeflection,
  weightOf,
  wireArea,
};
export {
  largestJointReaction,
  largestMoment,
  largestReaction,
  trainMoment,
  type Extreme,
  type Train,
  type TrainLoad,
} from "./moving-train.ts";
export { largestDeflection, trainDeflection } from "./moving-deflection.ts";
export { leverShares, worstShare, type AcrossLoads, type WorstShare } from "./lever-rule.ts";
export {
  loadedStrand,
  pullStress,
  pulledLength,
  slackLength,
  type LoadedStrand,
  type Strand,
} from "./slack-strand.ts";
export { recordTrain } from "./methods.ts";

export const structureFormulas: readonly AnyFormula[] = [
  boardFeet,
  densityAtMoisture,
  densityOfWetWood,
  equalPairMoment,
  equalPairReaction,
  gravityFromDensity,
  midspanPointDeflection,
  midspanPointMoment,
  overhangMoment,
  patchMoment,
  rectangleArea,
  rectangleInertia,
  rectangleSectionModulus,
  strandSag,
  strandStress,
  strandTension,
  unequalPairMoment,
  uniformDeflection,
  uniformMoment,
  uniformShear,
  uniformShearDeflection,
  weightOf,
  wireArea,
  ...slackStrandFormulas,
];

/** Every calculation of this topic, for the registry. */
export const structureCalculations: readonly Calculation[] = [
  ...structureFormulas.map(formulaCalculation),
  ...structureMethods,
];
