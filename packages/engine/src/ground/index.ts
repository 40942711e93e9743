import { formulaCalculation, type Calculation } from "../formula/index.ts";
import { bandCalculation } from "./band-calculation.ts";
import { bearingCalculation } from "./bearing-calculation.ts";
import { footBesideCalculation, plotMovementCalculation } from "./beside-calculations.ts";
import { groundFormulas } from "./formulas.ts";
import { readingCalculation } from "./reading-calculation.ts";
import { settlementCalculation } from "./settlement-calculation.ts";
import { plateCalculation, sinkageCalculation } from "./sinkage-calculations.ts";
import type { GroundContext } from "./types.ts";

export { groundFormulas };
export {
  allowedPressure,
  cohesionFromCompression,
  netBearingCapacity,
  squareBearingCapacity,
  stripBearingCapacity,
} from "./bearing-capacity.ts";
export {
  bearingSafety,
  oneDaySafety,
  leastUnmeasured,
  roundBearingCapacity,
  punchingCapacity,
  stripPunching,
  buoyantWeight,
  allowedOf,
  bearingModes,
  capacityFactor,
  skemptonCapacity,
  type BearingMode,
  type Capacity,
  type GroundBelow,
} from "./bearing-modes.ts";
export {
  effectiveCircle,
  effectiveCircleLength,
  bearingPart,
  type Bearing,
  type Contact,
  type ContactShape,
} from "./contact.ts";
export {
  correctReading,
  readingProblems,
  groundMaterials,
  instruments,
  readingUnits,
  type CorrectedReading,
  type GroundMaterial,
  type Instrument,
  type RawReading,
  type ReadingOutcome,
  type ReadingUnit,
} from "./corrected-reading.ts";
export { edgeInCore, edgeLifted, edgeRound, edgePressure } from "./edge-pressure.ts";
export { walkingLow, walkingHigh, walkingFootBreadth, footBeside, type FootBeside } from "./foot-beside.ts";
export { bearingLength, footLoad, footPressure } from "./foot-pressure.ts";
export { fitPlates, plateFault, type Fitted, type PlateFit, type PlatePoint } from "./plate-test.ts";
export { movementBeside, radiusOfArea, plotMovement, type PlotMovement } from "./plot-movement.ts";
export {
  peatVaneFactor,
  peatVaneLow,
  peatVaneHigh,
  bjerrumFactor,
  vaneStrength,
  overburden,
  coneStrength,
  coneFactors,
} from "./reading-corrections.ts";
export { judge as judgeReading, readingWorth, type Before, type ReadingWorth } from "./reading-worth.ts";
export {
  helixArea,
  helixDepth,
  leastHelixDepth,
  pilePull,
  screwPileAllowed,
  screwPileCapacity,
} from "./screw-pile.ts";
export {
  primarySettlement,
  creepSettlement,
  spreadStress,
  settlementOf,
  type Settlement,
  type SoilLayer,
} from "./settlement.ts";
export { pressureOfFoot, shareBetweenFeet, type FeetLoads, type FootPlace } from "./several-feet.ts";
export {
  sinkageModulus,
  pressureAtSinkage,
  sinkageUnderPressure,
  muskegPressure,
  muskegSinkage,
  hydraulicDiameter,
  bekkerGround,
  modulusFor,
  pressureOf,
  RIGID_PLASTIC_N,
  sinkageOf,
  USE_BEARING_CAPACITY,
  type BekkerGround,
  type MuskegGround,
} from "./sinkage.ts";
export {
  chanceOver,
  lineStrength,
  logSpreadAt,
  MISSING_LINE_STRENGTH,
  readingsAround,
  type Band,
  type BandJoint,
  type JointStrength,
  type LineStrength,
  type ReadingsAround,
} from "./strength-band.ts";
export { chanceBelow, halfWidth, halfWidths, type LogSpread } from "./strength-chance.ts";
export { readingsBelow, type LineReading, type ReadingsBelow } from "./strength-depth.ts";
export { strengthField, type LinePlace, type StrengthField } from "./strength-field.ts";
export {
  influenceWidths,
  priorSpread,
  priorFreedom,
  correlationLength,
  scatterShare,
  modelSpread,
  kernels,
  likeness,
  usualSettings,
  type Kernel,
  type StrengthSettings,
} from "./strength-settings.ts";
export { bandCapacity, bandFreedom, bandLow } from "./strength-formulas.ts";
export { jointsTogether, type Together } from "./strength-together.ts";
export { bandMethod, bekker, consolidation, rigidFootTilt, rigidPunch, walkingPressure } from "./sources.ts";
export { footTilt, type Tilt } from "./tilt.ts";
export {
  type CompressibleSoil,
  type GroundContext,
  type GroundTables,
  type MuskegSinkage,
  type TerrainSinkage,
} from "./types.ts";

/** Every calculation of this topic, for the registry. */
export const groundCalculations: readonly Calculation<GroundContext>[] = [
  ...groundFormulas.map(formulaCalculation),
  bearingCalculation,
  sinkageCalculation,
  plateCalculation,
  settlementCalculation,
  readingCalculation,
  bandCalculation,
  footBesideCalculation,
  plotMovementCalculation,
];
