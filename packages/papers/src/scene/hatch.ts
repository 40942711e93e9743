import type { Hatch, PathShape, Point } from "./types.ts";

/** More lines than this in one area would be a grey, not a hatch. */
const MOST_LINES = 4000;

/**
 * The lines of a hatch inside an area, cut at its edges by the even-odd rule.
 *
 * rings  the area's rings, open or closed [mm]
 */
export function hatched(rings: readonly (readonly Point[])[], hatch: Hatch): PathShape[] {
  const angles = hatch.crossed ? [hatch.angle_deg, hatch.angle_deg + 90] : [hatch.angle_deg];
  const stroke = {
    ink: hatch.ink,
    width: hatch.width,
    ...(hatch.dash === undefined ? {} : { dash: hatch.dash }),
  };
  return angles.map((angle) => ({
    kind: "path",
    lines: hatchLines(rings, angle, hatch.gap),
    closed: false,
    stroke,
  }));
}

function hatchLines(rings: readonly (readonly Point[])[], angle_deg: number, gap: number): Point[][] {
  const turn = (angle_deg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const turned = rings.map((ring) => ring.map(([x, y]): Point => [x * c + y * s, -x * s + y * c]));
  const heights = turned.flat().map((p) => p[1]);
  if (heights.length === 0) return [];
  const low = heights.reduce((a, b) => Math.min(a, b));
  const high = heights.reduce((a, b) => Math.max(a, b));
  const first = Math.ceil(low / gap);
  const count = Math.min(MOST_LINES, Math.floor(high / gap) - first + 1);
  const lines: Point[][] = [];
  for (let k = 0; k < count; k++) {
    const y = (first + k) * gap;
    const cuts = turned.flatMap((ring) => crossings(ring, y)).sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i += 2)
      lines.push([cuts[i]!, cuts[i + 1]!].map((x): Point => [x * c - y * s, x * s + y * c]));
  }
  return lines;
}

function crossings(ring: readonly Point[], y: number): number[] {
  const found: number[] = [];
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[j]!, ring[i]!];
    if (a[1] <= y !== b[1] <= y) found.push(a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
  }
  return found;
}
