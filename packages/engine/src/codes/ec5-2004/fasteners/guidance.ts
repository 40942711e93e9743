import { recordValue, type Trace } from "../../../formula/index.ts";
import type { FastenerJoint, GuidanceRow } from "../../fastener-contract.ts";
import { metalRows } from "../../fastener-metals.ts";
import { isThick } from "./dowel.ts";
import { clause } from "./sources.ts";

type Rule = readonly [what: string, times: number];
const words = {
  row: "Between fasteners along the grain",
  rows: "Between fasteners across the grain",
  loaded_end: "End distance, load towards the end",
  free_end: "End distance, load away from the end",
  loaded_edge: "Edge distance, load towards the edge",
  free_edge: "Edge distance, load away from the edge",
} as const;

const list = (
  a1: number,
  a2: number,
  a3t: number,
  a3c: number,
  a4t: number,
  a4c: number,
): readonly Rule[] => [
  [words.row, a1],
  [words.rows, a2],
  [words.loaded_end, a3t],
  [words.free_end, a3c],
  [words.loaded_edge, a4t],
  [words.free_edge, a4c],
];

/** The largest of each distance over all directions of the load. */
function thin({ fastener: f, predrilled, main, side }: FastenerJoint): readonly Rule[] {
  const isStout = f.diameter_mm >= 5;
  if (predrilled === true) return list(5, 4, 12, 7, isStout ? 7 : 5, 3);
  const rho = Math.max(main.density_k ?? 0, side.material === "wood" ? (side.density_k ?? 0) : 0);
  if (rho > 420) return list(15, 7, 20, 15, isStout ? 12 : 9, 7);
  return list(isStout ? 12 : 10, 5, 15, 10, isStout ? 10 : 7, 5);
}

/** Least thickness of a timber that is nailed without boring, so that it does not split. */
function splitRow({ fastener: f, predrilled, main, side }: FastenerJoint): GuidanceRow[] {
  if (predrilled === true || isThick(f)) return [];
  const rho = Math.max(main.density_k ?? 0, side.material === "wood" ? (side.density_k ?? 0) : 0);
  const d = f.diameter_mm;
  const size_m = Math.max(7 * d, ((13 * d - 30) * rho) / 400) / 1000;
  return [
    {
      what: "Least thickness of timber nailed without boring",
      size_m,
      how: "the larger of 7 d and (13 d - 30) rho / 400",
      source: clause("equation 8.18"),
    },
  ];
}

function holes({ fastener: f }: FastenerJoint): GuidanceRow[] {
  const [size_m, how] =
    f.kind === "nail"
      ? [(0.8 * f.diameter_mm) / 1000, "at most 0.8 d"]
      : [
          ((f.root_mm ?? 0.7 * f.diameter_mm) * 0.9) / 1000,
          "thread: 0.9 of the root; the smooth shank gets its own diameter",
        ];
  return [{ what: "Bored hole", size_m, how, source: clause("8.3.1.1 and 10.4.5") }];
}

/** Distances, holes and metals for the one who builds the joint; from memory, each with its rule. */
export function ec5Guidance(joint: FastenerJoint, trace?: Trace): readonly GuidanceRow[] {
  const { fastener: f } = joint;
  const rules = isThick(f) ? list(5, 4, 7, 4, 4, 3) : thin(joint);
  const source = clause(isThick(f) ? "Table 8.4; the end at least 80 mm" : "Table 8.2");
  const distances = rules.map(([what, times]): GuidanceRow => {
    const least = isThick(f) && what === words.loaded_end ? 0.08 : 0;
    return { what, size_m: Math.max(least, (times * f.diameter_mm) / 1000), how: `${times} d`, source };
  });
  const rows = [...distances, ...splitRow(joint), ...holes(joint)];
  for (const { what, size_m, how, source: from } of rows)
    if (size_m !== null)
      recordValue(trace, {
        id: "ec5-2004.fastener.distance",
        title: what,
        symbol: "a",
        value: size_m,
        unit: "m",
        source: from,
        how,
      });
  return [...rows, ...metalRows(joint)];
}
