import { recordValue, type Trace } from "../formula/index.ts";
import type { HoleRow } from "../materials/index.ts";
import { qty, type Qty } from "../units/index.ts";

/** A hole that holds all that the code says. */
export const freshHole: HoleRow = {
  id: "fresh",
  name: "Fresh hole",
  lateral: 1,
  withdrawal: 1,
  source: "causey-holes",
  status: "project",
};

/** The table's share for a hole that is not new, as a step of the working. */
export function holeShare(
  { hole }: { readonly hole: HoleRow },
  way: "lateral" | "withdrawal",
  trace?: Trace,
): Qty<"1"> {
  const value = qty(hole[way], "1");
  if (value !== 1)
    recordValue(trace, {
      id: `fastener.hole.${hole.id}.${way}`,
      title: `${hole.name}: share of the hold in a fresh hole`,
      symbol: "C_h",
      value,
      unit: "1",
      source: { id: hole.source, title: "Project decision on used screw holes", status: hole.status },
      how: "as tabulated",
    });
  return value;
}
