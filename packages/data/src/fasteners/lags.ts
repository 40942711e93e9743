import type { Coating, Fastener } from "@causey/engine/materials";
import { MM_PER_IN, coatingWords, idEnd, inchText } from "./names.ts";

/** Nominal size: diameter, root, point and width across the flats of the head [in], bending yield [psi]. */
const sizes = {
  "1/4": [0.25, 0.173, 0.156, 0.4375, 70_000],
  "5/16": [0.3125, 0.227, 0.188, 0.5, 60_000],
  "3/8": [0.375, 0.265, 0.219, 0.5625, 45_000],
  "1/2": [0.5, 0.371, 0.3125, 0.75, 45_000],
} as const;

/** Half the length and half an inch are thread, the point included, at most 6 in. */
function lag(size: keyof typeof sizes, length: number, coating: Coating = "hot-dip-zinc"): Fastener {
  const [diameter, root, tip, head, yieldStrength] = sizes[size];
  return {
    id: `lag-${size}x${length}${idEnd[coating]}`,
    name: `Lag screw ${size} x ${inchText(length)}, ${coatingWords[coating]}`,
    kind: "lag-screw",
    length_mm: length * MM_PER_IN,
    diameter_mm: diameter * MM_PER_IN,
    coating,
    root_mm: root * MM_PER_IN,
    thread_mm: Math.min(6, length / 2 + 0.5) * MM_PER_IN,
    tip_mm: tip * MM_PER_IN,
    head_mm: head * MM_PER_IN,
    fyb_psi: yieldStrength,
    source: "asme-b18-2-1",
    status: "memory",
  };
}

/** Lag screws with a hexagon head, of no maker. */
export const lagScrews: readonly Fastener[] = [
  lag("1/4", 3),
  lag("1/4", 4),
  lag("5/16", 4),
  lag("5/16", 5),
  lag("3/8", 4),
  lag("3/8", 5),
  lag("3/8", 6),
  lag("3/8", 7),
  lag("1/2", 4),
  lag("1/2", 5),
  lag("1/2", 6),
  lag("1/4", 4, "stainless-316"),
  lag("5/16", 5, "stainless-316"),
  lag("3/8", 5, "stainless-316"),
  lag("1/2", 6, "stainless-316"),
];
