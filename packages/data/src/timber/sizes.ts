import type { LumberSize } from "@causey/engine/materials";

/** Dressed size in inches of a nominal one, dry: PS 20. */
const dressed: Readonly<Record<number, number>> = {
  1: 0.75,
  1.25: 1,
  2: 1.5,
  3: 2.5,
  4: 3.5,
  5: 4.5,
  6: 5.5,
  8: 7.25,
  10: 9.25,
  12: 11.25,
};

function size(id: string, thick: number, wide: number, status: LumberSize["status"] = "seen"): LumberSize {
  return {
    id,
    thickness_in: dressed[thick]!,
    width_in: dressed[wide]!,
    nominal_thickness_in: thick,
    nominal_width_in: wide,
    source: "ps-20",
    status,
  };
}

/** Sizes a yard sells. Actual thickness and width in inches beside the nominal ones. */
export const lumberSizes = [
  size("1x3", 1, 3),
  size("1x4", 1, 4),
  size("1x6", 1, 6),
  size("1x8", 1, 8),
  size("5/4x4", 1.25, 4, "memory"),
  size("5/4x6", 1.25, 6),
  size("2x2", 2, 2),
  size("2x3", 2, 3),
  size("2x4", 2, 4),
  size("2x6", 2, 6),
  size("2x8", 2, 8),
  size("2x10", 2, 10),
  size("2x12", 2, 12),
  size("3x6", 3, 6),
  size("3x8", 3, 8),
  size("4x4", 4, 4),
  size("4x6", 4, 6),
  size("4x8", 4, 8),
  size("6x6", 6, 6),
] as const satisfies readonly LumberSize[];
