export type * from "./types.ts";
export { coveredTime, isoMinute, makeSeries, unturned, type Gap, type Series } from "./series.ts";
export { hashSeries } from "./hash-series.ts";
export { halfCosine } from "./half-cosine.ts";
export { coversYear, dryWindows, spells, wetTime, type Spell, type WetTime } from "./wet-time.ts";
export {
  backBefore,
  dryDays,
  MOST_DAYS,
  type DryWindow,
  type StationDay,
  type StationDays,
  type StationGround,
} from "./dry-days.ts";
export { residualsOf, type Residuals } from "./residuals.ts";
export { wetShares } from "./wet-shares.ts";
export { turningPoints, type TurningPoint } from "./turning-points.ts";
export { meanLevels, type MeanLevels } from "./mean-levels.ts";
export {
  diurnalTideLevel,
  greatRange,
  highFromRange,
  highInequality,
  lowFromRange,
  lowInequality,
  meanRange,
  meanTideLevel,
  sineLevel,
} from "./tide-relations.ts";
export { levelsFromStation, type LevelStation, type StationLevel } from "./station-levels.ts";
export { levelFindings, type LevelFinding } from "./level-findings.ts";
export {
  wetness,
  type JointWetness,
  type LowestGround,
  type WaterResults,
  type WetShare,
  type WetnessInput,
} from "./wetness.ts";
export { deckBelow, deckUnder, highLevels, type DeckStretch, type DeckUnder } from "./deck-under.ts";
export { waterCalculations } from "./calculations.ts";
