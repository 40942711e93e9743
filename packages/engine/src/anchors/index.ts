import { formulaCalculation, type AnyFormula, type Calculation } from "../formula/index.ts";
import { bromsFormulas } from "./broms.ts";
import { frostCalculations } from "./frost-calculation.ts";
import { neededCalculations } from "./needed-calculation.ts";
import { pullOutFormulas } from "./pull-out.ts";
import { sectionFormulas } from "./section.ts";
import { stakeCalculations } from "./stake-calculations.ts";
import { stakeSetFormulas } from "./stakes-needed.ts";

export {
  bendingLength,
  fixedForce,
  fixedMoment,
  freeDepth,
  freeForce,
  freeMoment,
  groundReaction,
  heldLength,
  ignoredTop,
  SHORT_FREE,
  sideStiffness,
  strengthFactor,
  woodFactor,
  SHORT_FIXED,
  stakeSlenderness,
  woodForce,
  woodMoment,
} from "./broms.ts";
export { frostOnStake, type FrostInput, type FrostResult } from "./frost-calculation.ts";
export { lateral, type Lateral, type LateralInput } from "./lateral.ts";
export {
  freshShare,
  loosenedShare,
  pressed,
  pressedStake,
  pullOut,
  rakingPair,
  setShare,
  stakeStates,
  statePullOut,
  swayStrength,
  TAPER_NOTE,
  tipResistance,
  type Stake,
  type StakeState,
} from "./pull-out.ts";
export {
  areaOf,
  facingOf,
  girthOf,
  inertiaOf,
  modulusOf,
  roundArea,
  roundGirth,
  roundInertia,
  roundModulus,
  widerOf,
  type StakeSection,
} from "./section.ts";
export {
  bendingUse,
  combinedUse,
  lateralUse,
  leastEmbedment,
  pullUse,
  stakeSet,
  stakesNeeded,
  type StakeChoice,
  type StakeDemand,
  type StakeSet,
  type StakesFound,
} from "./stakes-needed.ts";

export const anchorFormulas: readonly AnyFormula[] = [
  ...sectionFormulas,
  ...pullOutFormulas,
  ...bromsFormulas,
  ...stakeSetFormulas,
];

/** Every calculation of this topic, for the registry. */
export const anchorCalculations: readonly Calculation[] = [
  ...anchorFormulas.map(formulaCalculation),
  ...stakeCalculations,
  ...neededCalculations,
  ...frostCalculations,
];
