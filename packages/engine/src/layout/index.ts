export type * from "./types.ts";
export { Settle, type SearchSpace } from "./settle.ts";
export { readGridMap, type GridMap } from "./grid-map.ts";
export { gridPath, gridPathLengths } from "./grid-path.ts";
export { footArea, footReach, type LayoutFacts, type SearchCosts } from "./facts.ts";
export { refitFrom, searchLayout } from "./guided/index.ts";
export { SearchMemory } from "./search-memory.ts";
export { MOST_JOINED_EXACTLY } from "./join-size.ts";
export type { SearchInput } from "./search-input.ts";
export {
  evaluateLayout,
  measureLayout,
  weighLayout,
  type EvaluationInput,
  type LayoutMeasures,
} from "./evaluate.ts";
export { isWater } from "./fields.ts";
export { settleGrid } from "./weighted-grid.ts";
export { overlapArea } from "./shared-area.ts";
export { workLimit } from "./work-limit.ts";
export { layoutCalculations } from "./calculations.ts";
export { isArrival } from "./arrival.ts";
export { stringerEdgeJoints } from "./edge-joints.ts";
export { lowestOnWay } from "./lowest-way.ts";
export { deadEnds, type DeadEnd } from "./dead-ends.ts";
export {
  ditchUnder,
  routeFacts,
  type ParcelCrossed,
  type PlotClear,
  type RouteFacts,
  type SensitiveStretch,
  type WaterCrossed,
} from "./route-facts.ts";
export { spareModules, sparesWanted, type SpareModules } from "./spares.ts";
export { settingOut } from "./setting-out.ts";
export { tapeAlong, tapeOffset, tapeTie } from "./setting-out-formulas.ts";
export type { Diagonal, Mark, SetJoint, SettingLine, SettingOut, Tie } from "./setting-out-types.ts";
export {
  layingTolerance,
  seatSlack,
  type JointTolerance,
  type ShiftRule,
  type ToleranceInput,
} from "./tolerance.ts";
export { entryRamps, rampGrade, rampLength, type RampInput } from "./ramps.ts";
