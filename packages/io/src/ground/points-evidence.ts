import { auditPoints, type PointsEvidence, type Tin } from "@causey/engine/survey";
import type { PointsRead } from "../points/index.ts";

/** A file of points as it was read, and the triangles between its places. */
export interface SurveyedPoints extends Pick<PointsRead, "points" | "left_out_count"> {
  readonly tin: Tin;
}

/** Outliers that are listed one by one: more than a person looks at. The count holds all. */
const LISTED = 200;

/** Audit of the points of a terrain: what stands away from its neighbours, accuracy, days. */
export function pointsEvidence({ points, left_out_count, tin }: SurveyedPoints): PointsEvidence {
  const { x, y, z, accuracy: accuracy_m, days, ids, lines } = points;
  const { n, outliers, sigma_m, not_judged, merged, accuracy, dates } = auditPoints(
    { x, y, z, accuracy_m, days },
    tin,
  );
  return {
    n,
    sigma_m,
    not_judged,
    merged,
    accuracy,
    dates,
    left_out: left_out_count,
    outlier_count: outliers.length,
    outliers: outliers.slice(0, LISTED).map(({ point, residual_m, sigmas }) => ({
      id: ids === null ? null : ids.at(point) || null,
      line: lines[point]!,
      x: x[point]!,
      y: y[point]!,
      z_m: z[point]!,
      residual_m,
      sigmas,
      ...statedOf(points, point),
    })),
  };
}

/** What the file states of one point; accuracies are read in 32 bits, a micrometre is all that their digits mean. */
function statedOf(
  { accuracy, days }: PointsRead["points"],
  point: number,
): { readonly accuracy_m: number | null; readonly date: string | null } {
  const [a, day] = [accuracy?.[point] ?? Number.NaN, days?.[point] ?? Number.NaN];
  return {
    accuracy_m: Number.isNaN(a) ? null : Number(a.toFixed(6)),
    date: Number.isNaN(day) ? null : new Date(day * 86_400_000).toISOString().slice(0, 10),
  };
}
