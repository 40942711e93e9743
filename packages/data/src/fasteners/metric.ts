import type { Coating, Fastener } from "@causey/engine/materials";
import { coatingWords, idEnd } from "./names.ts";

type Size = readonly [diameter_mm: number, length_mm: number];

function nail([d, l]: Size, shank: "smooth" | "ring", coating: Coating = "hot-dip-zinc"): Fastener {
  const name = shank === "ring" ? "Ring-shank nail" : "Round nail";
  return {
    id: `${shank === "ring" ? "ring-nail" : "nail"}-${d}x${l}${idEnd[coating]}`,
    name: `${name} ${d} x ${l} mm, ${coatingWords[coating]}`,
    kind: "nail",
    length_mm: l,
    diameter_mm: d,
    coating,
    shank,
    ...(shank === "ring" ? { thread_mm: l / 2 } : {}),
    head_mm: 2 * d,
    fu_mpa: 600,
    source: "en-14592",
    status: "memory",
  };
}

/** Root of the thread by thread diameter [mm]. */
const roots = { 4.5: 2.8, 5: 3.2, 6: 3.9, 8: 5.3 } as const;

function screw(d: keyof typeof roots, l: number, coating: Coating): Fastener {
  return {
    id: `screw-${d}x${l}mm${idEnd[coating]}`,
    name: `Wood screw ${d} x ${l} mm, ${coatingWords[coating]}`,
    kind: "wood-screw",
    length_mm: l,
    diameter_mm: d,
    coating,
    root_mm: roots[d],
    thread_mm: 0.6 * l,
    head_mm: 2 * d,
    fu_mpa: 500,
    source: "en-14592",
    status: "memory",
  };
}

/** Nails and screws by millimetres, for the European rules: any maker's, so weaker than a declared value. */
export const metricFasteners: readonly Fastener[] = [
  nail([2.8, 65], "smooth"),
  nail([3.1, 80], "smooth"),
  nail([3.4, 90], "smooth"),
  nail([3.8, 100], "smooth"),
  nail([4.6, 130], "smooth"),
  nail([2.8, 65], "ring"),
  nail([3.1, 80], "ring"),
  nail([3.1, 80], "ring", "stainless-316"),
  screw(4.5, 60, "stainless-316"),
  screw(5, 80, "stainless-316"),
  screw(5, 100, "stainless-316"),
  screw(6, 100, "stainless-316"),
  screw(6, 120, "stainless-316"),
  screw(8, 160, "stainless-316"),
  screw(5, 80, "plain-zinc"),
  screw(6, 120, "plain-zinc"),
];
