import type { Findings } from "../problem/index.ts";

/** Most cells that are read: 25 million, a 100 MB raster in memory, or 5 km x 5 km at 1 m. */
export const MAX_CELLS = 25_000_000;

/** A terrain grid as a file tells it: north row first, cell centres, before the height unit is applied. */
export interface FileGrid {
  readonly cols: number;
  readonly rows: number;
  /** Centre of the SOUTH-west cell. */
  readonly x0: number;
  readonly y0: number;
  readonly dx: number;
  readonly dy: number;
  /** Row by row from south to north, NaN = no data, in the file's height unit. */
  readonly values: Float32Array;
  /** How this format declares a no-data value, for the mend of a message. */
  readonly declare: (value: number) => string;
}

/** Refuses sizes before any memory is taken for them. */
export function checkSize(
  found: Findings,
  place: string,
  cols: number,
  rows: number,
  most: number = MAX_CELLS,
): void {
  const whole = [cols, rows].every((n) => Number.isSafeInteger(n));
  if (!whole || cols < 2 || rows < 2)
    found.stop({
      code: "terrain-size",
      place,
      value: `${cols} x ${rows} cells`,
      message: "The grid has fewer than two cells one way: there is no ground in it.",
      mend: "Export the terrain again; it needs at least 2 x 2 cells.",
    });
  if (cols * rows > most)
    found.stop({
      code: "terrain-too-large",
      place,
      value: `${cols} x ${rows} = ${cols * rows} cells`,
      message: `The file says it holds ${cols * rows} cells; at most ${most} are read.`,
      mend: "Cut the terrain to the site, or make its cells larger.",
    });
}

/** Cell sizes below a centimetre mean degrees, not metres. */
export function checkCellSize(found: Findings, place: string, dx: number, dy: number): void {
  if (!(Number.isFinite(dx) && Number.isFinite(dy) && dx > 0 && dy > 0))
    found.stop({
      code: "terrain-cell-size",
      place,
      value: `${dx} x ${dy}`,
      message: "The cell size is not a number above zero.",
      mend: "Export the terrain again, north up, with its cell size in metres.",
    });
  if (dx < 0.01 || dy < 0.01)
    found.stop({
      code: "terrain-degrees",
      place,
      value: `${dx} x ${dy}`,
      message:
        "A cell is smaller than a centimetre: the grid is most likely in degrees of longitude and latitude.",
      mend: "Bring the terrain into a projected system in metres, such as the UTM zone of the site.",
    });
}
