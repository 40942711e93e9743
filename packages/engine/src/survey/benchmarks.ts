import type { Problem } from "../formula/index.ts";
import { datumProblem } from "./datum.ts";
import type { Benchmark, CheckShot } from "./types.ts";

/** A shot this near to a mark is taken as a shot on it [m]. */
export const ON_MARK_M = 0.5;
/** A shot closes when it lies within this many of its claimed deviations of the mark. */
const CLOSES_WITHIN = 2;

export interface Closure {
  readonly benchmark: string;
  readonly shot: string;
  /** Shot less mark [m]. */
  readonly difference_m: number;
  /** Within twice the accuracy that the shot claims; null when it claims none. */
  readonly closes: boolean | null;
}

export interface BenchmarkClosure {
  readonly closures: readonly Closure[];
  /** Root mean square of the differences [m]; null without any. */
  readonly rms_m: number | null;
  /** Marks that no shot was taken on. */
  readonly not_visited: readonly string[];
  /** Marks on another datum than the plan's: they are not held against anything. */
  readonly problems: readonly Problem[];
}

/** Holds the check shots taken on marks of known height against them: what a whole survey is off by shows here. */
export function benchmarkClosure(
  benchmarks: readonly Benchmark[],
  shots: readonly CheckShot[],
  planDatum: string,
): BenchmarkClosure {
  const problems = benchmarks.flatMap(
    (b, i) =>
      datumProblem(
        `The mark "${b.name}"`,
        "plan.json",
        `survey.benchmarks[${i}].datum`,
        b.datum,
        planDatum,
      ) ?? [],
  );
  const fit = benchmarks.filter((b) => b.datum === planDatum);
  const closures = fit.flatMap((b) =>
    shots.filter((s) => Math.hypot(s.x - b.x, s.y - b.y) <= ON_MARK_M).map((s) => closureOf(b, s)),
  );
  const visited = new Set(closures.map((c) => c.benchmark));
  return {
    closures,
    rms_m:
      closures.length === 0
        ? null
        : Math.sqrt(closures.reduce((sum, c) => sum + c.difference_m ** 2, 0) / closures.length),
    not_visited: fit.map((b) => b.id).filter((id) => !visited.has(id)),
    problems,
  };
}

function closureOf(mark: Benchmark, shot: CheckShot): Closure {
  const difference_m = shot.z_m - mark.z_m;
  return {
    benchmark: mark.id,
    shot: shot.id,
    difference_m,
    closes: shot.accuracy_m === null ? null : Math.abs(difference_m) <= CLOSES_WITHIN * shot.accuracy_m,
  };
}
