import { defineFormula } from "../formula/index.ts";
import { bandMethod } from "./sources.ts";

/** Degrees of freedom of the band. nu_0 those of the prior spread, n readings >= 1; nu [1]. */
export const bandFreedom = defineFormula(
  {
    id: "ground.strength.df",
    title: "Degrees of freedom of the strength band",
    symbol: "nu",
    unit: "1",
    text: "nu_0 + n - 1",
    inputs: { nu_0: "1", n: "1" },
    validity: "At least one reading; without one the prior's own.",
    source: bandMethod,
  },
  ({ nu_0, n }) => nu_0 + n - 1,
);

/**
 * Strength that the ground of a joint exceeds with 95 %.
 *
 * m   mean of ln(su / Pa); s_n standard deviation of ln su from readings and prior; t Student's t at 95 %
 * v   variance of the joint's level over s_n^2 that the readings leave, by distance along the walkway
 */
export const bandLow = defineFormula(
  {
    id: "ground.strength.low",
    title: "Strength at 5 %",
    symbol: "su_5",
    unit: "Pa",
    text: "exp(m - t * s_n * sqrt(v))",
    inputs: { m: "1", t: "1", s_n: "1", v: "1" },
    validity: "ln su normal; v from the stated likeness along the walkway.",
    source: bandMethod,
  },
  ({ m, t, s_n, v }) => Math.exp(m - t * s_n * Math.sqrt(v)),
);

/** Net ultimate capacity in the middle of its band. su [Pa], N_c net capacity over strength [1]; q [Pa]. */
export const bandCapacity = defineFormula(
  {
    id: "ground.strength.capacity",
    title: "Net capacity in the middle of the band",
    symbol: "q",
    unit: "Pa",
    text: "N_c * su",
    inputs: { N_c: "1", su: "Pa" },
    validity: "The factor of shape, depth and mat by Skempton and 2:1 spread.",
    source: bandMethod,
  },
  ({ N_c, su }) => N_c * su,
);
