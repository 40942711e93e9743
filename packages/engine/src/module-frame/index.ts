import { formulaCalculation, type Calculation } from "../formula/index.ts";
import { grillageFormulas } from "../grillage/index.ts";
import { moduleEnvelope } from "./envelope-method.ts";

export { frameModel, type Effects, type FrameModel } from "./influence.ts";
export { peaksOf, type Peak, type Peaked, type Peaks } from "./peaks.ts";
export { moduleRests, platformRests, rectangleStiffness } from "./stiffness.ts";
export { runner, standAt, type Runner, type Standing } from "./stand.ts";
export type {
  AcrossPart,
  AcrossPlace,
  CrossRow,
  FrameCase,
  FrameLoad,
  FrameRecipe,
  FrameState,
  LoadFactors,
  MemberStiffness,
  Placement,
  Rest,
} from "./recipe.ts";

/** Every calculation of this topic, for the registry. */
export const moduleFrameCalculations: readonly Calculation[] = [
  ...grillageFormulas.map(formulaCalculation),
  moduleEnvelope,
];
