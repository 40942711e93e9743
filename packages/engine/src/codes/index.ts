import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { adjustedValues } from "./adjusted-values.ts";
import { bendingSpan, deflectionSpan, joistLoad, shearSpan } from "./joist-formulas.ts";
import { joistSpan } from "./joist-span.ts";
import { screwLateralValue } from "./screw-lateral.ts";
import { usAsd2018Formulas } from "./us-asd-2018/index.ts";

export type {
  Combination,
  DesignCode,
  Found,
  LoadDuration,
  Member,
  ScrewCapacity,
  ScrewJoint,
  Situation,
  Strengths,
  Wanted,
} from "./contract.ts";
export { designCode, designCodes } from "./registry.ts";
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
  type Dowel,
} from "./us-asd-2018/index.ts";
export { adjustedValues, bendingSpan, deflectionSpan, joistLoad, joistSpan, screwLateralValue, shearSpan };

export const codeFormulas: readonly AnyFormula[] = [
  joistLoad,
  bendingSpan,
  shearSpan,
  deflectionSpan,
  ...usAsd2018Formulas,
];

/** Every calculation of this topic, for the registry. */
export const codeCalculations: readonly Calculation<CalcContext>[] = [
  ...codeFormulas.map(formulaCalculation),
  adjustedValues,
  joistSpan,
  screwLateralValue,
];
