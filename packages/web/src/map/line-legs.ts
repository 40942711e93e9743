import type { XY } from "./view.ts";

/** A straight piece of a drawn line: compass heading, clockwise from grid north [degrees], and length [m]. */
export interface Leg {
  readonly heading_deg: number;
  readonly length_m: number;
}

/** The legs of a drawn line, one fewer than its points. */
export const legsOf = (points: readonly XY[]): readonly Leg[] =>
  points.slice(1).map((b, n) => {
    const [dx, dy] = [b[0] - points[n]![0], b[1] - points[n]![1]];
    return {
      heading_deg: ((Math.atan2(dx, dy) * 180) / Math.PI + 360) % 360,
      length_m: Math.hypot(dx, dy),
    };
  });

/**
 * The headings that square platforms leave the other legs: those square to the longest leg that is set, which the
 * parts are fitted to first. From the smallest up; null before a leg is set.
 */
export function squareHeadings(legs: readonly Leg[]): readonly number[] | null {
  const [longest] = legs.toSorted((a, b) => b.length_m - a.length_m);
  if (!longest) return null;
  const least = Math.round(longest.heading_deg) % 90;
  return [0, 1, 2, 3].map((quarter) => least + 90 * quarter);
}

/** How far a heading lies off the nearest of the square ones, 0 to 45 [degrees]. */
export function offSquare(heading_deg: number, square: readonly number[]): number {
  const off = (((heading_deg - (square[0] ?? 0)) % 90) + 90) % 90;
  return Math.min(off, 90 - off);
}

/** A whole number of degrees below 360, as a compass is read. */
export const degrees = (heading_deg: number): string => `${Math.round(heading_deg) % 360}°`;
