import { contourLevels, contourLines, type Raster } from "@causey/engine/site";
import { M_PER_FT, type UnitSystem } from "@causey/engine/units";

/** A line on the ground with what it is. */
export interface GroundLine {
  readonly z_m: number;
  readonly label: string;
  readonly kind: "contour" | "index" | "water";
  readonly points: readonly (readonly [number, number])[];
}

/** More contours than this make a grey of the sheet. */
const MOST_CONTOURS = 22;
const STEPS_M = [0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10];
const STEPS_FT = [0.25, 0.5, 1, 2, 5, 10, 20];

/** Step between contours: the smallest round one that keeps their number readable [m]. */
export function contourStep(raster: Raster, units: UnitSystem): number {
  const steps = units === "us" ? STEPS_FT.map((ft) => ft * M_PER_FT) : STEPS_M;
  return steps.find((step) => contourLevels(raster, step).length <= MOST_CONTOURS) ?? steps.at(-1)!;
}

/** Contours of the ground; every fifth stands out. */
export function contoursOf(raster: Raster, step: number): GroundLine[] {
  return contourLines(raster, contourLevels(raster, step)).map(({ z_m, points }) => ({
    z_m,
    points,
    label: "",
    kind: Math.round(z_m / step) % 5 === 0 ? "index" : "contour",
  }));
}
