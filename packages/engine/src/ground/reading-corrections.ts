import { defineConstant, defineFormula } from "../formula/index.ts";
import { bjerrum, coneFactor, peatVane } from "./sources.ts";

export const peatVaneFactor = defineConstant(
  "ground.vane.peat",
  "Factor on a field vane in peat",
  "mu",
  0.5,
  "1",
  peatVane,
);
export const peatVaneLow = defineConstant(
  "ground.vane.peat-low",
  "Lowest published factor on a field vane in peat",
  "mu",
  0.26,
  "1",
  peatVane,
);
export const peatVaneHigh = defineConstant(
  "ground.vane.peat-high",
  "Highest published factor on a field vane in peat",
  "mu",
  0.69,
  "1",
  peatVane,
);

/** Factor on a field vane in clay. PI plasticity index in per cent, 20 to 120; mu [1], never over 1. */
export const bjerrumFactor = defineFormula(
  {
    id: "ground.vane.bjerrum",
    title: "Factor on a field vane in clay (Bjerrum)",
    symbol: "mu",
    unit: "1",
    text: "min(1, 1.7 - 0.54 * log10(PI))",
    inputs: { PI: "1" },
    validity: "Soft clay, plasticity index 20 to 120 %; under 20 % the vane is taken as read.",
    source: bjerrum,
  },
  ({ PI }) => Math.min(1, 1.7 - 0.54 * Math.log10(PI)),
);

/** Strength from a vane reading. s_v as read [Pa], mu [1]; su [Pa]. */
export const vaneStrength = defineFormula(
  {
    id: "ground.vane.strength",
    title: "Strength from the vane",
    symbol: "su",
    unit: "Pa",
    text: "mu * s_v",
    inputs: { mu: "1", s_v: "Pa" },
    validity: "Peak reading of a field vane.",
    source: bjerrum,
  },
  ({ mu, s_v }) => mu * s_v,
);

/** Weight of the ground over the cone. g unit weight [N/m3], z depth [m]; sigma_v [Pa]. */
export const overburden = defineFormula(
  {
    id: "ground.cone.overburden",
    title: "Weight of the ground over the cone",
    symbol: "sigma_v",
    unit: "Pa",
    text: "g * z",
    inputs: { g: "N/m3", z: "m" },
    validity: "One even layer down to the reading, water and all.",
    source: { id: "statics", title: "Statics", at: "weight over area", status: "computed" },
  },
  ({ g, z }) => g * z,
);

/** Strength from a cone reading. qc resistance, sigma_v weight of the ground over the cone [Pa], N_kt [1] > 0; su [Pa]. */
export const coneStrength = defineFormula(
  {
    id: "ground.cone.strength",
    title: "Strength from the cone",
    symbol: "su",
    unit: "Pa",
    text: "(qc - sigma_v) / N_kt",
    inputs: { qc: "Pa", sigma_v: "Pa", N_kt: "1" },
    validity: "Undrained pushing, qc over sigma_v, resistance corrected for water pressure on the cone.",
    source: coneFactor,
  },
  ({ qc, sigma_v, N_kt }) => (qc - sigma_v) / N_kt,
);

/** Cone factors by ground: middle, and the range that the band spans. */
export const coneFactors = {
  clay: { middle: 14, low: 10, high: 18 },
  "organic-clay": { middle: 14, low: 10, high: 18 },
  mud: { middle: 14, low: 10, high: 18 },
  peat: { middle: 16, low: 11, high: 22 },
} as const;
