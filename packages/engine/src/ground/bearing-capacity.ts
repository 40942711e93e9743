import { defineFormula } from "../formula/index.ts";
import { skempton, terzaghi } from "./sources.ts";

/**
 * Net ultimate bearing pressure of a rectangular foot on soft clay or peat, undrained.
 *
 * su  undrained shear strength [Pa] > 0
 * B   shorter side of the foot, L longer side [m], 0 < B <= L; a strip has L far larger than B
 * D   depth of the foot below ground [m] >= 0; counts to 2.5 B
 * q   pressure above that of the soil beside the foot [Pa]
 *
 * Holds for one even layer; a root mat over weaker mud may punch through: use the mud's strength.
 */
export const netBearingCapacity = defineFormula(
  {
    id: "ground.bearing.skempton",
    title: "Net bearing capacity of soft ground (Skempton)",
    symbol: "q",
    unit: "Pa",
    text: "min(5 * su * (1 + 0.2 * B / L) * (1 + 0.2 * min(D / B, 2.5)), 9 * su)",
    inputs: { su: "Pa", B: "m", L: "m", D: "m" },
    validity: "Undrained, one even layer, 0 < B <= L, D >= 0, load not far off the middle of the foot.",
    source: skempton,
  },
  ({ su, B, L, D }) => Math.min(5 * su * (1 + (0.2 * B) / L) * (1 + 0.2 * Math.min(D / B, 2.5)), 9 * su),
);

/** Net bearing pressure of a long strip by Skempton. su [Pa], B and D [m]; q [Pa]. */
export const stripBearingCapacity = defineFormula(
  {
    id: "ground.bearing.skempton-strip",
    title: "Net bearing capacity under a long strip (Skempton)",
    symbol: "q",
    unit: "Pa",
    text: "min(5 * su * (1 + 0.2 * min(D / B, 2.5)), 9 * su)",
    inputs: { su: "Pa", B: "m", D: "m" },
    validity: "Undrained, one even layer, strip far longer than wide, B > 0, D >= 0.",
    source: skempton,
  },
  ({ su, B, D }) => Math.min(5 * su * (1 + 0.2 * Math.min(D / B, 2.5)), 9 * su),
);

/** Ultimate bearing pressure of a square footing at the surface by Terzaghi. c cohesion [Pa] > 0; q [Pa]. */
export const squareBearingCapacity = defineFormula(
  {
    id: "ground.bearing.terzaghi-square",
    title: "Bearing capacity of a square footing at the surface (Terzaghi)",
    symbol: "q",
    unit: "Pa",
    text: "1.3 * 5.7 * c",
    inputs: { c: "Pa" },
    validity: "Undrained clay (phi = 0), footing at the surface, rough base.",
    source: terzaghi,
  },
  ({ c }) => 1.3 * 5.7 * c,
);

/** Cohesion of clay from its unconfined compressive strength. qu [Pa]; c [Pa]. */
export const cohesionFromCompression = defineFormula(
  {
    id: "ground.cohesion",
    title: "Cohesion from unconfined compressive strength",
    symbol: "c",
    unit: "Pa",
    text: "qu / 2",
    inputs: { qu: "Pa" },
    validity: "Saturated clay, undrained.",
    source: { ...terzaghi, at: "c = qu / 2" },
  },
  ({ qu }) => qu / 2,
);

/** Largest pressure that keeps the chosen ratio to the ultimate one. q [Pa] >= 0, F >= 1; p [Pa]. */
export const allowedPressure = defineFormula(
  {
    id: "ground.bearing.allowed",
    title: "Pressure allowed on the ground",
    symbol: "p",
    unit: "Pa",
    text: "q / F",
    inputs: { q: "Pa", F: "1" },
    validity: "F >= 1: the ratio of capacity to pressure that the plan asks for.",
    source: { id: "plan-ground-safety", title: "The plan's chosen safety on bearing", status: "project" },
  },
  ({ q, F }) => q / F,
);
