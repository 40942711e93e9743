import { checkFields, inputProblem, type Field, type Json, type JsonObject } from "./calculation.ts";
import type { Problem } from "./problem.ts";

/** Short forms of fields, for methods with many of them. Sizes are given a least value: none is zero. */
export const number = (key: string, title: string, min: number, max: number): Field => ({
  key,
  title,
  type: "number",
  min,
  max,
});
export const whole = (key: string, title: string, min: number, max: number): Field => ({
  ...number(key, title, min, max),
  type: "integer",
});
export const choice = (key: string, title: string, choices: readonly string[]): Field => ({
  key,
  title,
  type: "string",
  choices,
});
export const text = (key: string, title: string): Field => ({ key, title, type: "string" });
export const yes = (key: string, title: string): Field => ({ key, title, type: "boolean" });
export const list = (key: string, title: string): Field => ({ key, title, type: "array" });
export const figure = (key: string, title: string): Field => ({ key, title, type: "number" });
export const any = (key: string, title: string): Field => ({ key, title, type: "any" });
export const optional = (field: Field): Field => ({ ...field, optional: true });

const MM = 1000;
export const given = (input: JsonObject, key: string): number => input[key] as number;
export const metresOf = (input: JsonObject, key: string): number => given(input, key) / MM;
export const otherwise = <T extends Json>(input: JsonObject, key: string, value: T): T =>
  (input[key] as T | undefined) ?? value;

export type Read<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };
export const refuse = (place: string, value: unknown, message: string, mend: string): Problem =>
  inputProblem(place, value, message, mend);

const isObject = (v: Json): v is JsonObject => typeof v === "object" && v !== null && !Array.isArray(v);

/** One entry of a list, or what is wrong with it. `place` names the entry: "pieces[2]". */
export type ReadEntry<T> = (entry: JsonObject, place: string) => T | readonly Problem[];

/** Reads a list of objects, each against `fields` and then by `read`; every fault of every entry at once. */
export function readList<T extends object>(
  input: JsonObject,
  key: string,
  fields: readonly Field[],
  read: ReadEntry<T>,
): Read<readonly T[]> {
  const entries = (input[key] ?? []) as readonly Json[];
  if (entries.length === 0)
    return {
      ok: false,
      problems: [refuse(key, entries, "is an empty list", `Give "${key}" one entry at least.`)],
    };
  const problems: Problem[] = [];
  const values: T[] = [];
  entries.forEach((entry, i) => {
    const place = `${key}[${i}]`;
    const found = isObject(entry) ? checkFields(fields, entry) : [notAnObject(place, entry, fields)];
    problems.push(...found.map((p) => ({ ...p, place: p.place === place ? place : `${place}.${p.place}` })));
    if (found.length > 0) return;
    const value = read(entry as JsonObject, place);
    if (Array.isArray(value)) problems.push(...(value as readonly Problem[]));
    else values.push(value as T);
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: values };
}

const notAnObject = (place: string, entry: Json, fields: readonly Field[]): Problem =>
  refuse(place, entry, "must be an object", `Give it with ${fields.map((f) => f.key).join(", ")}.`);
