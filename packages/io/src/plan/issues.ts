import type { Json } from "@causey/engine/formula";
import type { Findings } from "../problem/index.ts";
import { z } from "./zod.ts";

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** A path as the file shows it: `visits[0].people`. */
export const jsonPath = (path: Path): string =>
  path.reduce<string>(
    (text, step) =>
      typeof step === "number" ? `${text}[${step}]` : text === "" ? String(step) : `${text}.${String(step)}`,
    "",
  ) || "document";

/** Turns what the schema found into problems that say what stands there and what to write. */
export function reportIssues(found: Findings, root: Json, issues: readonly Issue[]): void {
  for (const issue of issues) {
    const value = valueAt(root, issue.path);
    const { message, mend } = words(issue, value);
    found.error({ code: "plan-schema", place: jsonPath(issue.path), value, message, mend });
  }
}

function valueAt(root: Json, path: Path): Json | undefined {
  let value: Json | undefined = root;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Readonly<Record<PropertyKey, Json>>)[step];
  }
  return value;
}

/** What an issue is about: a key, or an entry of a list by its place, counted from one. */
function subject(path: Path): string {
  const [list, last] = [path.at(-2), path.at(-1)];
  if (typeof last !== "number") return `"${String(last ?? "document")}"`;
  return list === undefined ? `Entry ${last + 1}` : `Entry ${last + 1} of "${String(list)}"`;
}

interface Words {
  readonly message: string;
  readonly mend: string;
}

function words(issue: Issue, value: Json | undefined): Words {
  const key = subject(issue.path);
  if (value === undefined && issue.code !== "unrecognized_keys")
    return {
      message: `${key} is missing.`,
      mend: `Add ${key}: ${isDay(issue.path.at(-1)) ? A_DAY : wanted(issue)}.`,
    };
  switch (issue.code) {
    case "unrecognized_keys": {
      const keys = issue.keys.map((k) => JSON.stringify(k)).join(", ");
      return {
        message: `${keys} ${issue.keys.length > 1 ? "are" : "is"} not known here.`,
        mend: "Check the spelling, or take it out: what is not known would have no effect.",
      };
    }
    case "invalid_union":
      return { message: `${key} has none of the forms it may have.`, mend: `Write ${wanted(issue)}.` };
    default:
      return { message: `${key} must be ${wanted(issue)}.`, mend: `Write ${wanted(issue)}.` };
  }
}

/** What the schema wants, in words; the last case is the schema's own message for rules written with one. */
function wanted(issue: Issue): string {
  switch (issue.code) {
    case "invalid_type":
      return TYPES[issue.expected] ?? issue.expected;
    case "invalid_value":
      return choices(issue.values);
    case "too_small":
      return bound(issue.origin, issue.inclusive === false ? "more than" : "at least", issue.minimum);
    case "too_big":
      return bound(issue.origin, issue.inclusive === false ? "less than" : "at most", issue.maximum);
    case "invalid_format":
      return issue.format === "date" ? A_DAY : issue.message;
    case "invalid_union":
      return unionForms(issue);
    default:
      return issue.message;
  }
}

const A_DAY = 'a day of the calendar such as "2027-04-30"';
/** Entries of a plan that are days: a missing one is asked for as such. */
const isDay = (key: PropertyKey | undefined): boolean => /^(from|to|by)$/.test(String(key));

const TYPES: Readonly<Record<string, string>> = {
  string: "a text in double quotes",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list in square brackets",
  object: "an object in curly brackets",
};

const choices = (values: readonly unknown[]): string =>
  values.length === 1
    ? JSON.stringify(values[0])
    : `one of ${values.map((v) => JSON.stringify(v)).join(", ")}`;

function bound(origin: string, relation: string, limit: number | bigint): string {
  if (origin === "array") return `a list with ${relation} ${limit} entries`;
  if (origin === "string") return `a text of ${relation} ${limit} characters`;
  return `a number of ${relation} ${limit}`;
}

/** A choice by "kind" lists the kinds; the only other union of the plan is its coordinate system. */
function unionForms(issue: Issue & { code: "invalid_union" }): string {
  const kinds = KINDS[String(issue.path.at(-2) ?? "")];
  if (issue.path.at(-1) === "kind" && kinds !== undefined) return choices(kinds);
  return '{"epsg": 27700} with the code of a projected system in metres, or {"local": "name of the grid"}';
}

const KINDS: Readonly<Record<string, readonly string[]>> = {
  end: ["catch-board", "plain"],
  deck: ["boards", "mesh"],
};
