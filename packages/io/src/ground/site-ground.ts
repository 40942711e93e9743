import type { Plan } from "@causey/engine/plan";
import { ProblemError, type Problem, type Trace } from "@causey/engine/formula";
import {
  correctedTerrain,
  habitatsWithoutShots,
  type CorrectedTerrain,
  type GroundEvidence,
} from "@causey/engine/survey";
import type { PlanCrs } from "../crs/index.ts";
import { Findings, quote } from "../problem/index.ts";
import type { Terrain } from "../terrain/index.ts";
import { pointsEvidence } from "./points-evidence.ts";
import { checkOtherUnit } from "./other-unit.ts";
import { groundFile, readGround, type MeasuredGround } from "./read-ground.ts";

/** What of a plan its ground depends on. */
export type GroundPlan = Pick<Plan, "terrain" | "survey" | "zones" | "levels" | "vertical_datum">;
/** The same where the zones could not be read: which ground is habitat is not known, so nothing can be corrected. */
export type UnzonedPlan = Omit<GroundPlan, "zones">;

/** The ground as everything else of the plan sees it: read, and corrected where the survey asks for it. */
export interface SiteGround extends Terrain {
  /** Half width at 95 % on every height [m]; null = not known. */
  readonly height_band_m: number | null;
  readonly correction: CorrectedTerrain;
  /** What the heights rest on. Worked out when asked for: the audit of many points takes as long as reading them. */
  readonly evidence: () => GroundEvidence;
}

/**
 * Reads the ground of a plan and corrects it by the check shots.
 *
 * bytes  of `groundFile`, null where the ground is typed into the plan
 * Warns of habitats without a check shot under terrain from a file, and of a bias that was left in; heights that fit
 * the check shots in another unit alone are refused. Throws `ProblemError` with everything found.
 */
export async function siteGround(
  plan: GroundPlan,
  bytes: Uint8Array | null,
  expectedCrs: PlanCrs | undefined,
): Promise<SiteGround> {
  const { surveyed, ...read } = await uncorrectedGround(plan, bytes, expectedCrs);
  refuseOtherUnit(plan, read);
  const working: Trace = [];
  const correction = correctedTerrain(read.raster, plan.survey, plan.zones, working);
  const { bias, lowered_m, note } = correction;
  return {
    ...read,
    evidence: () => ({
      kind: plan.terrain.kind,
      bias,
      lowered_m,
      note,
      working,
      points: surveyed === null ? null : pointsEvidence(surveyed),
    }),
    raster: correction.raster,
    height_band_m: correction.band_m,
    correction,
    warnings: [...read.warnings, ...doubts(plan, correction)],
  };
}

/** The ground of a plan as it was measured. Throws `ProblemError` with everything found. */
export const uncorrectedGround = (
  plan: UnzonedPlan,
  bytes: Uint8Array | null,
  expectedCrs: PlanCrs | undefined,
): Promise<MeasuredGround> => readGround(plan.terrain, bytes, expectedCrs, plan.survey, knownHeights(plan));

/** Heights on the plan's datum of marks, check shots and water levels [m]. */
function knownHeights({ survey, levels, vertical_datum }: UnzonedPlan): readonly number[] {
  const onDatum = [...survey.benchmarks, ...levels].filter((h) => h.datum === vertical_datum);
  return [...onDatum.map((h) => h.z_m), ...survey.check_shots.map((s) => s.z_m)];
}

function refuseOtherUnit({ terrain, survey }: GroundPlan, { raster, warnings }: Terrain): void {
  if (terrain.kind === "stations") return;
  const found = new Findings(terrain.file);
  checkOtherUnit(found, raster, terrain, survey.check_shots);
  if (found.hasErrors) throw new ProblemError([...warnings, ...found.all]);
}

function doubts(plan: GroundPlan, { bias, lowered_m, note }: CorrectedTerrain): readonly Problem[] {
  const found = new Findings(groundFile(plan.terrain) ?? "plan.json");
  if (plan.terrain.kind === "grid")
    for (const zone of habitatsWithoutShots(plan.zones, plan.survey.check_shots))
      found.warn({
        code: "terrain-unchecked-habitat",
        place: `zone ${quote(zone.name)} (${zone.id})`,
        value: "0 check shots",
        message: `No check shot lies in the habitat ${quote(zone.name)}. Lidar in dense grass or reed reads the leaves, not the ground: heights there may be too high by a decimetre or more.`,
        mend: "Take at least three heights on the ground itself in it and enter them as check shots.",
      });
  if (lowered_m === 0 && bias.median_m !== null && isSure(bias.median_m, bias.sd_m, bias.n))
    found.warn({
      code: "terrain-bias",
      place: "survey.correct_terrain",
      value: `${bias.median_m.toFixed(3)} m`,
      message: note,
      mend: 'Set "correct_terrain" in the survey to take the bias off, or look for its cause.',
    });
  return found.warnings;
}

/** More than two standard errors from nothing. */
const isSure = (bias_m: number, sd_m: number | null, n: number): boolean =>
  n >= 3 && sd_m !== null && Math.abs(bias_m) > (2 * sd_m) / Math.sqrt(n) && Math.abs(bias_m) >= 0.005;
