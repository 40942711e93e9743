import {
  defineMethod,
  type Calculation,
  type Field,
  type JsonObject,
  type Problem,
  type Source,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import type { CheckContext } from "./input.ts";
import { codeField, contextFrom, unitsField } from "./method-fields.ts";
import { outputsOf } from "./result.ts";
import type { CheckResult } from "./types.ts";

const ORDER = ["fail", "cannot-check", "pass", "not-applicable"] as const;

/** The status to act on first: a failure before what cannot be checked, that before a pass. */
const worstStatus = (results: readonly CheckResult[]): string =>
  ORDER.find((status) => results.some((r) => r.status === status)) ?? "not-applicable";

export interface CheckMethod {
  readonly id: string;
  readonly title: string;
  readonly inputs: readonly Field[];
  readonly validity: string;
  readonly sources: readonly Source[];
}

/** A check with several results as one registered calculation: the worst status, and each result with its figures. */
export const checkMethod = (
  spec: CheckMethod,
  run: (
    input: JsonObject,
    context: CheckContext,
  ) => readonly CheckResult[] | { readonly problems: readonly Problem[] },
): Calculation<CalcContext> =>
  defineMethod<CalcContext>(
    {
      ...spec,
      inputs: [codeField, ...spec.inputs, unitsField],
      outputs: [
        {
          key: "status",
          title: "Worst of the results: fail, cannot-check, pass or not-applicable",
          type: "string",
        },
        {
          key: "results",
          title: "Each result with demand, capacity, utilisation, what it carries and the smallest change",
          type: "array",
        },
      ],
    },
    (input, context, trace) => {
      const found = contextFrom(input, context);
      if (!found.ok) return { problems: found.problems };
      const results = run(input, found.value);
      if ("problems" in results) return results;
      for (const r of results) if ("working" in r) trace.push(...r.working);
      return {
        status: worstStatus(results),
        results: results.map((r) => ({ id: r.id, title: r.title, ...outputsOf(r) })),
      };
    },
  );
