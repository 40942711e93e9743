import type { AnyFormula } from "../../formula/index.ts";
import { bearingFactors, bearingWithFactor, effectiveContact } from "./bearing.ts";
import { bendingStress, designLineLoad } from "./bending-method.ts";
import { deadCreep, liveCreep } from "./creep.ts";
import { durationConstants } from "./duration.ts";
import {
  crackFactor,
  depthFactor,
  gammaM,
  incisingFactors,
  lastingLive,
  noFactor,
  sharingFactor,
} from "./factors.ts";
import { notchFactor, notchedShearStrength } from "./notch.ts";
import {
  columnFactor,
  columnHelp,
  columnSlenderness,
  criticalBendingStress,
  effectiveLengthMiddle,
  effectiveLengthTop,
  lateralBucklingFactor,
  lengthShares,
  relativeSlenderness,
  stockyPost,
} from "./stability.ts";
import {
  bearingDesign,
  bendingDesign,
  compressionDesign,
  shearDesign,
  stiffness,
} from "./strength-formulas.ts";

/** Every formula and factor of this edition. */
export const ec52004Formulas: readonly AnyFormula[] = [
  ...durationConstants,
  gammaM,
  depthFactor,
  sharingFactor,
  crackFactor,
  noFactor,
  ...Object.values(incisingFactors),
  lastingLive,
  bendingDesign,
  shearDesign,
  bearingDesign,
  compressionDesign,
  stiffness,
  ...Object.values(lengthShares),
  effectiveLengthTop,
  effectiveLengthMiddle,
  criticalBendingStress,
  relativeSlenderness,
  lateralBucklingFactor,
  columnSlenderness,
  columnHelp,
  columnFactor,
  stockyPost,
  ...Object.values(bearingFactors),
  bearingWithFactor,
  effectiveContact,
  notchFactor,
  notchedShearStrength,
  deadCreep,
  liveCreep,
  designLineLoad,
  bendingStress,
];
