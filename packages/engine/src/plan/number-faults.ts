import type { Problem } from "../formula/index.ts";
import { editProblem } from "./edit-problem.ts";

export interface Range {
  readonly least?: number;
  /** The value must be greater than this, not equal. */
  readonly above?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

export const isNotNegative: Range = { least: 0 };
export const isPositive: Range = { above: 0 };
export const isFinite: Range = {};

/** Holds the named numbers of an object against their ranges; one problem per fault, at `prefix` + name. */
export function numberFaults<T extends object>(
  prefix: string,
  object: T,
  ranges: Partial<Record<keyof T & string, Range>>,
): Problem[] {
  return Object.entries<Range | undefined>(ranges).flatMap(([key, range = isFinite]) => {
    const value: unknown = object[key as keyof T];
    const fault = rangeFault(value, range);
    return fault ? [editProblem(`${prefix}${key}`, value, fault, `Give ${rangeWords(range)}.`)] : [];
  });
}

function rangeFault(value: unknown, r: Range): string | null {
  if (typeof value !== "number" || !Number.isFinite(value)) return "must be a finite number";
  if (r.whole && !Number.isInteger(value)) return "must be a whole number";
  if (r.least !== undefined && value < r.least) return `must be at least ${r.least}`;
  if (r.above !== undefined && value <= r.above) return `must be more than ${r.above}`;
  if (r.most !== undefined && value > r.most) return `must be at most ${r.most}`;
  return null;
}

const rangeWords = (r: Range): string =>
  [
    r.whole ? "a whole number" : "a number",
    r.least === undefined ? "" : `of at least ${r.least}`,
    r.above === undefined ? "" : `above ${r.above}`,
    r.most === undefined ? "" : `of at most ${r.most}`,
  ]
    .filter((words) => words !== "")
    .join(" ");
