import { inputProblem, type Json, type JsonObject, type Problem } from "../formula/index.ts";

/** Reads a list of objects whose named entries are finite numbers, or null where `optional`; every fault at once. */
export function readRows<N extends string, O extends string>(
  key: string,
  json: Json | undefined,
  needed: readonly N[],
  optional: readonly O[],
): { readonly rows: readonly RowOf<N, O>[] } | { readonly problems: readonly Problem[] } {
  const list = Array.isArray(json) ? (json as readonly Json[]) : [];
  const problems: Problem[] = [];
  const rows = list.map((row, i) => {
    const entry = isObject(row) ? row : {};
    const fault = (name: string, words: string): number => {
      const place = `${key}[${i}].${name}`;
      problems.push(inputProblem(place, entry[name], `"${name}" ${words}`, `Give ${place} as a number.`));
      return 0;
    };
    const number = (name: string, mayLack: boolean): number | null => {
      const v = entry[name] ?? null;
      if (typeof v === "number" && Number.isFinite(v)) return v;
      return v === null && mayLack ? null : fault(name, "must be a number");
    };
    return Object.fromEntries([
      ...needed.map((name) => [name, number(name, false)]),
      ...optional.map((name) => [name, number(name, true)]),
    ]) as RowOf<N, O>;
  });
  return problems.length > 0 ? { problems } : { rows };
}

export type RowOf<N extends string, O extends string> = { readonly [K in N]: number } & {
  readonly [K in O]: number | null;
};

const isObject = (v: Json | undefined): v is JsonObject =>
  typeof v === "object" && v !== null && !Array.isArray(v);
