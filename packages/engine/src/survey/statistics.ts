import { DomainError } from "../units/index.ts";

/** Turns a median absolute deviation of normal errors into their standard deviation: 1 / 0.67449. */
export const MAD_TO_SD = 1.482_602_218_505_602;

/** Middle value, or the mean of the two middle ones. Throws `DomainError` for an empty list. */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const n = sorted.length;
  if (n === 0) throw new DomainError("median-of-nothing");
  return n % 2 === 1 ? sorted[(n - 1) / 2]! : (sorted[n / 2 - 1]! + sorted[n / 2]!) / 2;
}

/** Arithmetic mean. Throws `DomainError` for an empty list. */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new DomainError("mean-of-nothing");
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}

/** Standard deviation of a sample (divisor n - 1); null for fewer than two values. */
export function sampleDeviation(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const m = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - m) ** 2, 0) / (values.length - 1));
}

/** Spread that a few wild values cannot move: median absolute deviation, scaled to a standard deviation. */
export function robustDeviation(values: ArrayLike<number>, centre = median(values)): number {
  return MAD_TO_SD * median(Float64Array.from(values, (v) => Math.abs(v - centre)));
}

/** Value below which the given share of the sorted values lies, by linear interpolation. share 0..1. */
export function quantileOfSorted(sorted: ArrayLike<number>, share: number): number {
  if (sorted.length === 0) throw new DomainError("quantile-of-nothing");
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (sorted[high]! - sorted[low]!) * (at - low);
}
