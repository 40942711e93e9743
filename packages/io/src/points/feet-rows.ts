import type { PointTable } from "./types.ts";

/** Points in one square of the search, about. */
const IN_ONE_SQUARE = 16;
/** Heights nearer to zero than this are too much alike in feet and in metres [m]. */
const LEAST_HEIGHT_M = 0.5;
const FEET_PER_M = 1 / 0.3048;

/**
 * Points whose height is about 3.28 times that of the points around them, while theirs agree with each other: typed in
 * feet among metres. In a file of feet: a height about 3.28 times too small. About n log n; calls `visit` by row.
 */
export function eachFeetRow(points: PointTable, isFeetFile: boolean, visit: (row: number) => void): void {
  const { order, starts } = squares(points);
  const factor = isFeetFile ? FEET_PER_M : 1 / FEET_PER_M;
  for (let s = 0; s + 1 < starts.length; s++) {
    const rows = order.subarray(starts[s]!, starts[s + 1]!);
    if (rows.length < 5) continue;
    const heights = Float64Array.from(rows, (r) => points.z[r]!).sort();
    const middle = heights[heights.length >> 1]!;
    if (Math.abs(middle) < LEAST_HEIGHT_M) continue;
    const spread = (heights[Math.floor(heights.length * 0.75)]! - heights[heights.length >> 2]!) / 1.35;
    for (const row of rows) {
      const z = points.z[row]!;
      const isOff = Math.abs(z - middle) > Math.max(LEAST_HEIGHT_M, 6 * spread);
      const fits = Math.abs(z * factor - middle) <= Math.max(0.05, 0.1 * Math.abs(middle), 3 * spread);
      if (isOff && fits) visit(row);
    }
  }
}

/** Rows by square of the plan, squares behind each other. */
function squares({ x, y }: PointTable): { readonly order: Uint32Array; readonly starts: Uint32Array } {
  const n = x.length;
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < n; i++) {
    west = Math.min(west, x[i]!);
    east = Math.max(east, x[i]!);
    south = Math.min(south, y[i]!);
    north = Math.max(north, y[i]!);
  }
  const [width, height] = [Math.max(1e-9, east - west), Math.max(1e-9, north - south)];
  const wanted = Math.max(1, n / IN_ONE_SQUARE);
  const size = Math.max(Math.sqrt((width * height) / wanted), Math.max(width, height) / 4000);
  const cols = Math.max(1, Math.ceil(width / size));
  const count = cols * Math.max(1, Math.ceil(height / size));
  const squareOf = (i: number): number => {
    const column = Math.min(cols - 1, Math.floor((x[i]! - west) / size));
    return Math.min(count - 1, Math.floor((y[i]! - south) / size) * cols + column);
  };
  const starts = new Uint32Array(count + 1);
  for (let i = 0; i < n; i++) starts[squareOf(i) + 1]! += 1;
  for (let s = 0; s < count; s++) starts[s + 1]! += starts[s]!;
  const next = starts.slice();
  const order = new Uint32Array(n);
  for (let i = 0; i < n; i++) {
    const s = squareOf(i);
    order[next[s]!] = i;
    next[s]! += 1;
  }
  return { order, starts };
}
