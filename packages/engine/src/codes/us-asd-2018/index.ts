export { usAsd2018 } from "./code.ts";
export { usAsd2018Formulas } from "./formulas.ts";
export { nds, supplement } from "./sources.ts";
export { lateralValue, type Dowel } from "./lateral.ts";
export { dowelBearingStrength, reductionTerm } from "./dowel.ts";
export { durationFactors } from "./duration.ts";
export {
  beamSlenderness,
  beamStabilityFactor,
  columnStabilityFactor,
  criticalBendingStress,
  effectiveLength,
  stressRatio,
} from "./stability.ts";
export { usFasteners } from "./fasteners/index.ts";
