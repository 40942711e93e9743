import { defineFormula, recordValue, type Trace } from "../formula/index.ts";
import type { Combination } from "./contract.ts";

const source = {
  id: "load-combination",
  title: "Loads of one combination, each with its factor",
  at: "the factors stand in the lines above, with their clause",
  status: "computed",
} as const;
const validity = "Factors of one combination of the plan's design code; dead and live act the same way.";

/** Even loads of a combination. g, q [Pa], factors [1]; p [Pa]. */
export const combinedPressure = defineFormula(
  {
    id: "combination.pressure",
    title: "Load of the combination",
    symbol: "p",
    unit: "Pa",
    text: "gG * g + gQ * q",
    inputs: { gG: "1", g: "Pa", gQ: "1", q: "Pa" },
    validity,
    source,
  },
  ({ gG, g, gQ, q }) => gG * g + gQ * q,
);

/** Moment of a combination. [N*m]. */
export const combinedMoment = defineFormula(
  {
    id: "combination.moment",
    title: "Moment of the combination",
    symbol: "M",
    unit: "N*m",
    text: "gG * M_d + gQ * M_l",
    inputs: { gG: "1", M_d: "N*m", gQ: "1", M_l: "N*m" },
    validity,
    source,
  },
  ({ gG, M_d, gQ, M_l }) => gG * M_d + gQ * M_l,
);

/** End shear or reaction of a combination. [N]. */
export const combinedForce = defineFormula(
  {
    id: "combination.force",
    title: "Force of the combination",
    symbol: "V",
    unit: "N",
    text: "gG * V_d + gQ * V_l",
    inputs: { gG: "1", V_d: "N", gQ: "1", V_l: "N" },
    validity,
    source,
  },
  ({ gG, V_d, gQ, V_l }) => gG * V_d + gQ * V_l,
);

/** Whether a combination takes the loads as they are: then its factors stay out of the working. */
export const isPlain = ({ dead, live }: Combination): boolean =>
  [0, 1].includes(dead) && [0, 1].includes(live);

/** Puts the factors of a combination into the working, with their clause. */
export function recordFactors({ id, title, dead, live, source: clause }: Combination, trace?: Trace): void {
  for (const [symbol, value, of] of [
    ["gG", dead, "dead load"],
    ["gQ", live, "live load"],
  ] as const)
    recordValue(trace, {
      id: `combination.${id}.${symbol}`,
      title: `Factor of the ${of}, ${title.toLowerCase()}`,
      symbol,
      value,
      unit: "1",
      source: clause,
      how: "as the clause gives it",
    });
}
