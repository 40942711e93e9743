import { cholesky, dot, forward, square, type Square } from "../statistics/index.ts";
import { DomainError } from "../units/index.ts";
import type { LineReading } from "./strength-depth.ts";
import { likeness, type StrengthSettings } from "./strength-settings.ts";

/** Where strength is asked for: along the walkway and beside it [m]. */
export interface LinePlace {
  readonly at_m: number;
  readonly off_m: number;
}

/**
 * What is known of ln su at some places together: Student's t with `df` degrees of freedom, mean `mean[i]` and scale
 * `sigma^2 * shape[i, j]`.
 */
export interface StrengthField {
  readonly basis: "readings" | "plan value";
  readonly places: readonly LinePlace[];
  readonly df: number;
  readonly sigma: number;
  /** Of ln(su / Pa). */
  readonly mean: Float64Array;
  readonly shape: Square;
  /** Weight of each reading at each place, row by row of places: each row adds up to 1. Empty without readings. */
  readonly weights: readonly Float64Array[];
}

const apart = (a: LinePlace, b: LinePlace): number => Math.hypot(a.at_m - b.at_m, a.off_m - b.off_m);

/**
 * The distribution of ln su at places along a walkway from corrected readings.
 *
 * ln su is a normal field of unknown mean (flat prior) and unknown variance (scaled inverse chi-square prior,
 * `prior_sd` and `prior_df`: the conjugate normal-inverse-chi-square model). Two places are alike by the kernel, but for
 * `scatter_share` of the variance, which is scatter between readings of one place. So near readings weigh more, and
 * readings that repeat each other weigh less; where no two are alike, this is the plain s^2 (1 + 1/n).
 *
 * Without readings: the plan's own value [Pa], counted as one reading of no particular place, with the prior spread.
 * Null where neither is known. Throws `DomainError` on a strength that is not over 0.
 */
export function strengthField(
  readings: readonly LineReading[],
  places: readonly LinePlace[],
  plan_su_pa: number | null,
  settings: StrengthSettings,
): StrengthField | null {
  if (readings.some((r) => !(r.su_pa > 0))) throw new DomainError("strength-not-over-0");
  if (readings.length === 0) return plan_su_pa === null ? null : fromPlan(plan_su_pa, places, settings);
  const { scatter_share: g, prior_sd, prior_df } = settings;
  const n = readings.length;
  const like = (a: LinePlace, b: LinePlace): number => (1 - g) * likeness(settings, apart(a, b));
  const lower = cholesky(square(n, (i, j) => (i === j ? 1 : like(readings[i]!, readings[j]!))));
  const ones = forward(lower, new Float64Array(n).fill(1));
  const logs = forward(
    lower,
    readings.map((r) => Math.log(r.su_pa)),
  );
  const kappa = dot(ones, ones);
  const mu = dot(ones, logs) / kappa;
  const left = logs.map((v, i) => v - mu * ones[i]!);
  const df = prior_df + n - 1;
  const sigma = Math.sqrt((prior_df * prior_sd ** 2 + dot(left, left)) / df);
  const toPlace = places.map((p) =>
    forward(
      lower,
      readings.map((r) => like(r, p)),
    ),
  );
  const missing = toPlace.map((c) => 1 - dot(c, ones));
  const mean = Float64Array.from(toPlace, (c) => mu + dot(c, left));
  const shape = square(places.length, (i, j) => {
    if (j > i) return 0;
    const shared = like(places[i]!, places[j]!) - dot(toPlace[i]!, toPlace[j]!);
    return shared + (missing[i]! * missing[j]!) / kappa;
  });
  const weights = toPlace.map((c, i) =>
    transposed(
      lower,
      c.map((v, k) => v + (missing[i]! / kappa) * ones[k]!),
    ),
  );
  return { basis: "readings", places, df, sigma, mean, shape: mirrored(shape), weights };
}

/** Solves L' x = v. */
function transposed({ size: n, values: l }: Square, v: Float64Array): Float64Array {
  const x = Float64Array.from(v);
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= l[k * n + i]! * x[k]!;
    x[i]! /= l[i * n + i]!;
  }
  return x;
}

function mirrored({ size, values }: Square): Square {
  return square(size, (i, j) => {
    const v = values[Math.max(i, j) * size + Math.min(i, j)]!;
    return i === j ? Math.max(0, v) : v;
  });
}

function fromPlan(su_pa: number, places: readonly LinePlace[], settings: StrengthSettings): StrengthField {
  if (!(su_pa > 0)) throw new DomainError("strength-not-over-0", { su_pa });
  const { scatter_share: g, prior_sd, prior_df } = settings;
  return {
    basis: "plan value",
    places,
    df: prior_df,
    sigma: prior_sd,
    mean: new Float64Array(places.length).fill(Math.log(su_pa)),
    shape: square(places.length, (i, j) => 1 + (1 - g) * likeness(settings, apart(places[i]!, places[j]!))),
    weights: [],
  };
}
