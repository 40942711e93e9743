import { shorten, type Problem } from "../formula/index.ts";
import type { Fastener, LumberSize, Tables } from "../materials/tables.ts";
import { feetInches } from "../units/index.ts";
import { sectionOf, type Section } from "./section.ts";
import type { Kit, SizeId } from "./types.ts";

/** The tables a recipe is held against. */
export type KitTables = Pick<Tables, "sizes" | "grades" | "strength_classes" | "fasteners" | "preservatives">;

/** A length as both kinds of reader know it. */
export const say = (mm: number): string => `${Number(mm.toFixed(1))} mm (${feetInches(mm / 1000)})`;

/** Collects the faults of one kit; every message names the place in the plan file and how to mend it. */
export interface Faults {
  readonly kit: Kit;
  readonly sizes: readonly LumberSize[];
  readonly problems: Problem[];
  readonly add: (
    code: string,
    place: string,
    value: unknown,
    message: string,
    mend: string,
    severity?: Problem["severity"],
  ) => void;
  /** The section, or null after reporting that the table lacks it. */
  readonly section: (place: string, size: SizeId) => Section | null;
  /** The section, or null without a report: for a fault that another line already names. */
  readonly known: (size: SizeId) => Section | null;
  /** A length or another number greater than 0 and at most `most`. */
  readonly positive: (place: string, value: number, title: string, most?: number) => boolean;
  readonly notNegative: (place: string, value: number, title: string) => boolean;
  readonly whole: (place: string, value: number, least: number, title: string) => boolean;
  /** Reports an unknown fastener, and a screw that does not bite deep enough behind `through_mm` of timber. */
  readonly fastener: (place: string, id: string, through_mm: number | null) => void;
}

/** A wood screw holds by its length in the main member: at least six diameters. AWC NDS (2018), wood screws, least penetration; from memory. */
const LEAST_BITE_IN_DIAMETERS = 6;

/** No part of a hand-carried walkway is longer, and no part has more pieces of a kind: a slip of the keyboard. */
export const LONGEST_MM = 20_000;
const MOST_PIECES = 200;

export function faultsOf(kit: Kit, tables: KitTables): Faults {
  const problems: Problem[] = [];
  const add: Faults["add"] = (code, place, value, message, mend, severity = "error") =>
    problems.push({
      code: `kit-${code}`,
      severity,
      file: "plan.json",
      place: `kit.${place}`,
      value: shorten(value),
      message,
      mend,
    });
  const number = (place: string, value: number, isFit: boolean, title: string, asked: string): boolean => {
    if (!isFit) add("number", place, value, `${title} must be ${asked}`, `Give ${asked}.`);
    return isFit;
  };
  return {
    kit,
    sizes: tables.sizes,
    problems,
    add,
    section: (place, size) => {
      if (tables.sizes.some((s) => s.id === size)) return sectionOf(tables.sizes, size);
      const known = tables.sizes.map((s) => s.id).join(", ");
      add("size", place, size, `lumber size "${size}" is not in the tables`, `Use one of: ${known}.`);
      return null;
    },
    known: (size) => (tables.sizes.some((s) => s.id === size) ? sectionOf(tables.sizes, size) : null),
    positive: (place, v, title, most = LONGEST_MM) =>
      number(place, v, v > 0 && v <= most, title, `a number greater than 0 and at most ${most}`),
    notNegative: (place, v, title) => number(place, v, Number.isFinite(v) && v >= 0, title, "0 or more"),
    whole: (place, v, least, title) =>
      number(
        place,
        v,
        Number.isInteger(v) && v >= least && v <= MOST_PIECES,
        title,
        `a whole number from ${least} to ${MOST_PIECES}`,
      ),
    fastener: (place, id, through) => fastenerFault(add, tables.fasteners, place, id, through),
  };
}

function fastenerFault(
  add: Faults["add"],
  fasteners: readonly Fastener[],
  place: string,
  id: string,
  through_mm: number | null,
): void {
  const row = fasteners.find((f) => f.id === id);
  if (!row) {
    const known = fasteners.map((f) => f.id).join(", ");
    add("fastener", place, id, `fastener "${id}" is not in the tables`, `Use one of: ${known}.`);
    return;
  }
  if (row.kind !== "wood-screw" || through_mm === null) return;
  const least = LEAST_BITE_IN_DIAMETERS * row.diameter_mm;
  if (row.length_mm - through_mm < least)
    add(
      "screw",
      place,
      id,
      `behind ${say(through_mm)} of timber the screw bites ${say(Math.max(0, row.length_mm - through_mm))}, less than six diameters (${say(least)})`,
      `Use a screw of at least ${say(through_mm + least)}.`,
      "warning",
    );
}
