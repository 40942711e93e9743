import type { Calculation } from "@causey/engine/formula";
import type { CalcDesk } from "./options.ts";

/** The desk over a list of calculations and what they may use. */
export function calcDesk<C>(calculations: readonly Calculation<C>[], context: C): CalcDesk {
  const byId = new Map(calculations.map((calculation) => [calculation.id, calculation]));
  return {
    list: () =>
      calculations.map(({ id, title, kind, inputs, outputs, sources }) => ({
        id,
        title,
        kind,
        inputs,
        outputs,
        sources,
      })),
    run: (id, input) => byId.get(id)?.run(input, context) ?? null,
  };
}
