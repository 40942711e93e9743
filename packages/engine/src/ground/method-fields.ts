import {
  defineMethod,
  inputProblem,
  type Calculation,
  type Field,
  type Json,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import { DomainError } from "../units/index.ts";
import { bekkerGround, type BekkerGround } from "./sinkage.ts";
import type { GroundContext, GroundTables } from "./types.ts";

export const number = (key: string, title: string, min: number, max: number): Field => ({
  key,
  title,
  type: "number",
  min,
  max,
});
export const optional = (field: Field): Field => ({ ...field, optional: true });
export const output = (key: string, title: string, type: Field["type"] = "any"): Field => ({
  key,
  title,
  type,
});

/** Largest foot, load, depth and strength that make sense for a walkway: what lies beyond is a slip of units. */
export const side = (key: string, title: string): Field => number(key, title, 1, 20_000);
export const strength = (key: string, title: string): Field => number(key, title, 10, 500_000);

export type Refusal = { readonly problems: readonly Problem[] };
export type Answer = JsonObject | Refusal;
export const refused = (...problems: Problem[]): Refusal => ({ problems });
export const isRefusal = (v: unknown): v is Refusal => typeof v === "object" && v !== null && "problems" in v;

/**
 * A method of this topic. A formula that leaves its range for want of sense in the numbers becomes a problem with the
 * method's own limits, never a broken figure.
 */
export const groundMethod = (
  spec: Omit<Calculation<GroundContext>, "kind" | "run">,
  run: (input: JsonObject, context: GroundContext, trace: Trace) => Answer,
): Calculation<GroundContext> =>
  defineMethod<GroundContext>(spec, (input, context, trace) => {
    try {
      return run(input, context, trace);
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      return refused(
        inputProblem("input", input, `outside the method's range (${error.code})`, spec.validity),
      );
    }
  });

/** A number of the input, or null where it was left out. */
export const numberOf = (input: JsonObject, key: string): number | null =>
  (input[key] as number | undefined) ?? null;

/** Millimetres of the input as metres. */
export const metresOf = (input: JsonObject, key: string): number => (input[key] as number) / 1000;

/** Reads a list of objects with the given fields; every fault at once, with its place in the list. */
export function rowsOf(
  key: string,
  list: readonly Json[],
  fields: readonly Field[],
  most: number,
): readonly JsonObject[] | Refusal {
  if (list.length > most)
    return refused(inputProblem(key, list.length, `has more than ${most} rows`, `Give ${most} at most.`));
  const problems: Problem[] = [];
  list.forEach((row, i) => {
    const place = `${key}[${i}]`;
    if (typeof row !== "object" || row === null || Array.isArray(row)) {
      const keys = fields.map((f) => f.key).join(", ");
      problems.push(inputProblem(place, row, "must be an object", `Give it as { ${keys} }.`));
    } else problems.push(...rowProblems(place, row as JsonObject, fields));
  });
  return problems.length > 0 ? { problems } : (list as readonly JsonObject[]);
}

function rowProblems(place: string, row: JsonObject, fields: readonly Field[]): Problem[] {
  return fields.flatMap((f) => {
    const v = row[f.key];
    const at = `${place}.${f.key}`;
    if (v === undefined || v === null)
      return f.optional ? [] : [inputProblem(at, v, `${f.title} is missing`, `Give ${at}.`)];
    if (f.type === "string")
      return typeof v === "string" ? [] : [inputProblem(at, v, "must be text", `Give ${at} as text.`)];
    const isFine = typeof v === "number" && v >= (f.min ?? -Infinity) && v <= (f.max ?? Infinity);
    const range = `between ${f.min} and ${f.max}`;
    return isFine
      ? []
      : [inputProblem(at, v, `${f.title} must be a number ${range}`, `Give ${at} ${range}.`)];
  });
}

/** The three numbers of the sinkage law, or the name of a terrain that has them. */
export const terrainFields: readonly Field[] = [
  { key: "terrain", title: "Terrain of the table, by id", type: "string", optional: true },
  optional(number("kc_n_per_m", "kc, pressure at one metre [N/m]", -1e9, 1e9)),
  optional(number("kphi_pa", "kphi, pressure at one metre", -1e10, 1e10)),
  optional(number("n", "Exponent of the sinkage law", 0.02, 4)),
];

/** The law that an input names; null where it names none; every fault as a problem. */
export function groundFrom(input: JsonObject, { terrains }: GroundTables): BekkerGround | null | Refusal {
  const own = (["kc_n_per_m", "kphi_pa", "n"] as const).filter((key) => input[key] !== undefined);
  const id = input["terrain"] as string | undefined;
  if (id !== undefined) {
    if (own.length > 0)
      return refused(
        inputProblem("terrain", id, "stands beside own values", `Give the terrain or ${own.join(", ")}.`),
      );
    const row = terrains.find((t) => t.id === id);
    const ids = terrains.map((t) => t.id).join(", ");
    return row
      ? bekkerGround(row)
      : refused(inputProblem("terrain", id, "is not in the table", `Give one of ${ids}.`));
  }
  if (own.length === 0) return null;
  if (own.length < 3)
    return refused(inputProblem("kc_n_per_m", own, "kc, kphi and n belong together", "Give all three."));
  const [kc, kphi, n] = ["kc_n_per_m", "kphi_pa", "n"].map((key) => input[key] as number);
  return bekkerGround({ kc_kn: kc! / 1000, kphi_kn: kphi! / 1000, n: n! });
}
