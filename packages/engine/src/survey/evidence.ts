import type { TraceStep } from "../formula/formula.ts";

export interface ShotResidual {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Terrain less shot: positive where the terrain reads high [m]. */
  readonly residual_m: number;
}

/** How far a terrain reads above the ground itself. */
export interface TerrainBias {
  /** Shots that counted. */
  readonly n: number;
  readonly median_m: number | null;
  readonly mean_m: number | null;
  /** Of the residuals, outliers included; null for fewer than two. */
  readonly sd_m: number | null;
  /** Half width at 95 % on one height once the median was taken off; null for fewer than three shots. */
  readonly band_m: number | null;
  readonly residuals: readonly ShotResidual[];
  /** Further than three robust deviations from the median. They count all the same: wrong or rough ground, look. */
  readonly outliers: readonly ShotResidual[];
  /** Shots outside the habitats, where there are habitats. */
  readonly elsewhere: readonly string[];
  /** Shots where the terrain has no height. */
  readonly off_terrain: readonly string[];
}

/** What a survey's points say of themselves, one by one and together. */
export interface PointSums {
  readonly n: number;
  /** Robust standard deviation of the points about their neighbours' planes [m]; null when none could be judged. */
  readonly sigma_m: number | null;
  /** Points whose neighbours tell no plane, as on one straight line. */
  readonly not_judged: number;
  /** Points on the spot of another one. */
  readonly merged: number;
  readonly accuracy: { readonly stated: number; readonly median_m: number; readonly worst_m: number } | null;
  readonly dates: { readonly stated: number; readonly first: string; readonly last: string } | null;
}

/** A point of the survey's file that stands away from its neighbours. */
export interface ListedOutlier {
  /** Its name in the file; null where the file names none. */
  readonly id: string | null;
  /** Line of the file, from 1. */
  readonly line: number;
  readonly x: number;
  readonly y: number;
  readonly z_m: number;
  /** Above the ground that its neighbours tell [m]. */
  readonly residual_m: number;
  readonly sigmas: number;
  /** Standard deviation that the instrument claims [m]; null = not stated. */
  readonly accuracy_m: number | null;
  readonly date: string | null;
}

/** The audit of the points that a terrain was made of. */
export interface PointsEvidence extends PointSums {
  /** Rows of the file without a height or a position, which are not among the points. */
  readonly left_out: number;
  readonly outlier_count: number;
  /** The widest of them, widest first. */
  readonly outliers: readonly ListedOutlier[];
}

/** What the heights of a site rest on: found when its ground was read, before anything was taken off it. */
export interface GroundEvidence {
  readonly kind: "grid" | "points" | "stations";
  readonly bias: TerrainBias;
  /** Taken off every height inside the habitats (everywhere when there is none) [m]; 0 = nothing was done. */
  readonly lowered_m: number;
  /** What was done and what the band rests on. */
  readonly note: string;
  /** How the band was found. */
  readonly working: readonly TraceStep[];
  /** For ground from a file of points. */
  readonly points: PointsEvidence | null;
}
