import type { BarGratingRow } from "@causey/engine/materials";

const MM_PER_IN = 25.4;

const american = (
  depth: string,
  depth_in: number,
  bar: string,
  bar_in: number,
  status: BarGratingRow["status"],
): BarGratingRow => ({
  id: `grating-${depth}x${bar}`,
  name: `Steel bar grating ${depth} x ${bar} in, bars at 1-3/16 in`,
  bar_thickness_mm: bar_in * MM_PER_IN,
  bar_depth_mm: depth_in * MM_PER_IN,
  bar_pitch_mm: 1.1875 * MM_PER_IN,
  source: "steel-grating",
  status,
});

const metric = (depth: number, bar: number): BarGratingRow => ({
  id: `grating-${depth}x${bar}mm`,
  name: `Steel bar grating ${depth} x ${bar} mm, bars at 34.3 mm`,
  bar_thickness_mm: bar,
  bar_depth_mm: depth,
  bar_pitch_mm: 34.3,
  source: "metric-grating",
  status: "memory",
});

/** Steel bar gratings of no maker. */
export const barGratings: readonly BarGratingRow[] = [
  american("1", 1, "1/8", 0.125, "seen"),
  american("1", 1, "3/16", 0.1875, "seen"),
  american("1-1/4", 1.25, "3/16", 0.1875, "memory"),
  american("1-1/2", 1.5, "3/16", 0.1875, "seen"),
  metric(25, 3),
  metric(30, 3),
  metric(40, 3),
];
