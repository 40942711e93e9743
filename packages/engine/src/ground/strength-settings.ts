import { defineConstant } from "../formula/index.ts";
import { alongLine, influence, modelFactor, strengthScatter } from "./sources.ts";

export const influenceWidths = defineConstant(
  "ground.influence",
  "Depth that bearing feels below a foot, in widths of it",
  "n_B",
  1.5,
  "1",
  influence,
);
export const priorSpread = defineConstant(
  "ground.strength.prior-sd",
  "Standard deviation of ln su before any reading",
  "s_0",
  0.35,
  "1",
  strengthScatter,
);
export const priorFreedom = defineConstant(
  "ground.strength.prior-df",
  "Degrees of freedom that this spread is worth",
  "nu_0",
  3,
  "1",
  strengthScatter,
);
export const correlationLength = defineConstant(
  "ground.strength.correlation-length",
  "Distance over which strengths stay alike",
  "theta",
  20,
  "m",
  alongLine,
);
export const scatterShare = defineConstant(
  "ground.strength.scatter-share",
  "Share of the variance of ln su that is scatter between readings of one place",
  "g",
  0.3,
  "1",
  alongLine,
);
export const modelSpread = defineConstant(
  "ground.strength.model-sd",
  "Standard deviation of the logarithm of the bearing formula's error",
  "s_m",
  0.2,
  "1",
  modelFactor,
);

export const kernels = ["exponential", "gaussian"] as const;
export type Kernel = (typeof kernels)[number];

/** What the band rests on beside the readings. */
export interface StrengthSettings {
  readonly kernel: Kernel;
  /** Stated, not fitted: a few readings cannot tell it [m] > 0. */
  readonly correlation_m: number;
  /** 0.01..0.95. */
  readonly scatter_share: number;
  /** > 0, and its degrees of freedom > 1. */
  readonly prior_sd: number;
  readonly prior_df: number;
  /** >= 0. */
  readonly model_sd: number;
}

export const usualSettings: StrengthSettings = {
  kernel: "exponential",
  correlation_m: correlationLength({}),
  scatter_share: scatterShare({}),
  prior_sd: priorSpread({}),
  prior_df: priorFreedom({}),
  model_sd: modelSpread({}),
};

/** Logarithm of how alike two places are: 0 at one place, falling with distance [m]. */
export function logLikeness({ kernel, correlation_m }: StrengthSettings, distance_m: number): number {
  const x = distance_m / correlation_m;
  return kernel === "gaussian" ? -(x * x) : -x;
}

/** How alike two places are: 1 at one place, falling to 0 with distance [m]. */
export const likeness = (settings: StrengthSettings, distance_m: number): number =>
  Math.exp(logLikeness(settings, distance_m));
