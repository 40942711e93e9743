import type { Trace, TraceStep } from "../formula/index.ts";
import type { StrengthReading, Zone } from "../site/index.ts";
import { benchmarkClosure, type Closure } from "./benchmarks.ts";
import { habitatsWithoutShots } from "./corrected-terrain.ts";
import type { GroundEvidence, PointsEvidence, ShotResidual } from "./evidence.ts";
import { shearSummary, type ShearStation } from "./shear.ts";
import { LEAST_SHOTS } from "./terrain-bias.ts";
import type { Station, Survey } from "./types.ts";

/** One check shot against the terrain as it was measured. */
export interface ShotResult extends ShotResidual {
  /** Further than three robust deviations from the middle; it counts all the same. */
  readonly outlier: boolean;
}

/** The terrain held against heights taken on the ground itself. */
export interface TerrainFinding {
  readonly kind: GroundEvidence["kind"];
  /** Shots that counted: inside the habitats, everywhere when there is none. */
  readonly n: number;
  readonly median_m: number | null;
  readonly mean_m: number | null;
  readonly sd_m: number | null;
  readonly lowered_m: number;
  readonly note: string;
  /** Shots that counted, in the order of the survey. */
  readonly shots: readonly ShotResult[];
  /** Shots outside the habitats, where there are habitats. */
  readonly elsewhere: readonly string[];
  /** Shots where the terrain has no height. */
  readonly off_terrain: readonly string[];
}

/** A mark and a shot taken on it, with both heights. */
export interface ClosureResult extends Closure {
  readonly mark_m: number;
  readonly shot_m: number;
}

/** A station of the survey with what follows from what was read there. */
export interface StationResult extends Station {
  /** Along the straight lines from the first station, in the order of the list [m]. */
  readonly along_m: number;
  /** Level of the firm ground that the probe met; null = not probed. */
  readonly firm_m: number | null;
  /** Water over ground, negative where it stands below [m]; null = not read. */
  readonly water_over_m: number | null;
}

/** What the survey says of the site, apart from the terrain itself. */
export interface SurveyResults {
  /** Null when it is not known how the site's ground was found. */
  readonly terrain: TerrainFinding | null;
  /** Half width at 95 % on every height that rests on the terrain [m]; null = not known. */
  readonly band_m: number | null;
  readonly band_working: readonly TraceStep[];
  /** Habitats without a check shot under a terrain that was measured from the air. */
  readonly unchecked_habitats: readonly { readonly zone: string; readonly name: string }[];
  readonly closure: {
    readonly closures: readonly ClosureResult[];
    /** Root mean square of the differences [m]; null without any. */
    readonly rms_m: number | null;
    readonly not_visited: readonly string[];
    /** Marks on another datum than the plan's, which are held against nothing. */
    readonly other_datum: readonly string[];
  };
  readonly shear: readonly ShearStation[];
  readonly shear_working: readonly TraceStep[];
  readonly stations: readonly StationResult[];
  /** The points that the terrain was made of; null for other ground. */
  readonly points: PointsEvidence | null;
  /** Standard deviation of the terrain's heights as its maker states it [m]; null = not stated. */
  readonly accuracy_m: number | null;
  /** Day the terrain was flown or surveyed; null = not stated. */
  readonly date: string | null;
  readonly cautions: readonly string[];
}

export interface SurveyInput {
  readonly survey: Survey;
  readonly zones: readonly Zone[];
  readonly datum: string;
  readonly readings: readonly StrengthReading[];
  readonly ground: GroundEvidence | null;
  /** Of the site's heights [m]; null = not known. */
  readonly band_m: number | null;
}

/**
 * Sums up a survey: bias and band of the terrain, closure on the marks, strengths, stations, points.
 *
 * Heights on `datum` [m]; positions in the site's horizontal system [m]. The bias itself was found when the ground was
 * read, for a site holds its terrain as corrected.
 */
export function surveyResults({
  survey,
  zones,
  datum,
  readings,
  ground,
  band_m,
}: SurveyInput): SurveyResults {
  const shear_working: Trace = [];
  const shear = shearSummary(readings, shear_working);
  const unchecked =
    ground?.kind === "grid"
      ? habitatsWithoutShots(zones, survey.check_shots).map((z) => ({ zone: z.id, name: z.name }))
      : [];
  const closure = closureOf(survey, datum);
  return {
    terrain: ground === null ? null : terrainFinding(ground),
    band_m,
    band_working: ground?.working ?? [],
    unchecked_habitats: unchecked,
    closure,
    shear,
    shear_working,
    stations: stationResults(survey.stations),
    points: ground?.points ?? null,
    accuracy_m: survey.accuracy_m,
    date: survey.date,
    cautions: cautionsOf(survey, ground, band_m, closure, shear),
  };
}

function terrainFinding({ kind, bias, lowered_m, note }: GroundEvidence): TerrainFinding {
  const isOut = new Set(bias.outliers);
  const { n, median_m, mean_m, sd_m, elsewhere, off_terrain } = bias;
  const shots = bias.residuals.map((r) => ({ ...r, outlier: isOut.has(r) }));
  return { kind, n, median_m, mean_m, sd_m, lowered_m, note, shots, elsewhere, off_terrain };
}

function closureOf({ benchmarks, check_shots }: Survey, datum: string): SurveyResults["closure"] {
  const { closures, rms_m, not_visited } = benchmarkClosure(benchmarks, check_shots, datum);
  const mark = new Map(benchmarks.map((b) => [b.id, b.z_m]));
  return {
    closures: closures.map((c) => {
      const mark_m = mark.get(c.benchmark)!;
      return { ...c, mark_m, shot_m: mark_m + c.difference_m };
    }),
    rms_m,
    not_visited,
    other_datum: benchmarks.filter((b) => b.datum !== datum).map((b) => b.id),
  };
}

function stationResults(stations: readonly Station[]): readonly StationResult[] {
  let along_m = 0;
  return stations.map((s, i) => {
    const last = stations[i - 1];
    if (last) along_m += Math.hypot(s.x - last.x, s.y - last.y);
    return {
      ...s,
      along_m,
      firm_m: s.probe_m === null ? null : s.ground_m - s.probe_m,
      water_over_m: s.water_m === null ? null : s.water_m - s.ground_m,
    };
  });
}

/** From here on soft ground loses most of its strength when it is stirred: a bound of common practice. */
const SENSITIVE = 4;

function cautionsOf(
  survey: Survey,
  ground: GroundEvidence | null,
  band_m: number | null,
  closure: SurveyResults["closure"],
  shear: readonly ShearStation[],
): readonly string[] {
  const open = closure.closures.filter((c) => c.closes === false).map((c) => c.benchmark);
  const isSensitive = shear.some((s) => s.sensitivity !== null && s.sensitivity >= SENSITIVE);
  return [
    ...(band_m === null
      ? [
          `Heights have no band: take at least ${LEAST_SHOTS} check shots on the ground itself, or state the terrain's accuracy.`,
        ]
      : []),
    ...(survey.date === null && ground?.kind === "grid"
      ? ["The day of the terrain is not stated: creeks move and plants grow."]
      : []),
    ...(open.length > 0
      ? [`The survey does not close on ${open.join(", ")}: its heights may all be off by as much.`]
      : []),
    ...(survey.benchmarks.length === 0 && survey.check_shots.length > 0
      ? ["No bench mark is given: an error that all check shots share does not show."]
      : []),
    ...(isSensitive
      ? [
          `Peak strength is ${SENSITIVE} times the remoulded one or more (bound: common practice, no source): ground that was trodden or dug carries far less.`,
        ]
      : []),
  ];
}
