import { defineFormula, type AnyFormula } from "../formula/index.ts";
import { predictionInterval, sensitivitySource, surveyMethod } from "./sources.ts";

/**
 * Half width of the band on one terrain height after its bias was taken off, at 95 %.
 *
 * t  Student's t that holds 95 % with n - 1 degrees of freedom
 * s  standard deviation of terrain less check shot [m] >= 0
 * a  standard deviation that the shots' instrument claims [m] >= 0. Added although their chance part is in s already:
 *    what all shots share (the base, the bench mark) does not show in s
 * n  check shots >= 3
 * k  half width [m]
 */
export const heightBand = defineFormula(
  {
    id: "survey.height-band",
    title: "Band on a terrain height, bias taken off",
    symbol: "k",
    unit: "m",
    text: "t * sqrt(s^2 + a^2) * sqrt(1 + pi / (2 * n))",
    inputs: { t: "1", s: "m", a: "m", n: "1" },
    validity: "At least 3 check shots, spread over the ground in question; errors roughly normal.",
    source: predictionInterval,
  },
  ({ t, s, a, n }) => t * Math.sqrt(s ** 2 + a ** 2) * Math.sqrt(1 + Math.PI / (2 * n)),
);

/** Half width of the band when the bias b [m] is left in; k is the band of `heightBand` [m]. The cautious sum. */
export const heightBandWithBias = defineFormula(
  {
    id: "survey.height-band-with-bias",
    title: "Band on a terrain height, bias left in",
    symbol: "K",
    unit: "m",
    text: "abs(b) + k",
    inputs: { b: "m", k: "m" },
    validity: "As for the band with the bias taken off.",
    source: surveyMethod,
  },
  ({ b, k }) => Math.abs(b) + k,
);

/** Half width at 95 % from a standard deviation that the maker of the terrain states. s [m] >= 0. */
export const statedHeightBand = defineFormula(
  {
    id: "survey.height-band-stated",
    title: "Band on a terrain height as its maker states it",
    symbol: "k",
    unit: "m",
    text: "1.96 * s",
    inputs: { s: "m" },
    validity:
      "Open firm ground: makers state accuracy there. Lidar in dense grass reads higher than this tells.",
    source: {
      id: "normal-95",
      title: "95 % of a normal distribution lies within 1.96 deviations",
      status: "memory",
    },
  },
  ({ s }) => 1.96 * s,
);

/** Sensitivity of ground: peak over remoulded vane strength. p, r [Pa], r > 0. */
export const vaneSensitivity = defineFormula(
  {
    id: "survey.sensitivity",
    title: "Sensitivity of soft ground",
    symbol: "S",
    unit: "1",
    text: "p / r",
    inputs: { p: "Pa", r: "Pa" },
    validity:
      "Peak and remoulded strength of one vane at one depth, both corrected alike or not at all; r > 0.",
    source: sensitivitySource,
  },
  ({ p, r }) => p / r,
);

export const surveyFormulas: readonly AnyFormula[] = [
  heightBand,
  heightBandWithBias,
  statedHeightBand,
  vaneSensitivity,
];
