import type { Coating, Fastener } from "@causey/engine/materials";
import { MM_PER_IN, coatingWords, idEnd, inchText } from "./names.ts";

/** Gauge: shank, root and flat head diameter [in], bending yield [psi]. */
const gauges = {
  6: [0.138, 0.113, 0.262, 100_000],
  8: [0.164, 0.131, 0.312, 90_000],
  10: [0.19, 0.152, 0.362, 80_000],
  12: [0.216, 0.171, 0.412, 80_000],
  14: [0.242, 0.196, 0.477, 70_000],
} as const;

/** The same screw in another coating is a row of its own: its strength is alike, its life in the wet is not. */
function woodScrew(gauge: keyof typeof gauges, length: number, coating: Coating = "hot-dip-zinc"): Fastener {
  const [shank, root, head, yieldStrength] = gauges[gauge];
  return {
    id: `screw-${gauge}x${length}${idEnd[coating]}`,
    name: `Wood screw #${gauge} x ${inchText(length)}, ${coatingWords[coating]}`,
    kind: "wood-screw",
    length_mm: length * MM_PER_IN,
    diameter_mm: shank * MM_PER_IN,
    coating,
    root_mm: root * MM_PER_IN,
    thread_mm: (2 / 3) * length * MM_PER_IN,
    head_mm: head * MM_PER_IN,
    fyb_psi: yieldStrength,
    source: "asme-b18-6-1",
    status: "memory",
  };
}

/** Wood screws by gauge; two thirds of the length are thread. */
export const woodScrews: readonly Fastener[] = [
  woodScrew(6, 1.5),
  woodScrew(6, 2),
  woodScrew(8, 1.5),
  woodScrew(8, 2),
  woodScrew(8, 2.5),
  woodScrew(8, 3),
  woodScrew(10, 2),
  woodScrew(10, 2.5),
  woodScrew(10, 3),
  woodScrew(10, 3.5),
  woodScrew(10, 4),
  woodScrew(12, 3),
  woodScrew(12, 3.5),
  woodScrew(12, 4),
  woodScrew(14, 3.5),
  woodScrew(14, 4),
  woodScrew(14, 5),
  ...([304, 316] as const).flatMap((steel) => [
    woodScrew(8, 2.5, `stainless-${steel}`),
    woodScrew(10, 2.5, `stainless-${steel}`),
    woodScrew(10, 3, `stainless-${steel}`),
    woodScrew(10, 4, `stainless-${steel}`),
    woodScrew(12, 3.5, `stainless-${steel}`),
    woodScrew(14, 5, `stainless-${steel}`),
  ]),
  woodScrew(8, 2.5, "plain-zinc"),
  woodScrew(10, 3, "plain-zinc"),
];
