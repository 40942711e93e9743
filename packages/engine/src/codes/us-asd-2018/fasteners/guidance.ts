import { recordValue, type Source, type Trace } from "../../../formula/index.ts";
import type { FastenerJoint, GuidanceRow } from "../../fastener-contract.ts";
import { metalRows } from "../../fastener-metals.ts";
import { nds } from "../sources.ts";
import { isThick } from "./bearing.ts";

const spaced = nds("12.1.5 and 12.1.6, commentary table of nail and screw distances", "memory");
const thickSpaced = nds("Tables 12.5.1A to 12.5.1D", "memory");
const holes = nds("12.1.4 to 12.1.6, lead holes", "memory");

type Rule = readonly [what: string, times: number, source: Source];

const thin = (isBored: boolean): readonly Rule[] => [
  ["End distance, load towards the end", isBored ? 10 : 15, spaced],
  ["End distance, load away from the end", isBored ? 5 : 10, spaced],
  ["Edge distance", 2.5, spaced],
  ["Between fasteners in a row along the grain", isBored ? 10 : 15, spaced],
  ["Between fasteners across the grain", isBored ? 5 : 10, spaced],
  ["Between rows", isBored ? 3 : 5, spaced],
];

const thick: readonly Rule[] = [
  ["End distance, load towards the end", 7, thickSpaced],
  ["End distance, load away from the end", 4, thickSpaced],
  ["Edge distance, load along the grain", 1.5, thickSpaced],
  ["Edge distance, load towards the edge", 4, thickSpaced],
  ["Between fasteners in a row", 4, thickSpaced],
  ["Between rows along the grain", 1.5, thickSpaced],
];

/** Share of the diameter that a lead hole may have, by the density of the wood. */
function leadHoles({ fastener: f, main }: FastenerJoint): readonly Rule[] {
  const isHard = (main.gravity ?? 0) > 0.6;
  if (f.kind === "nail") return [["Lead hole, at most, of the shank", isHard ? 0.9 : 0.75, holes]];
  const root = (f.root_mm ?? f.diameter_mm) / f.diameter_mm;
  if (f.kind === "wood-screw") {
    const dense: readonly Rule[] = [
      ["Lead hole for the shank", 1, holes],
      ["Lead hole for the thread", root, holes],
    ];
    return isHard
      ? dense
      : [
          ["Lead hole for the shank", 0.875, holes],
          ["Lead hole for the thread", 0.875 * root, holes],
          ["Lead hole for pull along the screw", 0.7 * root, holes],
        ];
  }
  const share = isHard ? 0.75 : (main.gravity ?? 0) > 0.5 ? 0.675 : 0.55;
  return [
    ["Clearance hole for the shank", 1, holes],
    ["Lead hole for the thread, middle of the range", share, holes],
  ];
}

/** Distances, lead holes and metals for the one who builds the joint; from memory, each with its rule. */
export function usGuidance(joint: FastenerJoint, trace?: Trace): readonly GuidanceRow[] {
  const D = joint.fastener.diameter_mm / 1000;
  const distances = isThick(D) ? thick : thin(joint.predrilled === true);
  const rows = [...distances, ...leadHoles(joint)].map(([what, times, source]) => ({
    what,
    size_m: times * D,
    how: `${Number(times.toFixed(3))} D`,
    source,
  }));
  for (const { what, size_m, how, source } of rows)
    recordValue(trace, {
      id: "us-asd-2018.fastener.distance",
      title: what,
      symbol: "a",
      value: size_m,
      unit: "m",
      source,
      how,
    });
  return [...rows, ...metalRows(joint)];
}
