import { DomainError } from "../units/index.ts";
import { timeOfLevel } from "./half-cosine.ts";
import { coveredTime, stretches, type Series } from "./series.ts";

/**
 * Share of the covered time that each of many heights lies under water: the same as `wetTime` for each of them, in one
 * pass over the record. Null when nothing is covered.
 *
 * heights  on the series' datum, in any order  [m]
 */
export function wetShares(series: Series, heights: readonly number[]): ReadonlyMap<number, number> | null {
  const covered = coveredTime(series);
  if (covered <= 0) return null;
  const sorted = Float64Array.from(new Set(heights)).sort();
  if (sorted.some((z) => !Number.isFinite(z)))
    throw new DomainError("height-not-finite", { heights: sorted.length });
  const wet = new Float64Array(sorted.length);
  // Time for which the line lies wholly at or above the height here and all lower ones.
  const whole = new Float64Array(sorted.length + 1);
  const { t_s, z_m: z, kind } = series;
  for (const [first, last] of stretches(series))
    for (let i = first; i < last; i++) {
      const low = Math.min(z[i]!, z[i + 1]!);
      const high = Math.max(z[i]!, z[i + 1]!);
      const long = t_s[i + 1]! - t_s[i]!;
      let at = countUpTo(sorted, low);
      whole[at]! += long;
      for (; at < sorted.length && sorted[at]! <= high; at++)
        wet[at]! += long * shareAbove(kind, low, high, sorted[at]!);
    }
  let above = 0;
  for (let i = sorted.length - 1; i >= 0; i--) {
    above += whole[i + 1]!;
    wet[i]! += above;
  }
  return new Map(Array.from(sorted, (height, i) => [height, Math.min(1, wet[i]! / covered)]));
}

/** How many of the sorted numbers are at most `most`. */
function countUpTo(sorted: Float64Array, most: number): number {
  let [from, to] = [0, sorted.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (sorted[middle]! <= most) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** Share of a rise from `low` to `high`, or of the same fall, that lies above z between them. */
const shareAbove = (kind: Series["kind"], low: number, high: number, z: number): number =>
  kind === "readings" ? (high - z) / (high - low) : 1 - timeOfLevel(low, high, z);
