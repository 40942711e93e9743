import { tables } from "@causey/data/tables";
import { checkCalculations } from "../../src/checks/index.ts";
import { codeCalculations, type DesignCode } from "../../src/codes/index.ts";
import type { JsonObject, TraceStep } from "../../src/formula/index.ts";

export interface OrdinaryWood {
  readonly species: string;
  readonly grade: string;
  /** Of one thickness, rising. */
  readonly sizes: readonly [string, string, string, string];
  readonly board: string;
}

/** An ordinary wood of each design code, with sizes of its yard. */
const woods: Readonly<Record<string, OrdinaryWood>> = {
  "us-asd-2018": {
    species: "southern-pine",
    grade: "no2",
    sizes: ["2x4", "2x6", "2x8", "2x10"],
    board: "5/4x6",
  },
  "ec5-2004": {
    species: "softwood",
    grade: "c24",
    sizes: ["45x95", "45x145", "45x195", "45x220"],
    board: "28x145",
  },
};

export function ordinaryWood({ id }: DesignCode): OrdinaryWood {
  const wood = woods[id];
  if (!wood) throw new Error(`no ordinary wood for the code ${id}: add one`);
  return wood;
}

/** Runs a registered calculation of codes or checks; its problems are an error. */
export function runCalculation(
  id: string,
  input: JsonObject,
): { readonly outputs: JsonObject; readonly working: readonly TraceStep[] } {
  const outcome = [...codeCalculations, ...checkCalculations]
    .find((c) => c.id === id)!
    .run(input, { tables });
  if (!outcome.ok) throw new Error(`${id}: ${JSON.stringify(outcome.problems)}`);
  return outcome;
}
