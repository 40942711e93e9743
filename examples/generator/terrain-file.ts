import { GRID, type Meadow } from "./meadow.ts";

/** A grid of square cells: south-west corner and cell size in metres. */
export interface CellGrid {
  readonly west: number;
  readonly south: number;
  readonly cols: number;
  readonly rows: number;
}

/** The terrain as an ESRI ASCII grid with cells of 1 m, north row first, heights to the centimetre. */
export function asciiGrid(grid: CellGrid, heightAt: (u: number, v: number) => number): string {
  const rows: string[] = [];
  for (let j = grid.rows - 1; j >= 0; j--)
    rows.push(
      Array.from({ length: grid.cols }, (_, i) => heightAt(i + 0.5, j + 0.5).toFixed(2)).join(" "),
    );
  const head = [
    `ncols ${grid.cols}`,
    `nrows ${grid.rows}`,
    `xllcorner ${grid.west}`,
    `yllcorner ${grid.south}`,
    "cellsize 1",
    "NODATA_value -9999",
  ];
  return `${[...head, ...rows].join("\n").replaceAll(/(?<![\d.])-0\.00/g, "0.00")}\n`;
}

export const terrainFile = (meadow: Meadow): string => asciiGrid(GRID, meadow.heightAt);
