import type { Findings } from "../problem/index.ts";
import type { FileGrid } from "./grid.ts";

/** Values that programs write where they have no data. */
const CUSTOMARY = new Set([
  99, 999, 9999, 99999, 999999, 255, 32767, 65535, -1, -99, -999, -9999, -99999, -999999, -32767, -32768,
]);

/** No ground on earth lies further from sea level than this [m]; the deepest sea and the highest peak lie within. */
const NO_GROUND_M = 12_000;

/**
 * Reports heights that look like an undeclared no-data value: further from zero than any ground, or one value many
 * times over, far outside the rest. It is not guessed that they are: a planner who takes 999 for ground floods a
 * marsh with hills, and one who drops a true height digs a hole.
 *
 * heights_per_metre  1 for metres, 1 / 0.3048 for feet
 */
export function checkFillValues(found: Findings, grid: FileGrid, heights_per_metre: number): void {
  const excluded = new Set<number>();
  for (const side of ["high", "low", "high", "low"] as const) {
    const end = extreme(grid.values, excluded, side);
    if (end === null || !isSuspect(end, heights_per_metre)) continue;
    excluded.add(end.value);
    found.error({
      code: "undeclared-nodata",
      place: `${end.count} of ${grid.values.length} cells`,
      value: end.value,
      message:
        `The height ${end.value} stands in ${end.count} cells, far outside all others ` +
        '(or beyond any ground on earth): it looks like a value for "no data" that the file does not declare.',
      mend: `If it means no data, declare it: ${grid.declare(end.value)}. If it is ground, cut these cells out.`,
    });
  }
}

interface Extreme {
  readonly value: number;
  readonly count: number;
  /** To the next different value, and from there to the other end. Infinity when there is no other value. */
  readonly gap: number;
  readonly spread: number;
}

function extreme(values: Float32Array, excluded: ReadonlySet<number>, side: "high" | "low"): Extreme | null {
  const sign = side === "high" ? 1 : -1;
  let top = -Infinity;
  let next = -Infinity;
  let bottom = Infinity;
  let count = 0;
  for (const value of values) {
    const v = value * sign;
    if (Number.isNaN(v) || (excluded.size > 0 && excluded.has(value))) continue;
    if (v > top) [next, top, count] = [top, v, 1];
    else if (v === top) count += 1;
    else if (v > next) next = v;
    if (v < bottom) bottom = v;
  }
  if (count === 0) return null;
  return { value: top * sign, count, gap: top - next, spread: next - Math.min(bottom, next) };
}

function isSuspect(end: Extreme, heights_per_metre: number): boolean {
  if (Math.abs(end.value) > NO_GROUND_M * heights_per_metre) return true;
  if (end.count < 4 || !Number.isFinite(end.gap)) return false;
  return CUSTOMARY.has(end.value)
    ? end.gap > Math.max(10 * heights_per_metre, end.spread)
    : end.gap > Math.max(100 * heights_per_metre, 5 * end.spread);
}
