import type { LeftOut, LeftOutReason } from "./types.ts";

/** Values that programs write where they have no height. */
const CUSTOMARY = new Set([-99, -999, -9999, -99999, -999999, -32767, -32768, 999, 9999, 99999, 999999]);
/** Always a sign for nothing: no ground lies there. */
const NEVER_GROUND = new Set([-9999, -99999, -999999, -32767, -32768, 99999, 999999]);
/** Least gap between 0 and the other heights for 0 to mean nothing [m]. */
const LEAST_GAP_M = 0.1;
/** A lone point at 0, 0 further than this from all others is missing, nearer it may be the origin of a local grid [m]. */
const FAR_ORIGIN_M = 1000;
/** How many rows that are left out are listed. */
const MOST_LISTED = 10_000;

/** Points row by row, as they stand in the file. */
interface Rows {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly z: ArrayLike<number>;
  readonly lines: ArrayLike<number>;
  readonly ids: { readonly at: (row: number) => string } | null;
  readonly length: number;
}

/** Marks rows that are not points and keeps the list of them. */
export class LeftOutRows {
  readonly listed: LeftOut[] = [];
  readonly counts = new Map<LeftOutReason, number>();
  count = 0;

  add(line: number, id: string | null, reason: LeftOutReason, value: string): void {
    this.count += 1;
    this.counts.set(reason, (this.counts.get(reason) ?? 0) + 1);
    if (this.listed.length < MOST_LISTED) this.listed.push({ line, id, reason, value });
  }
}

/**
 * Marks rows whose position or height is a sign for "nothing".
 *
 * Position 0, 0: when every other point is further from there than the others are from each other, and either by more
 * than 1 km or several rows have it, or when every row has it; on a local grid 0, 0 may be a true place. Height 0: when all other heights lie on one side of 0, no nearer than 0.1 m and no nearer
 * than half their spread (a single 0: the whole of it). A customary value such as -999: when it lies outside the other
 * heights by more than their spread and 10 m. Tells how many heights of exactly 0 were kept, and
 * whether a 0, 0 that was kept is doubtful.
 */
export function markMissing(rows: Rows, marks: Uint8Array, left: LeftOutRows, metres_per_unit: number): Kept {
  const mark = (i: number, reason: LeftOutReason, value: string): void => {
    marks[i] = 1;
    left.add(rows.lines[i]!, rows.ids?.at(i) ?? null, reason, value);
  };
  const origin = kindOfOrigin(rows, metres_per_unit);
  if (origin === "missing")
    for (let i = 0; i < rows.length; i++)
      if (rows.x[i] === 0 && rows.y[i] === 0) mark(i, "position-zero", "0, 0");
  const others = spanOf(rows, marks, (z) => z !== 0 && !CUSTOMARY.has(z));
  const isNothing = zeroIsNothing(rows, marks, metres_per_unit);
  let zeros = 0;
  for (let i = 0; i < rows.length; i++) {
    const z = rows.z[i]!;
    if (marks[i] === 1) continue;
    if (z === 0 && isNothing) mark(i, "height-zero", "0");
    else if (z === 0) zeros += 1;
    else if (CUSTOMARY.has(z) && isFarOff(z, others, metres_per_unit)) mark(i, "no-data-value", String(z));
  }
  return { zeros, doubtful_origin: origin === "doubtful" };
}

export interface Kept {
  readonly zeros: number;
  readonly doubtful_origin: boolean;
}

/** "missing", "place", or "doubtful": apart from all others, and yet no further than a local grid's origin may lie. */
function kindOfOrigin({ x, y, length }: Rows, metres_per_unit: number): "missing" | "place" | "doubtful" {
  let [west, east, south, north, zeros] = [Infinity, -Infinity, Infinity, -Infinity, 0];
  for (let i = 0; i < length; i++) {
    if (x[i] === 0 && y[i] === 0) {
      zeros += 1;
      continue;
    }
    west = Math.min(west, x[i]!);
    east = Math.max(east, x[i]!);
    south = Math.min(south, y[i]!);
    north = Math.max(north, y[i]!);
  }
  const others = length - zeros;
  if (others === 0) return zeros > 1 ? "missing" : "place";
  if (zeros === 0) return "place";
  const gap = Math.hypot(Math.max(0, west, -east), Math.max(0, south, -north));
  if (gap <= Math.hypot(east - west, north - south)) return "place";
  if (gap * metres_per_unit > FAR_ORIGIN_M || (zeros > 1 && others > 2)) return "missing";
  return others > 2 ? "doubtful" : "place";
}

interface Span {
  readonly low: number;
  readonly high: number;
  readonly zeros: number;
}

function spanOf({ z, length }: Rows, marks: Uint8Array, counts: (z: number) => boolean): Span {
  let [low, high, zeros] = [Infinity, -Infinity, 0];
  for (let i = 0; i < length; i++) {
    if (marks[i] === 1) continue;
    const v = z[i]!;
    if (v === 0) zeros += 1;
    if (!counts(v)) continue;
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return { low, high, zeros };
}

function zeroIsNothing(rows: Rows, marks: Uint8Array, metres_per_unit: number): boolean {
  const { low, high, zeros } = spanOf(rows, marks, (z) => z !== 0 && !CUSTOMARY.has(z));
  if (zeros === 0 || low > high || (low < 0 && high > 0)) return false;
  const gap = low > 0 ? low : -high;
  const share = zeros === 1 ? 1 : 0.5;
  return gap * metres_per_unit >= LEAST_GAP_M && gap >= share * (high - low);
}

function isFarOff(z: number, { low, high }: Span, metres_per_unit: number): boolean {
  if (NEVER_GROUND.has(z)) return true;
  if (low > high) return false;
  const gap = Math.max(low - z, z - high);
  return gap > high - low && gap * metres_per_unit > 10;
}
