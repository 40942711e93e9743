import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { buoyancyFormulas } from "./buoyancy.ts";
import { buoyancyCalculations } from "./buoyancy-calculations.ts";
import { dammedLineFormulas } from "./dammed-line.ts";
import { debrisFormulas } from "./debris.ts";
import { dragFormulas } from "./drag.ts";
import { floatFormulas } from "./float.ts";
import { flowCalculations } from "./flow-calculations.ts";
import { iceFormulas } from "./ice.ts";
import { iceCalculations } from "./ice-calculation.ts";
import { impactFormulas } from "./impact.ts";
import { impactCalculations } from "./impact-calculations.ts";
import { adhesionFactor, grippingLength, stakeGirth, stakePullOut } from "./stake.ts";
import {
  buoyantUplift,
  displacedWeight,
  flotationSafety,
  holdDown,
  requiredHoldDown,
  selfWeightFactor,
} from "./uplift.ts";
import { waveFormulas } from "./wave.ts";
import { waveCalculations } from "./wave-calculation.ts";
import { waveForceFormulas } from "./wave-force.ts";
import { woodInWaterFormulas } from "./wood-in-water.ts";
import { wrackCalculations } from "./wrack-calculation.ts";

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
export {
  airDryMoisture,
  basicGravity,
  brackishWater,
  dryLumberMoisture,
  freshWater,
  moistureStates,
  saltWater,
  stateFor,
  timberDensity,
  waterDensity,
  waterloggedDensity,
  waterloggedMoisture,
  wetMoisture,
  type MoistureState,
  type Use,
  type WaterKind,
} from "./wood-in-water.ts";
export {
  buoyantForce,
  floatingOrder,
  floatLevel,
  liftCurve,
  netLift,
  UNHELD,
  volumeUnder,
  weightOfPieces,
  wettedShare,
  type Floating,
  type FloodPart,
  type Holding,
  type FloodPiece,
} from "./buoyancy.ts";
export {
  cloggedOpening,
  dragForce,
  extraDepth,
  facingArea,
  familyCoefficient,
  leastShapeFactor,
  lowerSpeed,
  meshCoefficient,
  shapeCoefficient,
  SLOW_M_S,
  upperSpeed,
  type DragTables,
} from "./drag.ts";
export {
  bodyCoefficient,
  dragOnAll,
  dragOnBody,
  type AllDrag,
  type BodyDrag,
  type Flow,
  type FlowBody,
  type FlowShape,
} from "./body-drag.ts";
export {
  dammedShare,
  headLoss,
  MOST_DAMMED,
  solidArea,
  solidUnder,
  wrackOnLine,
  type Obstacle,
  type WrackedLine,
  type WrackLoad,
} from "./dammed-line.ts";
export {
  froudeNumber,
  halfBlocked,
  isTabled,
  littleBlocked,
  littleBlockedSecond,
  mostlyBlocked,
  wrackCoefficient,
} from "./debris.ts";
export {
  bedReach,
  breakingShare,
  crestLevel,
  crestUplift,
  dispersion,
  highestWave,
  orbitalSpeed,
  surfaceReach,
  throughOrOver,
  upliftByHeight,
  waveLength,
  type DeckInWaves,
  type Wave,
} from "./wave.ts";
export {
  crestStrip,
  roundInertia,
  speedSquareSum,
  speedSum,
  squareInertia,
  waveDrag,
  waveForceMax,
  waveInertia,
  waveOnPiece,
  type PieceInWave,
  type WaveOnPiece,
} from "./wave-force.ts";
export {
  breaksFirst,
  driftRadius,
  impactEnergy,
  impactForce,
  impactTime,
  leastRope,
  leastScope,
  ropeLength,
  ropePull,
  ropeStrength,
  tether,
  type FirstBreak,
  type Link,
  type Tether,
  type Tethered,
} from "./impact.ts";
export {
  adfreezeSteel,
  adfreezeWood,
  frostHeave,
  iceBuoyancy,
  iceDensity,
  iceGrip,
  iceLift,
  iceStress,
  underFrost,
  type IceOnPost,
} from "./ice.ts";
export { iceVerdict, isDay, type IceVerdict, type Standing } from "./ice-season.ts";

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
  ...woodInWaterFormulas,
  ...buoyancyFormulas,
  ...dragFormulas,
  ...debrisFormulas,
  ...dammedLineFormulas,
  ...waveFormulas,
  ...waveForceFormulas,
  ...impactFormulas,
  ...iceFormulas,
];

/** Every calculation of this topic, for the registry. */
export const floodCalculations: readonly Calculation<CalcContext>[] = [
  ...floodFormulas.map(formulaCalculation),
  ...buoyancyCalculations,
  ...flowCalculations,
  ...wrackCalculations,
  ...waveCalculations,
  ...impactCalculations,
  ...iceCalculations,
];
