import type { Polygons, Raster } from "../site/index.ts";

/**
 * Marks the cells whose centres lie in any of the areas: 1 inside, 0 outside. The even-odd rule of `isInside`, row by
 * row, so that a large raster is not asked cell by cell.
 */
export function cellsInside(r: Raster, areas: readonly Polygons[]): Uint8Array {
  const inside = new Uint8Array(r.cols * r.rows);
  for (const polygons of areas)
    for (let j = 0; j < r.rows; j++) {
      const crossings = crossingsAt(polygons, r.y0 + j * r.dy);
      for (let k = 0; k + 1 < crossings.length; k += 2) {
        const from = Math.max(0, Math.ceil((crossings[k]! - r.x0) / r.dx));
        for (let i = from; i < r.cols && r.x0 + i * r.dx < crossings[k + 1]!; i++) inside[j * r.cols + i] = 1;
      }
    }
  return inside;
}

/** Sorted x of every edge that crosses the line of equal y [m]. */
function crossingsAt(polygons: Polygons, y: number): number[] {
  const found: number[] = [];
  for (const rings of polygons)
    for (const ring of rings)
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        const [xi, yi] = ring[i]!;
        const [xj, yj] = ring[j]!;
        if (yi > y !== yj > y) found.push(((xj - xi) * (y - yi)) / (yj - yi) + xi);
      }
  return found.sort((a, b) => a - b);
}
