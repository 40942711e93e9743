import { defineConstant, defineFormula, type Source } from "../formula/index.ts";
import { poorGrip } from "./niosh.ts";

const sharing: Source = {
  id: "causey-lifting",
  title: "Project decision on lifting a module",
  at: "even shares of the mass, and of the pull by which mud holds it",
  status: "project",
};
const coupling = (name: string, value: number) =>
  defineConstant(`lifting.grip-${name}`, `Coupling multiplier, ${name} grip`, "CM", value, "1", {
    id: "niosh-94-110",
    title: "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation (rev. 2021)",
    at: `coupling multiplier, ${name}`,
    status: "memory",
  });

/** By the hold: handles, edges to grip, or neither. */
export const grips = { good: coupling("good", 1), fair: coupling("fair", 0.95), poor: poorGrip } as const;

/** What one carrier lifts. m [kg], P_s pull of the mud [N], n carriers [1]; m_1 [kg]. */
export const carrierShare = defineFormula(
  {
    id: "lifting.share",
    title: "What one carrier lifts",
    symbol: "m_1",
    unit: "kg",
    text: "(m + P_s / 9.80665) / n",
    inputs: { m: "kg", P_s: "N", n: "1" },
    validity: "Even shares; the pull lasts until the module is free.",
    source: sharing,
  },
  ({ m, P_s, n }) => (m + P_s / 9.80665) / n,
);

/** Lifting index: over 1 some carriers, over 3 most are at risk. m_1, RWL [kg]; LI [1]. */
export const liftingIndex = defineFormula(
  {
    id: "lifting.index",
    title: "Lifting index",
    symbol: "LI",
    unit: "1",
    text: "m_1 / RWL",
    inputs: { m_1: "kg", RWL: "kg" },
    validity: "RWL > 0.",
    source: {
      id: "niosh-94-110",
      title: "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation (rev. 2021)",
      at: "LI = L / RWL",
      status: "memory",
    },
  },
  ({ m_1, RWL }) => m_1 / RWL,
);

export const peopleLiftFormulas = [grips.good, grips.fair, carrierShare, liftingIndex] as const;
