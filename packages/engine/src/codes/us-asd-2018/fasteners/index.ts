import type { AnyFormula } from "../../../formula/index.ts";
import { bearingAcross, bearingAlong, bearingAslant, bearingOfSteel } from "./bearing.ts";
import { nailsBothWays, screwsBothWays } from "./combined.ts";
import { connectionDuration, lateralFactors, withdrawalFactors } from "./factors.ts";
import { groupFactor, groupTerm, slipModulus } from "./group.ts";
import { adjustedLateral, yieldFromTensile } from "./lateral.ts";
import {
  bearingLength,
  leastLagPenetration,
  leastPenetration,
  penetration,
  shortShare,
  tipInside,
  toeLength,
  toePenetration,
  toeSide,
  usualTip,
} from "./reach-formulas.ts";
import { angleTerm, threadReduction, thickReductions } from "./reduction.ts";
import { adjustedPullThrough, adjustedWithdrawal, heldLength } from "./withdrawal.ts";
import { lagWithdrawal, pullThroughDeep, pullThroughThin, withdrawalRates } from "./withdrawal-rates.ts";

export { usFasteners } from "./rules.ts";
export { usLateral } from "./lateral.ts";

export const usFastenerFormulas: readonly AnyFormula[] = [
  leastPenetration,
  leastLagPenetration,
  penetration,
  toeLength,
  toePenetration,
  toeSide,
  usualTip,
  tipInside,
  bearingLength,
  shortShare,
  bearingAlong,
  bearingAcross,
  bearingAslant,
  bearingOfSteel,
  angleTerm,
  ...Object.values(thickReductions),
  threadReduction,
  ...Object.values(lateralFactors),
  ...Object.values(withdrawalFactors),
  connectionDuration,
  ...Object.values(slipModulus),
  groupTerm,
  groupFactor,
  yieldFromTensile,
  adjustedLateral,
  ...Object.values(withdrawalRates),
  lagWithdrawal,
  pullThroughThin,
  pullThroughDeep,
  heldLength,
  adjustedWithdrawal,
  adjustedPullThrough,
  nailsBothWays,
  screwsBothWays,
];
