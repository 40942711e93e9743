export type Corner = readonly [number, number];

/** Cells of a grid, west to east and row by row from south to north; `true` belongs to the shape. */
export interface CellShape {
  readonly cols: number;
  readonly rows: number;
  readonly has: (column: number, row: number) => boolean;
}

interface Edge {
  readonly from: Corner;
  readonly to: Corner;
}

const key = ([i, j]: Corner): string => `${i},${j}`;

/**
 * Outlines of the cells of a shape along the cell edges, in units of cells from the grid's south-west corner.
 * Closed rings, outer ones counter-clockwise and holes clockwise, corners only where the outline turns.
 * Cells that touch at a corner alone are traced apart.
 */
export function traceCells(shape: CellShape): Corner[][] {
  const leaving = new Map<string, Edge[]>();
  for (const edge of boundary(shape)) {
    const at = key(edge.from);
    leaving.set(at, [...(leaving.get(at) ?? []), edge]);
  }
  const rings: Corner[][] = [];
  for (const edges of leaving.values())
    while (edges.length > 0) rings.push(withoutStraights(walk(edges.pop()!, leaving)));
  return rings;
}

/** Every edge between a cell of the shape and one outside it, the shape on its left. */
function boundary({ cols, rows, has }: CellShape): Edge[] {
  const inside = (i: number, j: number): boolean => i >= 0 && j >= 0 && i < cols && j < rows && has(i, j);
  const edges: Edge[] = [];
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < cols; i++) {
      if (!inside(i, j)) continue;
      if (!inside(i, j - 1)) edges.push({ from: [i, j], to: [i + 1, j] });
      if (!inside(i + 1, j)) edges.push({ from: [i + 1, j], to: [i + 1, j + 1] });
      if (!inside(i, j + 1)) edges.push({ from: [i + 1, j + 1], to: [i, j + 1] });
      if (!inside(i - 1, j)) edges.push({ from: [i, j + 1], to: [i, j] });
    }
  return edges;
}

function walk(first: Edge, leaving: ReadonlyMap<string, Edge[]>): Corner[] {
  const ring: Corner[] = [first.from];
  for (let edge = first; key(edge.to) !== key(first.from);) {
    ring.push(edge.to);
    const next = leaving.get(key(edge.to))!;
    const best = next.length > 1 ? next.findIndex((candidate) => turnsLeft(edge, candidate)) : 0;
    [edge] = next.splice(best, 1) as [Edge];
  }
  return [...ring, first.from];
}

/** Keeping to the left at a corner where two cells only touch keeps them in rings of their own. */
const turnsLeft = (a: Edge, b: Edge): boolean =>
  (a.to[0] - a.from[0]) * (b.to[1] - b.from[1]) - (a.to[1] - a.from[1]) * (b.to[0] - b.from[0]) > 0;

function withoutStraights(ring: readonly Corner[]): Corner[] {
  const corners = ring.slice(0, -1);
  const kept = corners.filter((p, i) => {
    const before = corners.at(i - 1)!;
    const after = corners[(i + 1) % corners.length]!;
    return (p[0] - before[0]) * (after[1] - p[1]) !== (p[1] - before[1]) * (after[0] - p[0]);
  });
  return [...kept, kept[0]!];
}

/** Twice the signed area of a closed ring: positive for an outer ring, negative for a hole. */
export const twiceArea = (ring: readonly Corner[]): number =>
  ring.slice(1).reduce((sum, q, i) => sum + ring[i]![0] * q[1] - q[0] * ring[i]![1], 0);
