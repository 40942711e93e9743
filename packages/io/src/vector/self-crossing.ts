import type { Ring } from "@causey/engine/site";

/** Edges that pass each other by less than this do not count as crossing [m]: shared corners and rounding. */
const TOLERANCE_M = 0.001;
/** Work left for one file: pairs of edges that may still be looked at. */
export interface PairBudget {
  pairs: number;
}
/** About a second of work: real outlines need a few pairs per corner. */
export const PAIRS_PER_FILE = 30_000_000;

interface Edge {
  readonly index: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly west: number;
  readonly east: number;
}

/**
 * A point at which two edges of a ring cross, or null when none do. Edges are taken from west to east and each is
 * held against those that begin before it ends; a ring made to defeat this is answered with "too-intricate".
 */
export function findCrossing(
  ring: Ring,
  budget: PairBudget,
): readonly [number, number] | null | "too-intricate" {
  const edges = edgesOf(ring).sort((a, b) => a.west - b.west || a.index - b.index);
  for (let i = 0; i < edges.length; i++) {
    const a = edges[i]!;
    for (let j = i + 1; j < edges.length && edges[j]!.west <= a.east; j++) {
      if (--budget.pairs < 0) return "too-intricate";
      const point = crossing(a, edges[j]!);
      if (point !== null) return point;
    }
  }
  return null;
}

const edgesOf = (ring: Ring): Edge[] =>
  ring.map(([ax, ay], index) => {
    const [bx, by] = ring[(index + 1) % ring.length]!;
    return { index, ax, ay, bx, by, west: Math.min(ax, bx), east: Math.max(ax, bx) };
  });

/** Both ends of each edge must lie clearly on opposite sides of the other edge's line. */
function crossing(a: Edge, b: Edge): readonly [number, number] | null {
  if (Math.min(a.ay, a.by) > Math.max(b.ay, b.by) || Math.min(b.ay, b.by) > Math.max(a.ay, a.by)) return null;
  const [c, d] = [side(a, b.ax, b.ay), side(a, b.bx, b.by)];
  if (!isClearlyApart(c, d)) return null;
  const [e, f] = [side(b, a.ax, a.ay), side(b, a.bx, a.by)];
  if (!isClearlyApart(e, f)) return null;
  const t = c / (c - d);
  return [b.ax + t * (b.bx - b.ax), b.ay + t * (b.by - b.ay)];
}

const isClearlyApart = (c: number, d: number): boolean =>
  Math.min(c, d) < -TOLERANCE_M && Math.max(c, d) > TOLERANCE_M;

/** Distance of a point from an edge's line, positive to its left [m]. */
const side = (e: Edge, x: number, y: number): number => {
  const [dx, dy] = [e.bx - e.ax, e.by - e.ay];
  const length = Math.hypot(dx, dy);
  return length === 0 ? 0 : (dx * (y - e.ay) - dy * (x - e.ax)) / length;
};
