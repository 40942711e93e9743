import { GRID, type Meadow } from "./meadow.ts";

/** The terrain as an ESRI ASCII grid, north row first, heights to the centimetre. */
export function terrainFile(meadow: Meadow): string {
  const rows: string[] = [];
  for (let j = GRID.rows - 1; j >= 0; j--)
    rows.push(
      Array.from({ length: GRID.cols }, (_, i) => meadow.heightAt(i + 0.5, j + 0.5).toFixed(2)).join(" "),
    );
  const head = [
    `ncols ${GRID.cols}`,
    `nrows ${GRID.rows}`,
    `xllcorner ${GRID.west}`,
    `yllcorner ${GRID.south}`,
    "cellsize 1",
    "NODATA_value -9999",
  ];
  return `${[...head, ...rows].join("\n").replaceAll(/(?<![\d.])-0\.00/g, "0.00")}\n`;
}
