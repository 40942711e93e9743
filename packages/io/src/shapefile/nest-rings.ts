import type { Position, Positions } from "../layer-form/index.ts";

/** Steps of work for one file: a corner looked at once is one step. Real layers need a few thousand. */
export interface NestBudget {
  steps: number;
}
export const NEST_STEPS = 50_000_000;

interface Loop {
  readonly ring: Positions;
  readonly area: number;
  readonly inside: Position;
  readonly box: readonly [number, number, number, number];
}

/**
 * Sorts the rings of one shape into polygons, each an outer ring and its holes, by which ring lies in which: the
 * direction of rotation that the format asks for is not kept by every program. A ring inside an even number of
 * others is an outer one. Null when the budget is used up.
 */
export function nestRings(rings: readonly Positions[], budget: NestBudget): Positions[][] | null {
  if (rings.length === 1) return [[rings[0]!]];
  const loops = rings.map(loopOf).sort((a, b) => b.area - a.area);
  const around: (readonly Loop[])[] = [];
  for (let i = 0; i < loops.length && budget.steps >= 0; i++) around.push(containers(loops, i, budget));
  if (budget.steps < 0) return null;
  const polygons = new Map<Loop, Positions[]>();
  loops.forEach((loop, i) => {
    const outer = around[i]!.at(-1);
    const owner = around[i]!.length % 2 === 1 && outer !== undefined ? polygons.get(outer) : undefined;
    if (owner === undefined) polygons.set(loop, [loop.ring]);
    else owner.push(loop.ring);
  });
  return [...polygons.values()];
}

/** Rings around one of those sorted by size, largest first. */
function containers(loops: readonly Loop[], index: number, budget: NestBudget): readonly Loop[] {
  const loop = loops[index]!;
  const around: Loop[] = [];
  for (let i = 0; i < index && budget.steps >= 0; i++) {
    const other = loops[i]!;
    budget.steps -= 1;
    if (other.area <= loop.area || !isInBox(loop, other)) continue;
    budget.steps -= other.ring.length;
    if (isInside(other.ring, loop.inside)) around.push(other);
  }
  return around;
}

const isInBox = (a: Loop, b: Loop): boolean =>
  a.box[0] >= b.box[0] && a.box[1] >= b.box[1] && a.box[2] <= b.box[2] && a.box[3] <= b.box[3];

function loopOf(ring: Positions): Loop {
  let doubled = 0;
  const [x0, y0] = ring[0] ?? [0, 0];
  const box: [number, number, number, number] = [x0, y0, x0, y0];
  ring.forEach(([x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    doubled += (x - x0) * (v - y0) - (u - x0) * (y - y0);
    box[0] = Math.min(box[0], x);
    box[1] = Math.min(box[1], y);
    box[2] = Math.max(box[2], x);
    box[3] = Math.max(box[3], y);
  });
  return { ring, area: Math.abs(doubled) / 2, inside: pointInside(ring), box };
}

/** A point in the middle of the first stretch of ground on a line between two heights of corners. */
function pointInside(ring: Positions): Position {
  const heights = [...new Set(ring.map(([, y]) => y))].sort((a, b) => a - b);
  const middle = heights.length >> 1;
  if (heights.length < 2) return ring[0] ?? [0, 0];
  const y = (heights[middle - 1]! + heights[middle]!) / 2;
  const [west, east] = crossings(ring, y).sort((a, b) => a - b);
  return west === undefined || east === undefined ? ring[0]! : [(west + east) / 2, y];
}

function crossings(ring: Positions, y: number): number[] {
  return ring.flatMap(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    return ay > y === by > y ? [] : [ax + ((y - ay) / (by - ay)) * (bx - ax)];
  });
}

const isInside = (ring: Positions, [x, y]: Position): boolean =>
  crossings(ring, y).filter((at) => at > x).length % 2 === 1;
