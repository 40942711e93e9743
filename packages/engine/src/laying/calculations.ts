import {
  defineMethod,
  formulaCalculation,
  type AnyFormula,
  type Calculation,
  type JsonObject,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/context.ts";
import { layingHours, longCarryShare, removalHours } from "./crew-hours.ts";
import { labourHours } from "./labour.ts";

const hours = ["low_h", "mid_h", "high_h"] as const;

const labourMethod = defineMethod<CalcContext>(
  {
    id: "laying.labour",
    title: "Person-hours to lay a walkway and to take it out again, as a range",
    inputs: [
      { key: "length_m", title: "Length of walkway", type: "number", min: 0 },
      { key: "carry_m", title: "Carry from the landing to the work", type: "number", min: 0 },
      {
        key: "removal_share",
        title: "Removal as a share of the laying hours",
        type: "number",
        min: 0,
        max: 5,
      },
    ],
    outputs: ["laying", "removal"].flatMap((work) =>
      hours.map((h) => ({ key: `${work}_${h}`, title: `${work}, person-hours`, type: "number" as const })),
    ),
    validity: "Small crews, ready-made modules, firm to wet ground; rates from few published work days.",
    sources: [layingHours.spec.source, longCarryShare.spec.source],
  },
  (input, context, trace): JsonObject => {
    const lines = labourHours(
      {
        length_m: input["length_m"] as number,
        carry_m: input["carry_m"] as number,
        removal_share: input["removal_share"] as number,
      },
      context.tables.labour,
      trace,
    );
    return Object.fromEntries(
      lines.flatMap((line) => hours.map((h) => [`${line.work}_${h}`, line[h]] as const)),
    );
  },
);

export const layingFormulas: readonly AnyFormula[] = [longCarryShare, layingHours, removalHours];

/** Registered calculations of laying: the formulas and the range method. */
export const layingCalculations: readonly Calculation<CalcContext>[] = [
  ...layingFormulas.map(formulaCalculation),
  labourMethod,
];
