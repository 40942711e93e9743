import type { Findings } from "../problem/index.ts";
import { readHeader } from "./ascii-header.ts";
import { AsciiNumbers } from "./ascii-numbers.ts";
import { checkCellSize, checkSize, type FileGrid } from "./grid.ts";

/**
 * Reads an ESRI ASCII grid: header lines (ncols, nrows, xllcorner or xllcenter, yllcorner or yllcenter, cellsize or dx
 * and dy, NODATA_value), then rows from north to south. Any no-data value is taken as declared, +999 too. Values may
 * run on over line ends, as the format allows, but a file written in rows must have whole rows.
 */
export function readAsciiGrid(found: Findings, bytes: Uint8Array): FileGrid {
  const header = readHeader(found, bytes);
  const { cols, rows, dx, dy } = header;
  checkSize(found, "header", cols, rows);
  checkCellSize(found, "header", dx, dy);
  checkLength(found, bytes, header.end, cols * rows);
  const values = readValues(
    found,
    new AsciiNumbers(bytes, header.end, header.endLine),
    cols,
    rows,
    header.nodata,
  );
  found.throwIfErrors();
  return {
    cols,
    rows,
    x0: header.x + (header.x_is_corner ? dx / 2 : 0),
    y0: header.y + (header.y_is_corner ? dy / 2 : 0),
    dx,
    dy,
    values,
    declare: (v) => `write the line "NODATA_value ${v}" into its header`,
  };
}

/** Up to here memory does not matter, and counting the rows gives a better message. */
const SMALL = 1_000_000;

/** A value takes a digit and a blank at least: a short file cannot hold what a lying header promises. */
function checkLength(found: Findings, bytes: Uint8Array, start: number, cells: number): void {
  if (cells > SMALL && cells > (bytes.length - start + 1) / 2)
    found.stop({
      code: "terrain-truncated",
      place: `byte ${bytes.length}`,
      value: `${cells} cells`,
      message: `The header promises ${cells} values, but the file ends at byte ${bytes.length} and cannot hold them.`,
      mend: "Copy or export the file again; it is cut off, or its header is wrong.",
    });
}

function readValues(
  found: Findings,
  numbers: AsciiNumbers,
  cols: number,
  rows: number,
  nodata: number | null,
): Float32Array {
  const values = new Float32Array(cols * rows);
  const lines = new LineCounts(cols);
  let bad = 0;
  for (let r = rows - 1; r >= 0; r--)
    for (let c = 0; c < cols; c++) {
      const v = numbers.next();
      if (v === null) return tooFew(found, numbers, lines, cols, rows, rows - 1 - r, c, values);
      if (v === "bad") {
        reportBad(found, numbers);
        if (++bad === 10) return values;
      }
      lines.count(numbers.tokenLine);
      values[r * cols + c] = v === "bad" || isNodata(v, nodata) ? NaN : v;
    }
  checkRest(found, numbers, lines, cols, rows);
  return values;
}

/** Large no-data values lose digits when they are printed: -3.4e+38 stands for the largest 32-bit float. */
const isNodata = (v: number, nodata: number | null): boolean =>
  nodata !== null &&
  (v === nodata || (Math.abs(nodata) > 1e30 && Math.abs(v - nodata) <= 0.01 * Math.abs(nodata)));

function reportBad(found: Findings, numbers: AsciiNumbers): void {
  const text = numbers.tokenText();
  found.error({
    code: "terrain-value",
    place: `line ${numbers.tokenLine}, byte ${numbers.tokenStart}`,
    value: text,
    message: "This is not a height.",
    mend: text.includes(",")
      ? "Write decimal points instead of decimal commas."
      : "Write a number, or the no-data value of the header.",
  });
}

/** Remembers the first line that does not hold one whole row, and whether any line does. */
class LineCounts {
  readonly #cols: number;
  #line = -1;
  #tokens = 0;
  #whole = 0;
  #odd: { readonly line: number; readonly tokens: number } | null = null;

  constructor(cols: number) {
    this.#cols = cols;
  }

  count(line: number): void {
    if (line === this.#line) this.#tokens += 1;
    else {
      this.#close();
      this.#line = line;
      this.#tokens = 1;
    }
  }

  #close(): void {
    if (this.#line < 0) return;
    if (this.#tokens === this.#cols) this.#whole += 1;
    else this.#odd ??= { line: this.#line, tokens: this.#tokens };
  }

  /** The first uneven line of a file that is otherwise written in rows; null for an even or a flowing file. */
  uneven(): { readonly line: number; readonly tokens: number } | null {
    this.#close();
    return this.#whole > 0 ? this.#odd : null;
  }
}

function tooFew(
  found: Findings,
  numbers: AsciiNumbers,
  lines: LineCounts,
  cols: number,
  rows: number,
  row: number,
  col: number,
  values: Float32Array,
): Float32Array {
  const odd = lines.uneven();
  found.error({
    code: "terrain-truncated",
    place: odd ? `line ${odd.line}` : `line ${numbers.line}, byte ${numbers.end}`,
    value: odd ? `${odd.tokens} values, ${cols} promised` : `${row * cols + col} of ${cols * rows} values`,
    message:
      `The file ends at byte ${numbers.end} in row ${row + 1} of ${rows}, after ${row * cols + col} of the ` +
      `${cols * rows} values that its header promises` +
      (odd ? `; line ${odd.line} is the first that does not hold ${cols} values.` : "."),
    mend: "Copy or export the file again; it is cut off, or ncols and nrows of its header are wrong.",
  });
  return values;
}

function checkRest(
  found: Findings,
  numbers: AsciiNumbers,
  lines: LineCounts,
  cols: number,
  rows: number,
): void {
  const odd = lines.uneven();
  const more = numbers.next() !== null;
  if (!more && !odd) return;
  found.error({
    code: "terrain-rows",
    place: `line ${odd?.line ?? numbers.tokenLine}`,
    value: odd ? `${odd.tokens} values, ${cols} promised` : numbers.tokenText(),
    message: more
      ? `The file goes on after the ${cols} x ${rows} values that its header promises.`
      : `Line ${odd!.line} holds ${odd!.tokens} values, not ${cols}: the rows below it are shifted.`,
    mend: "Correct ncols and nrows in the header, or export the file again.",
  });
}
