import { DomainError } from "@causey/engine/units";

/** A straight mapping from values to places on the sheet. */
export interface LinearScale {
  readonly from: number;
  readonly to: number;
  /** Place of a value [mm]. */
  readonly at: (value: number) => number;
}

/**
 * A scale that puts `from` at `start` and `to` at `end`.
 *
 * from, to    values, finite and not equal
 * start, end  places on the sheet [mm]; `end` may lie before `start`
 */
export function linearScale(
  [from, to]: readonly [number, number],
  [start, end]: readonly [number, number],
): LinearScale {
  if (!Number.isFinite(from) || !Number.isFinite(to) || from === to)
    throw new DomainError("chart-scale", { from: String(from), to: String(to) });
  return { from, to, at: (value) => start + ((value - from) / (to - from)) * (end - start) };
}

/**
 * Round values (1, 2 or 5 times a power of ten) inside a range, its ends included where they are round themselves.
 *
 * low, high  finite, low < high
 * about      how many are wanted; the count is between a third and two and a half times it
 */
export function niceTicks(low: number, high: number, about: number): number[] {
  const step = niceStep((high - low) / about);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const value = Number(((first + i) * step).toFixed(digits));
    return value === 0 ? 0 : value;
  });
}

/** The round step nearest above a rough one. Throws `DomainError` unless it is a positive number. */
export function niceStep(rough: number): number {
  if (!(rough > 0) || !Number.isFinite(rough)) throw new DomainError("chart-step", { step: String(rough) });
  const power = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5].find((k) => k * power >= rough * (1 - 1e-9)) ?? 10) * power;
}
