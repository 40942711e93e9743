import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import {
  allowedPressure,
  cohesionFromCompression,
  netBearingCapacity,
  squareBearingCapacity,
  stripBearingCapacity,
} from "./bearing-capacity.ts";
import {
  helixArea,
  helixDepth,
  leastHelixDepth,
  pilePull,
  screwPileAllowed,
  screwPileCapacity,
} from "./screw-pile.ts";
import { bearingLength, footLoad, footPressure } from "./foot-pressure.ts";

export {
  allowedPressure,
  bearingLength,
  cohesionFromCompression,
  footLoad,
  footPressure,
  helixArea,
  helixDepth,
  leastHelixDepth,
  netBearingCapacity,
  pilePull,
  screwPileAllowed,
  screwPileCapacity,
  squareBearingCapacity,
  stripBearingCapacity,
};

export const groundFormulas: readonly AnyFormula[] = [
  allowedPressure,
  bearingLength,
  cohesionFromCompression,
  footLoad,
  footPressure,
  helixArea,
  helixDepth,
  leastHelixDepth,
  netBearingCapacity,
  pilePull,
  screwPileAllowed,
  screwPileCapacity,
  squareBearingCapacity,
  stripBearingCapacity,
];

/** Every calculation of this topic, for the registry. */
export const groundCalculations: readonly Calculation[] = groundFormulas.map(formulaCalculation);
