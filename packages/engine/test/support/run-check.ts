import { tables } from "@causey/data/tables";
import { checkCalculations } from "../../src/checks/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";

/** Runs a registered calculation of the checks with the project's tables; throws its problems. */
export function runCheck(id: string, input: JsonObject): JsonObject {
  const outcome = checkCalculations.find((c) => c.id === id)!.run(input, { tables });
  if (!outcome.ok) throw new Error(outcome.problems.map((p) => `${p.place}: ${p.message}`).join("; "));
  return outcome.outputs;
}
