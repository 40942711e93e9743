import { quote, type Findings } from "../problem/index.ts";
import type { FileGrid } from "./grid.ts";

/** Cells within this many of cells without data are the edge of what is known. */
const EDGE_CELLS = 5;
/** The highest part of the ground that is looked at, and how much of it at the edge is named. */
const HIGHEST_SHARE = 0.01;
const MOST_AT_EDGE = 0.75;
/** Fewer cells than this tell nothing about an edge. */
const LEAST_CELLS = 1000;
/** Fewer cells without data than this are no part of a site. */
const LEAST_GAP_CELLS = 100;
/** Bins for the height above which the highest hundredth lies. */
const BINS = 10_000;

/**
 * Names what is odd about a terrain that was read well, so that nobody is surprised by it later: cells that are not
 * square, cells without data, two whole numbers in the place of heights, highest ground all along the edge of the
 * known. Nothing is changed. The bounds are decisions of this project.
 */
export function noteOddities(found: Findings, grid: FileGrid): void {
  noteShape(found, grid);
  const known = summarise(grid.values);
  if (known === null) return;
  noteGaps(found, grid, known);
  if (noteMask(found, grid, known)) return;
  noteHighEdge(found, grid, known);
}

function noteShape(found: Findings, { dx, dy }: FileGrid): void {
  if (Math.abs(dx - dy) <= 1e-6 * dx) return;
  const [wide, tall] = [dx, dy].map((v) => String(Number(v.toFixed(6))));
  found.warn({
    code: "terrain-not-square",
    place: "cell size",
    value: `${wide} x ${tall} m`,
    message: `The cells are not square: ${wide} m wide and ${tall} m tall. They are read as they are; nothing is resampled.`,
    mend: "Nothing needs to be done here. Another grid is to be laid over it by its coordinates, not cell by cell.",
  });
}

interface Known {
  readonly count: number;
  readonly low: number;
  readonly high: number;
}

function summarise(values: Float32Array): Known | null {
  let [count, low, high] = [0, Infinity, -Infinity];
  for (const v of values) {
    if (Number.isNaN(v)) continue;
    count += 1;
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return count === 0 ? null : { count, low, high };
}

function noteGaps(found: Findings, { values }: FileGrid, { count }: Known): void {
  const missing = values.length - count;
  if (missing < LEAST_GAP_CELLS) return;
  const share = ((100 * missing) / values.length).toPrecision(3);
  found.warn({
    code: "terrain-gaps",
    place: `${missing} of ${values.length} cells`,
    value: `${share} %`,
    message: `${share} % of the cells hold no height: nothing is known of the ground there, and no walkway is laid over it.`,
    mend: "If the site reaches into these cells, get terrain that covers it; otherwise nothing needs to be done.",
  });
}

function noteMask(found: Findings, { values }: FileGrid, { low, high }: Known): boolean {
  const isTwoWhole =
    high > low &&
    Number.isInteger(low) &&
    Number.isInteger(high) &&
    values.every((v) => v === low || v === high || Number.isNaN(v));
  if (isTwoWhole)
    found.warn({
      code: "terrain-mask",
      place: "all cells",
      value: `${low} and ${high}`,
      message: `The cells of ${quote(found.file)} hold only ${low} and ${high}: this looks like a map of yes and no, not like heights.`,
      mend: "Take the file of heights as the terrain; draw the outline of a map of yes and no in a mapping program and bring it in as areas.",
    });
  return isTwoWhole;
}

function noteHighEdge(found: Findings, grid: FileGrid, { count, low, high }: Known): void {
  if (count < LEAST_CELLS || count === grid.values.length) return;
  const bound = boundOfHighest(grid.values, count, low, high);
  let [highest, atEdge, top] = [0, 0, -1];
  grid.values.forEach((z, i) => {
    if (Number.isNaN(z) || z <= bound) return;
    highest += 1;
    if (isAtEdge(grid, i)) atEdge += 1;
    if (z === high) top = i;
  });
  if (highest === 0 || atEdge < MOST_AT_EDGE * highest) return;
  const x = grid.x0 + (top % grid.cols) * grid.dx;
  const y = grid.y0 + Math.floor(top / grid.cols) * grid.dy;
  found.warn({
    code: "terrain-edge-high",
    place: `east ${x.toFixed(1)}, north ${y.toFixed(1)}`,
    value: high.toFixed(2),
    message: `${Math.round((100 * atEdge) / highest)} % of the highest ground (from ${bound.toFixed(2)} up to ${high.toFixed(2)}) lies within ${EDGE_CELLS} cells of where the file ends: the foot of a bank that goes on beyond it, or cells smeared over the edge.`,
    mend: "Get terrain that reaches over the bank, or start the walkway further in; what lies beyond the edge is not known.",
  });
}

/** The height that all but the highest hundredth stay under, to a ten-thousandth of the range. */
function boundOfHighest(values: Float32Array, count: number, low: number, high: number): number {
  const bins = new Uint32Array(BINS + 1);
  const step = (high - low) / BINS;
  if (step === 0) return high;
  for (const v of values)
    if (!Number.isNaN(v)) {
      const bin = Math.floor((v - low) / step);
      bins[bin] = bins[bin]! + 1;
    }
  let above = 0;
  for (let bin = BINS; bin >= 0; bin--) {
    above += bins[bin]!;
    if (above > HIGHEST_SHARE * count) return low + (bin + 1) * step;
  }
  return low;
}

function isAtEdge({ cols, rows, values }: FileGrid, i: number): boolean {
  const [col, row] = [i % cols, Math.floor(i / cols)];
  for (let r = Math.max(0, row - EDGE_CELLS); r <= Math.min(rows - 1, row + EDGE_CELLS); r++)
    for (let c = Math.max(0, col - EDGE_CELLS); c <= Math.min(cols - 1, col + EDGE_CELLS); c++)
      if (Number.isNaN(values[r * cols + c]!)) return true;
  return false;
}
