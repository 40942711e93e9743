import type { Unit } from "../units/index.ts";
import type { AnyFormula, Trace, TraceStep } from "./formula.ts";
import type { Problem } from "./problem.ts";
import type { Source } from "./source.ts";

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
export type JsonObject = { readonly [key: string]: Json };

/** One named input or output of a calculation. The unit stands in the key (`span_mm`). */
export interface Field {
  readonly key: string;
  readonly title: string;
  readonly type: "number" | "integer" | "string" | "boolean" | "array" | "object" | "any";
  readonly min?: number;
  readonly max?: number;
  readonly choices?: readonly string[];
  readonly optional?: boolean;
}

export type CalcOutcome =
  | { readonly ok: true; readonly outputs: JsonObject; readonly working: readonly TraceStep[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface Calculation<C = unknown> {
  readonly id: string;
  readonly title: string;
  readonly kind: "formula" | "method";
  readonly inputs: readonly Field[];
  readonly outputs: readonly Field[];
  readonly validity: string;
  readonly sources: readonly Source[];
  readonly run: (input: JsonObject, context: C) => CalcOutcome;
}

export const inputProblem = (place: string, value: unknown, message: string, mend: string): Problem => ({
  code: "input",
  severity: "error",
  file: "input",
  place,
  value: shorten(value),
  message,
  mend,
});

export function shorten(value: unknown, most = 80): string {
  const text = value === undefined ? "(nothing)" : typeof value === "string" ? value : JSON.stringify(value);
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}

/** Checks an input object against its fields and reports every fault at once. Unknown keys are faults too. */
export function checkFields(fields: readonly Field[], input: JsonObject): Problem[] {
  const problems: Problem[] = [];
  const known = new Set(fields.map((f) => f.key));
  for (const key of Object.keys(input)) {
    if (!known.has(key))
      problems.push(
        inputProblem(
          key,
          input[key],
          `"${key}" is not an input of this calculation`,
          `Remove it. Inputs: ${[...known].join(", ")}.`,
        ),
      );
  }
  for (const f of fields) {
    const v = input[f.key];
    if (v === undefined) {
      if (!f.optional)
        problems.push(
          inputProblem(f.key, undefined, `${f.title} is missing`, `Give "${f.key}" (${f.type}).`),
        );
      continue;
    }
    const fault = fieldFault(f, v);
    if (fault)
      problems.push(
        inputProblem(f.key, v, `${f.title}: ${fault}`, `Give "${f.key}" as ${f.type}${rangeText(f)}.`),
      );
  }
  return problems;
}

function fieldFault(f: Field, v: Json): string | null {
  switch (f.type) {
    case "any":
      return null;
    case "array":
      return Array.isArray(v) ? null : "must be a list";
    case "object":
      return typeof v === "object" && v !== null && !Array.isArray(v) ? null : "must be an object";
    case "integer":
    case "number":
      if (typeof v !== "number" || !Number.isFinite(v)) return "must be a number";
      if (f.type === "integer" && !Number.isInteger(v)) return "must be a whole number";
      if (f.min !== undefined && v < f.min) return `must be at least ${f.min}`;
      if (f.max !== undefined && v > f.max) return `must be at most ${f.max}`;
      return null;
    case "boolean":
      return typeof v === "boolean" ? null : "must be true or false";
    case "string":
      if (typeof v !== "string") return "must be text";
      return f.choices && !f.choices.includes(v) ? `must be one of ${f.choices.join(", ")}` : null;
  }
}

const rangeText = (f: Field): string =>
  (f.choices ? `, one of ${f.choices.join(", ")}` : "") +
  (f.min === undefined ? "" : `, at least ${f.min}`) +
  (f.max === undefined ? "" : `, at most ${f.max}`);

/** A method: a search, a solve or a fit. `run` is reached only with fields that passed `checkFields`. */
export function defineMethod<C>(
  spec: Omit<Calculation<C>, "kind" | "run">,
  run: (
    input: JsonObject,
    context: C,
    trace: Trace,
  ) => JsonObject | { readonly problems: readonly Problem[] },
): Calculation<C> {
  return {
    ...spec,
    kind: "method",
    run: (input, context) => {
      const problems = checkFields(spec.inputs, input);
      if (problems.length > 0) return { ok: false, problems };
      const working: Trace = [];
      const outputs = run(input, context, working);
      if ("problems" in outputs) return { ok: false, problems: outputs.problems as readonly Problem[] };
      return { ok: true, outputs, working };
    },
  };
}

/** The key suffix that carries a unit in JSON: `N*m` -> `n_m`, `kg/m3` -> `kg_per_m3`, `1` -> nothing. */
export const unitSuffix = (unit: Unit): string =>
  unit === "1" ? "" : `_${unit.toLowerCase().replaceAll("*", "_").replaceAll("/", "_per_")}`;

/** Shows a formula as a calculation: symbols become keys with their unit. */
export function formulaCalculation(formula: AnyFormula): Calculation {
  const { spec } = formula;
  const key = (symbol: string, unit: Unit): string => `${symbol}${unitSuffix(unit)}`;
  const symbols = Object.entries(spec.inputs);
  const inputs: Field[] = symbols.map(([s, u]) => ({ key: key(s, u), title: `${s} [${u}]`, type: "number" }));
  return {
    id: spec.id,
    title: spec.title,
    kind: "formula",
    inputs,
    outputs: [{ key: key(spec.symbol, spec.unit), title: `${spec.symbol} [${spec.unit}]`, type: "number" }],
    validity: spec.validity,
    sources: [spec.source],
    run: (input) => {
      const problems = checkFields(inputs, input);
      if (problems.length > 0) return { ok: false, problems };
      const args = Object.fromEntries(symbols.map(([s, u]) => [s, input[key(s, u)] as number]));
      const working: Trace = [];
      try {
        const value = formula(args as never, working);
        return { ok: true, outputs: { [key(spec.symbol, spec.unit)]: value }, working };
      } catch (error) {
        const message = error instanceof Error ? error.message : String(error);
        return {
          ok: false,
          problems: [
            inputProblem("input", args, `outside the formula's validity (${message})`, spec.validity),
          ],
        };
      }
    },
  };
}
