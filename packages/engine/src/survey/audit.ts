import type { PointSums } from "./evidence.ts";
import { neighboursOf, type Neighbours } from "./neighbours.ts";
import { planeResidual } from "./local-plane.ts";
import { median, robustDeviation } from "./statistics.ts";
import { LEAST_SIGMA_M, OUTLIER_SIGMAS } from "./terrain-bias.ts";
import { triangulate, type PointCloud, type Tin } from "./tin.ts";

/** Survey points with what is known of each; NaN = not stated. */
export interface AuditedPoints extends PointCloud {
  /** Standard deviation that the instrument claims [m]. */
  readonly accuracy_m?: ArrayLike<number> | null;
  /** Days since 1970-01-01. */
  readonly days?: ArrayLike<number> | null;
}

export interface PointOutlier {
  /** Place in the list of points, from 0. */
  readonly point: number;
  /** Above the ground that its neighbours tell, evened for the border of the survey [m]. */
  readonly residual_m: number;
  /** How many robust standard deviations that is. */
  readonly sigmas: number;
}

export interface PointAudit extends PointSums {
  /** Points further than three robust deviations from the plane through their neighbours, widest first. */
  readonly outliers: readonly PointOutlier[];
}

/** A wild point spoils the planes of its neighbours too: the worst of each neighbourhood goes first, then all anew. */
const MOST_ROUNDS = 20;

/**
 * Holds every point against the plane through its neighbours, and sums up accuracy and dates.
 *
 * Outliers are listed, never dropped: a creek bank is one too. Of normal errors about one point in 370 is listed by
 * chance. Points on one spot are judged by their mean. `tin`: of the same points, where it was
 * made already. Throws `DomainError` as `triangulate` does.
 */
export function auditPoints(points: AuditedPoints, tin: Tin = triangulate(points)): PointAudit {
  const { residuals, sigma } = judge(tin, neighboursOf(tin));
  const outliers: PointOutlier[] = [];
  let not_judged = 0;
  for (let point = 0; point < points.z.length; point++) {
    const residual_m = residuals[tin.corner_of[point]!]!;
    if (Number.isNaN(residual_m) || sigma === null) not_judged += 1;
    else if (Math.abs(residual_m) > OUTLIER_SIGMAS * sigma)
      outliers.push({ point, residual_m, sigmas: Math.abs(residual_m) / sigma });
  }
  return {
    n: points.z.length,
    outliers: outliers.sort((a, b) => b.sigmas - a.sigmas || a.point - b.point),
    sigma_m: sigma,
    not_judged,
    merged: tin.merged,
    accuracy: accuracyOf(points.accuracy_m ?? null),
    dates: datesOf(points.days ?? null),
  };
}

interface Judged {
  readonly residuals: Float64Array;
  readonly sigma: number | null;
}

function judge(tin: Tin, near: Neighbours): Judged {
  const isOut = new Uint8Array(tin.z.length);
  const residuals = Float64Array.from(tin.z, (_, c) => planeResidual(tin, near, c, isOut));
  let sigma = spreadOf(residuals);
  for (let round = 0; round < MOST_ROUNDS && sigma !== null; round++) {
    const worst = worstOfEach(residuals, near, isOut, OUTLIER_SIGMAS * sigma);
    if (worst.length === 0) break;
    for (const c of worst) isOut[c] = 1;
    for (const c of reachOf(worst, near)) residuals[c] = planeResidual(tin, near, c, isOut);
    sigma = spreadOf(residuals);
  }
  return { residuals, sigma };
}

function spreadOf(residuals: Float64Array): number | null {
  const known = residuals.filter((r) => !Number.isNaN(r));
  return known.length < 4 ? null : Math.max(LEAST_SIGMA_M, robustDeviation(known, median(known)));
}

/** Corners past the limit that no neighbour surpasses. */
function worstOfEach(
  residuals: Float64Array,
  { start, list }: Neighbours,
  isOut: Uint8Array,
  limit: number,
): number[] {
  const found: number[] = [];
  residuals.forEach((r, c) => {
    if (isOut[c] === 1 || !(Math.abs(r) > limit)) return;
    const rivals = list.subarray(start[c]!, start[c + 1]!);
    if (rivals.every((d) => isOut[d] === 1 || !(Math.abs(residuals[d]!) > Math.abs(r)))) found.push(c);
  });
  return found;
}

/** Corners whose plane may rest on the given ones: two edges away at most. */
function reachOf(corners: readonly number[], { start, list }: Neighbours): Set<number> {
  const ring = (c: number): number[] => Array.from(list.subarray(start[c]!, start[c + 1]!));
  return new Set(corners.flatMap((c) => [c, ...ring(c), ...ring(c).flatMap(ring)]));
}

function accuracyOf(values: ArrayLike<number> | null): PointAudit["accuracy"] {
  const stated = Float64Array.from(values ?? []).filter((v) => !Number.isNaN(v));
  if (stated.length === 0) return null;
  return {
    stated: stated.length,
    median_m: median(stated),
    worst_m: stated.reduce((a, b) => Math.max(a, b)),
  };
}

function datesOf(days: ArrayLike<number> | null): PointAudit["dates"] {
  const stated = Float64Array.from(days ?? []).filter((v) => !Number.isNaN(v));
  if (stated.length === 0) return null;
  const iso = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);
  const first = stated.reduce((a, b) => Math.min(a, b));
  return { stated: stated.length, first: iso(first), last: iso(stated.reduce((a, b) => Math.max(a, b))) };
}
