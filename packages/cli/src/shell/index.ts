import { parseArgs, type ParseArgsConfig } from "node:util";
import type { Problem } from "@causey/engine/formula";

export { readGiven } from "./read-given.ts";
export { Stopped, writeOut } from "./write-out.ts";

/** Where a command writes. */
export interface Shell {
  readonly out: (text: string) => unknown;
  readonly error: (text: string) => unknown;
}

/** A command line that cannot be understood: printed as it is, exit code 2. */
export class UsageError extends Error {}

/** Someone asks how a command is written: the form is printed to standard output, exit code 0. */
export class FormAsked extends Error {}

type Options = NonNullable<ParseArgsConfig["options"]>;
/** Options as they were given, by name. */
export type Values = Readonly<Record<string, string | boolean | undefined>>;

/** The value of an option that takes one; undefined when it was not given. */
export const word = (values: Values, key: string): string | undefined => {
  const value = values[key];
  return typeof value === "string" ? value : undefined;
};

/**
 * Reads options and places; what is unknown or missing is a `UsageError` that shows the right form. "--help" and "-h"
 * among them throw `FormAsked` with it.
 */
export function readArgs(args: readonly string[], options: Options, places: readonly string[], form: string) {
  const beforeTheEnd = args.slice(0, args.includes("--") ? args.indexOf("--") : args.length);
  if (beforeTheEnd.some((arg) => arg === "--help" || arg === "-h")) throw new FormAsked(`Form: ${form}`);
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options,
      allowPositionals: true,
      strict: true,
    });
    if (positionals.length !== places.length)
      throw new Error(`give ${places.length === 0 ? "no places" : places.join(" and ")}`);
    return { values: values as Values, places: positionals };
  } catch (error) {
    throw new UsageError(`${error instanceof Error ? error.message : String(error)}\nForm: ${form}`, {
      cause: error,
    });
  }
}

/** One line a problem: file, place, what stands there, what is wrong, how to mend it. */
export function problemLines(problems: readonly Problem[]): string {
  return problems
    .map(
      (p) =>
        `${p.severity === "error" ? "error" : "note"}  ${p.file}, ${p.place}${p.value ? ` (${p.value})` : ""}: ${p.message} ${p.mend}`,
    )
    .join("\n");
}

/** "1 problem, 7 notes": what stands in the way counted apart from what is only worth a look; empty for neither. */
export function problemTally(problems: readonly Problem[]): string {
  const errors = problems.filter((p) => p.severity === "error").length;
  const counted = (n: number, one: string): string[] =>
    n === 0 ? [] : [`${n} ${n === 1 ? one : `${one}s`}`];
  return [...counted(errors, "problem"), ...counted(problems.length - errors, "note")].join(", ");
}
