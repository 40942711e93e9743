import type { Extent } from "./view.ts";

/** One sheet's window on the ground. */
export interface Tile {
  /** Column from the west, row from the north. */
  readonly col: number;
  readonly row: number;
  readonly middle: readonly [number, number];
}

/** Places tried for the lattice of tiles, along each side. */
const TRIES = 8;

/**
 * The fewest tiles of one size, on one lattice, that show every part: lattices shifted by eighths of a tile are
 * tried, so the count is the least of those, not a proven least. Row by row from the north-west.
 *
 * parts  bounds of the parts [m]
 * size   width and height of a tile [m]
 */
export function coverWithTiles(parts: readonly Extent[], [w, h]: readonly [number, number]): Tile[] {
  if (parts.length === 0) return [];
  const west = Math.min(...parts.map((p) => p[0]));
  const north = Math.max(...parts.map((p) => p[3]));
  let best: { readonly tiles: Tile[]; readonly slack: number } | null = null;
  for (let i = 0; i < TRIES; i++)
    for (let j = 0; j < TRIES; j++) {
      const x0 = west - (w * i) / TRIES;
      const y0 = north + (h * j) / TRIES;
      const tiles = tilesOf(parts, x0, y0, w, h);
      // Among equals the one with the parts nearest the middle of their tiles reads best.
      const slack = tiles.reduce((sum, t) => sum + offMiddle(t, parts, w, h), 0);
      if (
        !best ||
        tiles.length < best.tiles.length ||
        (tiles.length === best.tiles.length && slack < best.slack)
      )
        best = { tiles, slack };
    }
  return best!.tiles;
}

function tilesOf(parts: readonly Extent[], x0: number, y0: number, w: number, h: number): Tile[] {
  const found = new Map<string, Tile>();
  for (const [pw, ps, pe, pn] of parts)
    for (let col = Math.floor((pw - x0) / w); col <= Math.floor((pe - x0) / w); col++)
      for (let row = Math.floor((y0 - pn) / h); row <= Math.floor((y0 - ps) / h); row++)
        found.set(`${col} ${row}`, { col, row, middle: [x0 + (col + 0.5) * w, y0 - (row + 0.5) * h] });
  return [...found.values()].sort((a, b) => a.row - b.row || a.col - b.col);
}

function offMiddle({ middle: [x, y] }: Tile, parts: readonly Extent[], w: number, h: number): number {
  const mine = parts.filter(
    ([pw, ps, pe, pn]) => pw < x + w / 2 && pe > x - w / 2 && ps < y + h / 2 && pn > y - h / 2,
  );
  const cx = mine.reduce((s, p) => s + (p[0] + p[2]) / 2, 0) / mine.length;
  const cy = mine.reduce((s, p) => s + (p[1] + p[3]) / 2, 0) / mine.length;
  return Math.abs(cx - x) / w + Math.abs(cy - y) / h;
}

/** The neighbours of a tile that are sheets too, by the side they lie on. */
export function neighbours(tile: Tile, tiles: readonly Tile[]): Partial<Record<Side, number>> {
  const at = (col: number, row: number): number => tiles.findIndex((t) => t.col === col && t.row === row);
  const found = {
    west: at(tile.col - 1, tile.row),
    east: at(tile.col + 1, tile.row),
    north: at(tile.col, tile.row - 1),
    south: at(tile.col, tile.row + 1),
  };
  return Object.fromEntries(Object.entries(found).filter(([, n]) => n >= 0)) as Partial<Record<Side, number>>;
}

export type Side = "west" | "east" | "north" | "south";
