export type * from "./types.ts";
export type * from "./evidence.ts";
export { longestEdge, triangulate, type PointCloud, type Tin } from "./tin.ts";
export { surfaceAt } from "./surface-at.ts";
export { MAX_SURVEY_CELLS, surfaceRaster, tinLattice } from "./surface-raster.ts";
export { stationSurface } from "./station-surface.ts";
export { biasOfShots, LEAST_SHOTS, terrainBias } from "./terrain-bias.ts";
export { correctedTerrain, habitatsWithoutShots, type CorrectedTerrain } from "./corrected-terrain.ts";
export { auditPoints, type AuditedPoints, type PointAudit, type PointOutlier } from "./audit.ts";
export { benchmarkClosure, ON_MARK_M, type BenchmarkClosure, type Closure } from "./benchmarks.ts";
export { datumProblem } from "./datum.ts";
export { shearSummary, type ShearAtDepth, type ShearStation } from "./shear.ts";
export {
  BELOW_SEA_M,
  FAR_FROM_KNOWN_M,
  looksLikeEllipsoidHeights,
  type EllipsoidVerdict,
} from "./ellipsoid.ts";
export { studentHalfWidth, studentWithin } from "./student-t.ts";
export { median, quantileOfSorted } from "./statistics.ts";
export { heightBand, heightBandWithBias, statedHeightBand, vaneSensitivity } from "./formulas.ts";
export { surveyCalculations } from "./calculations.ts";
export {
  surveyResults,
  type ClosureResult,
  type ShotResult,
  type StationResult,
  type SurveyInput,
  type SurveyResults,
  type TerrainFinding,
} from "./survey-results.ts";
