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

/** A metric size, sold by its actual thickness and width; it has no nominal inch name. */
const metric = (thickness_mm: number, width_mm: number): LumberSize => ({
  id: `${thickness_mm}x${width_mm}`,
  thickness_in: thickness_mm / 25.4,
  width_in: width_mm / 25.4,
  nominal_thickness_in: null,
  nominal_width_in: null,
  source: "metric-yard",
  status: "practice",
});

/** Sizes a yard sells: nominal inches, then millimetres. Actual thickness and width in inches beside the nominal ones. */
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
  metric(22, 45),
  metric(22, 95),
  metric(28, 95),
  metric(28, 120),
  metric(28, 145),
  metric(45, 45),
  metric(45, 70),
  metric(45, 95),
  metric(45, 120),
  metric(45, 145),
  metric(45, 170),
  metric(45, 195),
  metric(45, 220),
  metric(70, 70),
  metric(70, 95),
  metric(70, 120),
  metric(70, 145),
  metric(70, 170),
  metric(70, 195),
  metric(70, 220),
  metric(95, 95),
  metric(95, 145),
] as const satisfies readonly LumberSize[];
