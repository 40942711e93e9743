import type { AnyFormula } from "../formula/index.ts";
import {
  allowedPressure,
  cohesionFromCompression,
  netBearingCapacity,
  squareBearingCapacity,
  stripBearingCapacity,
} from "./bearing-capacity.ts";
import {
  bearingSafety,
  buoyantWeight,
  leastUnmeasured,
  oneDaySafety,
  punchingCapacity,
  roundBearingCapacity,
  stripPunching,
} from "./bearing-modes.ts";
import { effectiveCircle, effectiveCircleLength } from "./contact.ts";
import { edgeInCore, edgeLifted, edgeRound } from "./edge-pressure.ts";
import { walkingFootBreadth, walkingHigh, walkingLow } from "./foot-beside.ts";
import { bearingLength, footLoad, footPressure } from "./foot-pressure.ts";
import { movementBeside, radiusOfArea } from "./plot-movement.ts";
import {
  bjerrumFactor,
  coneStrength,
  overburden,
  peatVaneFactor,
  peatVaneHigh,
  peatVaneLow,
  vaneStrength,
} from "./reading-corrections.ts";
import {
  helixArea,
  helixDepth,
  leastHelixDepth,
  pilePull,
  screwPileAllowed,
  screwPileCapacity,
} from "./screw-pile.ts";
import { creepSettlement, primarySettlement, spreadStress } from "./settlement.ts";
import { pressureOfFoot } from "./several-feet.ts";
import {
  hydraulicDiameter,
  muskegPressure,
  muskegSinkage,
  pressureAtSinkage,
  sinkageModulus,
  sinkageUnderPressure,
} from "./sinkage.ts";
import {
  correlationLength,
  influenceWidths,
  modelSpread,
  priorFreedom,
  priorSpread,
  scatterShare,
} from "./strength-settings.ts";

import { bandCapacity, bandFreedom, bandLow } from "./strength-formulas.ts";

export const groundFormulas: readonly AnyFormula[] = [
  bandCapacity,
  bandFreedom,
  bandLow,
  allowedPressure,
  bearingLength,
  bearingSafety,
  bjerrumFactor,
  buoyantWeight,
  cohesionFromCompression,
  coneStrength,
  correlationLength,
  creepSettlement,
  edgeInCore,
  edgeLifted,
  edgeRound,
  effectiveCircle,
  effectiveCircleLength,
  footLoad,
  footPressure,
  helixArea,
  helixDepth,
  hydraulicDiameter,
  influenceWidths,
  leastHelixDepth,
  leastUnmeasured,
  modelSpread,
  movementBeside,
  muskegPressure,
  muskegSinkage,
  netBearingCapacity,
  oneDaySafety,
  overburden,
  peatVaneFactor,
  peatVaneHigh,
  peatVaneLow,
  pilePull,
  pressureAtSinkage,
  pressureOfFoot,
  primarySettlement,
  priorFreedom,
  priorSpread,
  punchingCapacity,
  radiusOfArea,
  roundBearingCapacity,
  scatterShare,
  screwPileAllowed,
  screwPileCapacity,
  sinkageModulus,
  sinkageUnderPressure,
  spreadStress,
  squareBearingCapacity,
  stripBearingCapacity,
  stripPunching,
  vaneStrength,
  walkingFootBreadth,
  walkingHigh,
  walkingLow,
];
