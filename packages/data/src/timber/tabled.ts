import type { Source } from "@causey/engine/formula";
import type { LumberGrade, Tabled } from "@causey/engine/materials";
import type { SourceId } from "../sources/index.ts";

/** A value of one printed table with the status it has here. */
export const tabled =
  (source: SourceId) =>
  (value: number, status: Source["status"]): Tabled => ({ value, source, status });

/** Turns a list of values by nominal width into a row: widths 2, 3 and 4 share "4", widths 5 and 6 share "6". */
export function byWidth(
  source: SourceId,
  status: Source["status"],
  values: readonly [w4: number, w6: number, w8: number, w10: number, w12: number],
): LumberGrade["fb_psi"] {
  const of = tabled(source);
  const [w4, w6, w8, w10, w12] = values;
  return {
    "4": of(w4, status),
    "6": of(w6, status),
    "8": of(w8, status),
    "10": of(w10, status),
    "12": of(w12, status),
  };
}
