import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import { floatFormulas } from "./float.ts";
import { adhesionFactor, grippingLength, stakeGirth, stakePullOut } from "./stake.ts";
import {
  buoyantUplift,
  displacedWeight,
  flotationSafety,
  holdDown,
  requiredHoldDown,
  selfWeightFactor,
} from "./uplift.ts";

export {
  adhesionFactor,
  buoyantUplift,
  displacedWeight,
  flotationSafety,
  grippingLength,
  holdDown,
  requiredHoldDown,
  selfWeightFactor,
  stakeGirth,
  stakePullOut,
};

export {
  bodyHeight,
  drawnLevel,
  floatDraught,
  gravityHeight,
  heelSlope,
  lowFreeboard,
  metacentreHeight,
  waterplaneInertia,
} from "./float.ts";

export const floodFormulas: readonly AnyFormula[] = [
  ...floatFormulas,
  adhesionFactor,
  buoyantUplift,
  displacedWeight,
  flotationSafety,
  grippingLength,
  holdDown,
  requiredHoldDown,
  selfWeightFactor,
  stakeGirth,
  stakePullOut,
];

/** Every calculation of this topic, for the registry. */
export const floodCalculations: readonly Calculation[] = floodFormulas.map(formulaCalculation);
