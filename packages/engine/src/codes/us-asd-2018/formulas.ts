import type { AnyFormula } from "../../formula/index.ts";
import {
  adjustedBearing,
  adjustedBending,
  adjustedCompression,
  adjustedShear,
  adjustedStiffness,
  bearingAreaFactor,
  bearingAtContact,
  bendingBeforeStability,
} from "./adjusted-formulas.ts";
import { creepFactors } from "./creep.ts";
import {
  dowelBearingStrength,
  reductionTerm,
  yieldModeII,
  yieldModeIIIm,
  yieldModeIIIs,
  yieldModeIm,
  yieldModeIs,
  yieldModeIV,
} from "./dowel.ts";
import { durationFactors } from "./duration.ts";
import { usFastenerFormulas } from "./fasteners/index.ts";
import { twoPlanes } from "./lateral.ts";
import { deepestEndNotch, notchedShearStrength } from "./notch.ts";
import {
  incisingFactors,
  noFactor,
  repetitiveFactor,
  thinBoardFactor,
  wetFactors,
  wetTriggers,
} from "./service-factors.ts";
import { sizeFactorConstants } from "./size-factors.ts";
import {
  beamSlenderness,
  beamStabilityFactor,
  columnStabilityFactor,
  criticalBendingStress,
  criticalColumnStress,
  effectiveLengths,
  slendernessLimit,
  stressRatio,
} from "./stability.ts";

/** Every formula and factor of this edition. */
export const usAsd2018Formulas: readonly AnyFormula[] = [
  ...Object.values(durationFactors),
  ...Object.values(wetFactors),
  ...Object.values(wetTriggers),
  ...Object.values(incisingFactors),
  repetitiveFactor,
  noFactor,
  thinBoardFactor,
  ...sizeFactorConstants,
  ...Object.values(effectiveLengths),
  slendernessLimit,
  beamSlenderness,
  criticalBendingStress,
  beamStabilityFactor,
  criticalColumnStress,
  columnStabilityFactor,
  stressRatio,
  adjustedBending,
  bendingBeforeStability,
  adjustedShear,
  adjustedBearing,
  adjustedCompression,
  adjustedStiffness,
  bearingAreaFactor,
  bearingAtContact,
  notchedShearStrength,
  deepestEndNotch,
  ...Object.values(creepFactors),
  dowelBearingStrength,
  reductionTerm,
  yieldModeIm,
  yieldModeIs,
  yieldModeII,
  yieldModeIIIm,
  yieldModeIIIs,
  yieldModeIV,
  twoPlanes,
  ...usFastenerFormulas,
];
