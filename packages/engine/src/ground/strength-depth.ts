import { influenceWidths } from "./strength-settings.ts";

/** A corrected reading by its place along the walkway. */
export interface LineReading {
  /** Distance along the walkway, and how far beside it [m]. */
  readonly at_m: number;
  readonly off_m: number;
  /** Below ground [m]. */
  readonly depth_m: number;
  readonly su_pa: number;
}

/** Readings that a foot feels. */
export interface ReadingsBelow {
  /** In the root mat under the foot; empty without a mat. */
  readonly mat: readonly LineReading[];
  /** In what the bearing rests on: below the mat, or below the foot where there is none. */
  readonly ground: readonly LineReading[];
  /** Readings too shallow or too deep to count. */
  readonly outside: number;
}

/**
 * Sorts readings by what a foot feels: 1.5 times its width below it, readings in a root mat apart.
 *
 * foot   width and depth below ground [m]
 * mat_m  depth of the mat's underside below ground; null without a mat. Below it the load is as wide as its 2:1 spread.
 */
export function readingsBelow(
  readings: readonly LineReading[],
  foot: { readonly width_m: number; readonly depth_m: number },
  mat_m: number | null,
): ReadingsBelow {
  const widths = influenceWidths({});
  const { depth_m: top, width_m } = foot;
  const under = mat_m !== null && mat_m > top ? mat_m : null;
  const from = under ?? top;
  const to = from + widths * (under === null ? width_m : width_m + under - top);
  const ground = readings.filter((r) => r.depth_m >= from && r.depth_m <= to);
  const mat =
    under === null
      ? []
      : readings.filter((r) => r.depth_m >= top && r.depth_m < under && r.depth_m <= top + widths * width_m);
  return { mat, ground, outside: readings.length - ground.length - mat.length };
}
