import { formulaCalculation, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/context.ts";
import { kitFigureFormulas } from "./formulas.ts";
import { figuresMethod } from "./method.ts";

export type * from "./types.ts";
export { kitFigures } from "./kit-figures.ts";
export {
  costPerFoot,
  costPerMetre,
  kitFigureFormulas,
  massPerCarrier,
  shaftContact,
  steepestRise,
} from "./formulas.ts";

/** Registered calculations of a kit's figures. */
export const kitFigureCalculations: readonly Calculation<CalcContext>[] = [
  ...kitFigureFormulas.map(formulaCalculation),
  figuresMethod,
];
