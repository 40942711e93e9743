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

type Options = NonNullable<ParseArgsConfig["options"]>;

/** Reads options and places; what is unknown or missing is a `UsageError` that shows the right form. */
export function readArgs(args: readonly string[], options: Options, places: readonly string[], form: string) {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options,
      allowPositionals: true,
      strict: true,
    });
    if (positionals.length !== places.length)
      throw new Error(`give ${places.length === 0 ? "no places" : places.join(" and ")}`);
    return { values: values as Readonly<Record<string, string | boolean | undefined>>, places: positionals };
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
