import { between, type Random } from "./random.ts";

export type Spot = readonly [number, number];

/** An uneven round outline: corners at even angles, each at its own distance from the middle. */
export interface Blot {
  readonly middle: Spot;
  readonly radii: readonly number[];
}

/** Draws a blot about `across` and `along` wide, its edge wavering by the share `rough`. */
export function blot(
  random: Random,
  middle: Spot,
  across: number,
  along: number,
  rough: number,
  corners = 24,
): Blot {
  const waver = Array.from({ length: corners }, () => between(random, 1 - rough, 1 + rough));
  const radii = waver.map((w, i) => {
    const angle = (2 * Math.PI * i) / corners;
    const round = (across * along) / Math.hypot(along * Math.cos(angle), across * Math.sin(angle));
    const eased = (waver[(i + corners - 1) % corners]! + 2 * w + waver[(i + 1) % corners]!) / 4;
    return round * eased;
  });
  return { middle, radii };
}

/** The blot's outline, `beyond` farther out than it is. */
export const outlineOf = ({ middle, radii }: Blot, beyond = 0): Spot[] =>
  radii.map((r, i) => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [middle[0] + (r + beyond) * Math.cos(angle), middle[1] + (r + beyond) * Math.sin(angle)];
  });

/** How far a point lies outside the blot along the line from its middle; negative inside [m]. */
export function outsideBy({ middle, radii }: Blot, x: number, y: number): number {
  const [dx, dy] = [x - middle[0], y - middle[1]];
  const place = ((Math.atan2(dy, dx) / (2 * Math.PI) + 1) % 1) * radii.length;
  const [i, part] = [Math.floor(place) % radii.length, place % 1];
  const edge = radii[i]! + (radii[(i + 1) % radii.length]! - radii[i]!) * part;
  return Math.hypot(dx, dy) - edge;
}
