import type { PlacedPiece } from "./piece.ts";

/** Where a part's own frame stands on the site: its origin, its heading and how steeply it rises along it. */
export interface PartFrame {
  /** East, north, and height on the site datum of the frame's origin [m]. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Degrees clockwise from grid north. */
  readonly heading_deg: number;
  /** Rise over run along the heading. */
  readonly grade: number;
}

export type SitePoint = readonly [number, number, number];

/** One joint as a drawing or a check needs it: middle of the gap, height of the deck's top [m]. */
export interface JointPlace {
  readonly x: number;
  readonly y: number;
  readonly deck_m: number;
}

/**
 * The frame of a module or platform that begins at a joint.
 *
 * joint        middle of the gap, top of deck
 * heading_deg  heading of travel
 * gap_m        the kit's joint gap: the body begins half a gap beyond the joint          [m]
 * depth_m      underside to top of deck                                                  [m]
 * grade        rise over run along the heading, 0 for a level part
 */
export function frameFromJoint(
  joint: JointPlace,
  heading_deg: number,
  gap_m: number,
  depth_m: number,
  grade = 0,
): PartFrame {
  const level = { x: joint.x, y: joint.y, z: joint.deck_m, heading_deg, grade };
  const [x, y, z] = toSite(level, gap_m / 2, 0, -depth_m);
  return { ...level, x, y, z };
}

/** The frame of a support under a joint: upright, its origin on the ground. */
export const supportFrame = (
  joint: { readonly x: number; readonly y: number; readonly ground_m: number },
  heading_deg: number,
): PartFrame => ({ x: joint.x, y: joint.y, z: joint.ground_m, heading_deg, grade: 0 });

/** A point of the part's frame (along, across to the left, up) on the site [m]. */
export function toSite(frame: PartFrame, along: number, across: number, up: number): SitePoint {
  const h = (frame.heading_deg * Math.PI) / 180;
  const run = 1 / Math.hypot(1, frame.grade);
  const rise = frame.grade * run;
  const flat = along * run - up * rise;
  return [
    frame.x + Math.sin(h) * flat - Math.cos(h) * across,
    frame.y + Math.cos(h) * flat + Math.sin(h) * across,
    frame.z + along * rise + up * run,
  ];
}

/** The eight corners of a placed piece on the site [m]. */
export const pieceCorners = (frame: PartFrame, p: PlacedPiece): SitePoint[] =>
  [p.x0, p.x1].flatMap((x) => [p.y0, p.y1].flatMap((y) => [p.z0, p.z1].map((z) => toSite(frame, x, y, z))));
