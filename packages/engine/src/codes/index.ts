import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { adjustedValues } from "./adjusted-values.ts";
import { columnCapacity, timberColumn } from "./column.ts";
import { combinedForce, combinedMoment, combinedPressure } from "./combined.ts";
import { ec52004Formulas, ec5Bending, ec5LateralBuckling } from "./ec5-2004/index.ts";
import { ec5FastenerFormulas } from "./ec5-2004/fasteners/index.ts";
import { fastenerCalculations } from "./fastener-calculations.ts";
import { bendingSpan, deflectionSpan, joistLoad, shearSpan } from "./joist-formulas.ts";
import { joistSpan } from "./joist-span.ts";
import { screwLateralValue } from "./screw-lateral.ts";
import { usAsd2018Formulas } from "./us-asd-2018/index.ts";

export type {
  Bearing,
  Clause,
  Combination,
  Contact,
  Creep,
  DeflectionLimit,
  DesignCode,
  EndNotch,
  Found,
  LoadDuration,
  Member,
  Situation,
  Strengths,
  Wanted,
} from "./contract.ts";
export { clausesOf, CODE_FIELD_TITLE, designCode, designCodes } from "./registry.ts";
export { isPlain, recordFactors } from "./combined.ts";
export {
  bearingDesign,
  bendingDesign,
  compressionDesign,
  durationClass,
  ec52004,
  kdef,
  kmod,
  shearDesign,
} from "./ec5-2004/index.ts";
export type {
  CombinedUse,
  FastenerCapacity,
  FastenerJoint,
  FastenerLoads,
  FastenerRules,
  GuidanceRow,
  JointMoisture,
  SteelPlate,
  WoodPiece,
} from "./fastener-contract.ts";
export { fastenerRules } from "./fastener-registry.ts";
export { freshHole } from "./fastener-holes.ts";
export { ec5Fasteners } from "./ec5-2004/fasteners/index.ts";
export {
  beamSlenderness,
  beamStabilityFactor,
  columnStabilityFactor,
  criticalBendingStress,
  dowelBearingStrength,
  durationFactors,
  effectiveLength,
  lateralValue,
  nds,
  reductionTerm,
  stressRatio,
  supplement,
  usAsd2018,
  usFasteners,
  type Dowel,
} from "./us-asd-2018/index.ts";
export {
  adjustedValues,
  bendingSpan,
  columnCapacity,
  combinedForce,
  combinedMoment,
  combinedPressure,
  deflectionSpan,
  ec5Bending,
  ec5LateralBuckling,
  joistLoad,
  joistSpan,
  screwLateralValue,
  shearSpan,
  timberColumn,
};

export const codeFormulas: readonly AnyFormula[] = [
  joistLoad,
  bendingSpan,
  shearSpan,
  deflectionSpan,
  columnCapacity,
  combinedPressure,
  combinedMoment,
  combinedForce,
  ...usAsd2018Formulas,
  ...ec52004Formulas,
  ...ec5FastenerFormulas,
];

/** Every calculation of this topic, for the registry. */
export const codeCalculations: readonly Calculation<CalcContext>[] = [
  ...codeFormulas.map(formulaCalculation),
  adjustedValues,
  joistSpan,
  timberColumn,
  ec5Bending,
  ec5LateralBuckling,
  screwLateralValue,
  ...fastenerCalculations,
];
