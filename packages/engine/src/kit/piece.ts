import { sawLength } from "./section.ts";
import type { SizeId } from "./types.ts";

/**
 * One piece as a box in its part's own frame.
 *
 * x  along, from the part's start; a support's from the middle of its joint              [m]
 * y  across, from the middle line, positive to the left of travel                        [m]
 * z  up, from the underside of the module or platform; a support's from the ground       [m]
 */
export interface PlacedPiece {
  /** "stringer", "cross piece", "catch board", "deck board", "mesh panel", "mesh upturn", "curb", "sill", "stake", or a support piece's name. */
  readonly role: string;
  /** Null for mesh, which is not sawn from lumber. */
  readonly size: SizeId | null;
  /** Saw length; of a mesh panel the sheet's length. */
  readonly length_mm: number;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
  readonly z1: number;
}

/** From and to, in millimetres. */
export type Span = readonly [number, number];

export const place = (
  role: string,
  size: SizeId | null,
  length_mm: number,
  x: Span,
  y: Span,
  z: Span,
): PlacedPiece => ({
  role,
  size,
  length_mm: sawLength(length_mm),
  x0: x[0] / 1000,
  x1: x[1] / 1000,
  y0: y[0] / 1000,
  y1: y[1] / 1000,
  z0: z[0] / 1000,
  z1: z[1] / 1000,
});

/** A span of the given size around its middle [mm]. */
export const around = (middle: number, size: number): Span => [middle - size / 2, middle + size / 2];

/** Middles of `count` equal things spread evenly so that the outer faces are flush with +-reach [mm]. */
export function spread(count: number, reach: number, size: number): number[] {
  if (count === 1) return [0];
  const room = 2 * reach - size;
  return Array.from({ length: count }, (_, i) => -room / 2 + (room * i) / (count - 1));
}

/** Volume of the box [m3]. */
export const pieceVolume = (p: PlacedPiece): number => (p.x1 - p.x0) * (p.y1 - p.y0) * (p.z1 - p.z0);

/**
 * Pairs of pieces that would stand in the same place.
 *
 * slack_mm  boxes may share this much depth before they count as overlapping  [mm], >= 0
 */
export function overlaps(
  pieces: readonly PlacedPiece[],
  slack_mm = 0.1,
): (readonly [PlacedPiece, PlacedPiece])[] {
  const slack = slack_mm / 1000;
  const found: (readonly [PlacedPiece, PlacedPiece])[] = [];
  pieces.forEach((a, i) => {
    for (const b of pieces.slice(i + 1)) if (sharedDepth(a, b) > slack) found.push([a, b]);
  });
  return found;
}

/** Least of the three shared depths of two boxes; negative when they are apart [m]. */
const sharedDepth = (a: PlacedPiece, b: PlacedPiece): number =>
  Math.min(
    Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0),
    Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0),
    Math.min(a.z1, b.z1) - Math.max(a.z0, b.z0),
  );
