import type { Source, Trace } from "../formula/index.ts";
import { DomainError, type Qty, type Unit } from "../units/index.ts";

export type CheckKind =
  | "stringer-bending"
  | "stringer-shear"
  | "stringer-deflection"
  | "cross-piece"
  | "deck"
  | "seat"
  | "bearing"
  | "uplift"
  | "lifting"
  | "platform"
  | "damage"
  | "supports"
  | "fastening"
  | "feel"
  | "handling"
  | "settling"
  | "plot"
  | "flood"
  | "anchor"
  | "cold"
  | RuleCheckKind;

/** Checks against the plan's rule profile, and those that rules of the place ask for. */
export type RuleCheckKind =
  | "edge"
  | "opening"
  | "grade"
  | "width"
  | "cart"
  | "setback"
  | "tipping"
  | "pairing"
  | "deck-rule"
  | "public-span";

export interface CheckBase {
  readonly id: string;
  readonly kind: CheckKind;
  readonly title: string;
  /** Tags of all parts or joints with these very inputs: identical parts share one result. */
  readonly parts: readonly string[];
  readonly rule: Source;
  readonly caution: string;
}

/** What a part does carry and the smallest change that would pass: never a dead end. */
export interface Backwards {
  readonly carries: string;
  /** Null when the check passes with what was asked. */
  readonly change: string | null;
}

export type CheckResult = CheckBase &
  (
    | {
        readonly status: "pass" | "fail";
        readonly demand: number;
        readonly capacity: number;
        readonly unit: Unit;
        readonly utilisation: number;
        /** The load case and position that governs, in words. */
        readonly governs: string;
        readonly working: Trace;
        readonly backwards: Backwards;
        /** True when any value of the working is from memory: shown as "from memory, confirm". */
        readonly from_memory: boolean;
      }
    | { readonly status: "not-applicable"; readonly because: string }
    | { readonly status: "cannot-check"; readonly missing: readonly string[] }
  );

/** Utilisation of what has no capacity, or next to none: a finite figure for every table and file. */
const BEYOND = 1e9;

/** The ratio decides the status, so the two can never disagree. Throws `DomainError` on a negative demand. */
export function judge<U extends Unit>(
  base: CheckBase,
  unit: U,
  demand: Qty<U>,
  capacity: Qty<U>,
  governs: string,
  working: Trace,
  backwards: Backwards,
): CheckResult {
  if (demand < 0) throw new DomainError("negative-demand", { check: base.id, demand });
  const utilisation = capacity > 0 ? Math.min(demand / capacity, BEYOND) : demand === 0 ? 0 : BEYOND;
  return {
    ...base,
    status: utilisation <= 1 ? "pass" : "fail",
    demand,
    capacity,
    unit,
    utilisation,
    governs,
    working,
    backwards,
    from_memory: working.some((s) => s.source.status === "memory") || base.rule.status === "memory",
  };
}
