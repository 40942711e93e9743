export type * from "./types.ts";
export { isoMinute, makeSeries, type Gap, type Series } from "./series.ts";
export { hashSeries } from "./hash-series.ts";
export { halfCosine } from "./half-cosine.ts";
export { dryWindows, spells, wetTime, type Spell, type WetTime } from "./wet-time.ts";
export { turningPoints, type TurningPoint } from "./turning-points.ts";
export { meanLevels, meanRange, meanTideLevel, type MeanLevels } from "./mean-levels.ts";
export { levelFindings, type LevelFinding } from "./level-findings.ts";
export {
  wetness,
  type JointWetness,
  type WaterResults,
  type WetShare,
  type WetnessInput,
} from "./wetness.ts";
export { waterCalculations } from "./calculations.ts";
