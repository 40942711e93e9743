import type { Box, Point } from "../scene/index.ts";

interface Edge {
  readonly isInside: (p: Point) => boolean;
  readonly cut: (a: Point, b: Point) => Point;
}

const between = (a: Point, b: Point, t: number): Point => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];

const edgesOf = ({ x, y, width, height }: Box): readonly Edge[] => [
  { isInside: (p) => p[0] >= x, cut: (a, b) => between(a, b, (x - a[0]) / (b[0] - a[0])) },
  { isInside: (p) => p[0] <= x + width, cut: (a, b) => between(a, b, (x + width - a[0]) / (b[0] - a[0])) },
  { isInside: (p) => p[1] >= y, cut: (a, b) => between(a, b, (y - a[1]) / (b[1] - a[1])) },
  { isInside: (p) => p[1] <= y + height, cut: (a, b) => between(a, b, (y + height - a[1]) / (b[1] - a[1])) },
];

/**
 * The part of a ring inside a box, for fills and hatches: it runs along the box where the ring leaves it, so it is
 * no outline. Empty when nothing lies inside.
 */
export function clipRing(ring: readonly Point[], box: Box): Point[] {
  let points: readonly Point[] = ring;
  for (const { isInside, cut } of edgesOf(box)) {
    const kept: Point[] = [];
    points.forEach((b, i) => {
      const a = points[(i + points.length - 1) % points.length]!;
      if (isInside(b)) {
        if (!isInside(a)) kept.push(cut(a, b));
        kept.push(b);
      } else if (isInside(a)) kept.push(cut(a, b));
    });
    points = kept;
  }
  return points.length > 2 ? [...points] : [];
}

/** The runs of a line inside a box. */
export function clipLine(line: readonly Point[], box: Box): Point[][] {
  const runs: Point[][] = [];
  for (let i = 1; i < line.length; i++) {
    const piece = clipSegment(line[i - 1]!, line[i]!, box);
    if (!piece) continue;
    const last = runs.at(-1);
    const end = last?.at(-1);
    if (last && end && end[0] === piece[0][0] && end[1] === piece[0][1]) last.push(piece[1]);
    else runs.push([piece[0], piece[1]]);
  }
  return runs;
}

function clipSegment(a: Point, b: Point, { x, y, width, height }: Box): readonly [Point, Point] | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [-dx, a[0] - x],
    [dx, x + width - a[0]],
    [-dy, a[1] - y],
    [dy, y + height - a[1]],
  ] as const) {
    if (step === 0) {
      if (room < 0) return null;
    } else if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
  }
  if (from > to) return null;
  return [from === 0 ? a : between(a, b, from), to === 1 ? b : between(a, b, to)];
}
