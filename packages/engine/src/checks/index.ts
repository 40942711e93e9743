import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { areaLine } from "./area-load.ts";
import { barGrating, gratingStress } from "./bar-grating-method.ts";
import { strandLoad } from "./deck-mesh.ts";
import { meshStrandFormulas } from "./mesh-strand-formulas.ts";
import { meshStrand } from "./mesh-strand-method.ts";
import { peopleLift } from "./people-lift.ts";
import { peopleLiftFormulas } from "./people-lift-formulas.ts";
import { plywoodFormulas } from "./plywood-formulas.ts";
import { plywoodDeck } from "./plywood-method.ts";
import { panelFormulas } from "./panel-formulas.ts";
import { coldCheckFormulas } from "./cold-formulas.ts";
import { floodCheckFormulas } from "./flood-formulas.ts";
import { checkFormulas } from "./formulas.ts";
import { fasteningFormulas } from "./fastening-formulas.ts";
import { frameFormulas } from "./frame-formulas.ts";
import { frameCalculations } from "./frame-calculations.ts";
import { feelFormulas } from "./feel-formulas.ts";
import { groundCheckCalculations } from "./ground-calculations.ts";
import { handlingFormulas } from "./handling-formulas.ts";
import { kindCalculations } from "./kind-calculations.ts";
import { liftingFormulas } from "./niosh.ts";
import { pieceCalculations } from "./piece-calculations.ts";
import { checkConstants } from "./rules.ts";
import { soilConstants } from "./soil-rules.ts";
import { seatFormulas } from "./seat-formulas.ts";
import { stringerCalculations } from "./stringer-calculations.ts";
import { supportCalculations } from "./support-calculations.ts";
import { allStakes, displacedVolume, stakeShare } from "./uplift.ts";
import { usedTimberFormulas } from "./used-timber.ts";

export {
  judge,
  type Backwards,
  type CheckBase,
  type CheckKind,
  type CheckResult,
  type RuleCheckKind,
} from "./types.ts";
export { prove, runChecks, type Proof } from "./run-checks.ts";
export {
  soilWorth,
  type SoilJointFigures,
  type SoilLine,
  type SoilProof,
  type SoilWorth,
} from "./soil-proof.ts";
export type { DrawnLines, DrawnLoad, DrawnPeak, FrameDrawing } from "./frame-drawing.ts";
export type { FloodFigures } from "./water-checks.ts";
export type { AnchorFigure } from "./anchor-checks.ts";
export { codeFitProblems } from "./code-fit.ts";
export { RULE_KINDS } from "./rule-checks.ts";
export { ruleCalculations } from "./rule-calculations.ts";
export { engineerFlags, type EngineerFlag } from "./rule-engineer.ts";
export type { CheckContext, ChecksInput, GradedLumber, MassModel, PartMass, UsedState } from "./input.ts";
export { checkStringer, type FrameLabel } from "./stringer-check.ts";
export { deeperSizes, type Frame } from "./frame.ts";
export { stouterSizes } from "./piece.ts";
export { proofProblems } from "./rule-loads.ts";
export { firstFrequency, lastingSag } from "./feel-formulas.ts";
export { casesOf, type LoadCase, type WalkDemand } from "./walk-demand.ts";
export { fullMass } from "./cart-mass.ts";
export { carrierLimit, massOf, type LiftState } from "./lifting.ts";
export { barInertia, barModulus, panelMoment, panelStiffness } from "./panel-strength.ts";
export { checkDeckPanel, type PanelSetup } from "./deck-panel.ts";
export { strengthAt, type GroundStrength } from "./ground-strength.ts";
export {
  distanceMultiplier,
  horizontalMultiplier,
  loadConstant,
  recommendedWeightLimit,
  verticalMultiplier,
} from "./niosh.ts";

export const checkFormulaList: readonly AnyFormula[] = [
  ...checkConstants,
  ...soilConstants,
  ...checkFormulas,
  ...frameFormulas,
  ...fasteningFormulas,
  ...seatFormulas,
  ...liftingFormulas,
  ...peopleLiftFormulas,
  strandLoad,
  ...meshStrandFormulas,
  ...panelFormulas,
  gratingStress,
  ...plywoodFormulas,
  stakeShare,
  displacedVolume,
  allStakes,
  areaLine,
  ...feelFormulas,
  ...handlingFormulas,
  ...usedTimberFormulas,
  ...floodCheckFormulas,
  ...coldCheckFormulas,
];

/** Every calculation of this topic, for the registry. */
export const checkCalculations: readonly Calculation<CalcContext>[] = [
  ...checkFormulaList.map(formulaCalculation),
  ...stringerCalculations,
  ...pieceCalculations,
  ...frameCalculations,
  ...groundCheckCalculations,
  ...kindCalculations,
  ...supportCalculations,
  meshStrand,
  barGrating,
  plywoodDeck,
  peopleLift,
];
