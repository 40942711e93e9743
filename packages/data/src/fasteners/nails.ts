import type { Coating, Fastener } from "@causey/engine/materials";
import { MM_PER_IN, coatingWords, idEnd } from "./names.ts";

/** Pennyweight: shank, length and head [in], bending yield [psi], and whether shank and length were seen in print. */
const pennies = {
  "6d": [0.113, 2, 0.266, 100_000, "memory"],
  "8d": [0.131, 2.5, 0.281, 100_000, "seen"],
  "10d": [0.148, 3, 0.312, 90_000, "seen"],
  "12d": [0.148, 3.25, 0.312, 90_000, "seen"],
  "16d": [0.162, 3.5, 0.344, 90_000, "seen"],
  "20d": [0.192, 4, 0.406, 80_000, "seen"],
} as const;
type Penny = keyof typeof pennies;

function nail(penny: Penny, coating: Coating = "hot-dip-zinc"): Fastener {
  const [diameter, length, head, yieldStrength, status] = pennies[penny];
  return {
    id: `nail-${penny}${idEnd[coating]}`,
    name: `Common nail ${penny}, ${coatingWords[coating]}`,
    kind: "nail",
    length_mm: length * MM_PER_IN,
    diameter_mm: diameter * MM_PER_IN,
    coating,
    shank: "smooth",
    head_mm: head * MM_PER_IN,
    fyb_psi: yieldStrength,
    source: "astm-f1667",
    status,
  };
}

/** Rings on the lower half of the shank; hold and yield are those of any such nail, not of one maker's. */
function ringNail(penny: Penny, coating: Coating = "hot-dip-zinc"): Fastener {
  const [, length] = pennies[penny];
  return {
    ...nail(penny, coating),
    id: `ring-nail-${penny}${idEnd[coating]}`,
    name: `Ring-shank nail ${penny}, ${coatingWords[coating]}`,
    shank: "ring",
    thread_mm: (length / 2) * MM_PER_IN,
    source: "ring-shank-nails",
    status: "memory",
  };
}

/** Common nails and their ring-shank kin. */
export const nails: readonly Fastener[] = [
  nail("6d"),
  nail("8d"),
  nail("10d"),
  nail("12d"),
  nail("16d"),
  nail("20d"),
  nail("8d", "stainless-316"),
  nail("16d", "stainless-316"),
  ringNail("8d"),
  ringNail("10d"),
  ringNail("16d"),
  ringNail("8d", "stainless-316"),
  ringNail("10d", "stainless-316"),
  ringNail("16d", "stainless-316"),
];
