import { inputProblem, type Field, type JsonObject, type Problem } from "../formula/index.ts";
import type { Found } from "../codes/index.ts";

/** A field that names a row of a table. */
export interface RowField<T extends { readonly id: string }> {
  readonly key: string;
  readonly rows: readonly T[];
}

/** Finds the named row; null when none is named. An unknown id is a problem that lists the known ones. */
export function namedRow<T extends { readonly id: string }>(
  input: JsonObject,
  { key, rows }: RowField<T>,
): Found<T | null> {
  const id = input[key];
  if (id === undefined) return { ok: true, value: null };
  const value = rows.find((row) => row.id === id);
  if (value) return { ok: true, value };
  const known = rows.map((row) => row.id).join(", ");
  return { ok: false, problems: [inputProblem(key, id, "is not in the table", `Use one of: ${known}.`)] };
}

/** A row and the sizes it holds exclude one another; without a row every size must be given. */
export function rowOrSizes(input: JsonObject, key: string, sizes: readonly Field[]): Problem[] {
  const named = input[key];
  if (named !== undefined)
    return sizes
      .filter((f) => input[f.key] !== undefined)
      .map((f) =>
        inputProblem(
          f.key,
          input[f.key],
          `stands beside "${key}", whose row holds it`,
          `Remove "${f.key}" or "${key}".`,
        ),
      );
  return sizes
    .filter((f) => input[f.key] === undefined)
    .map((f) => inputProblem(f.key, undefined, `${f.title} is missing`, `Give "${f.key}", or "${key}".`));
}

/** Inputs that go together: all or none. */
export function togetherOrNone(input: JsonObject, keys: readonly string[]): Problem[] {
  const absent = keys.filter((key) => input[key] === undefined);
  if (absent.length === 0 || absent.length === keys.length) return [];
  const there = keys.filter((key) => input[key] !== undefined).join(", ");
  return absent.map((key) =>
    inputProblem(key, undefined, `is missing beside ${there}`, `Give "${key}" too.`),
  );
}
