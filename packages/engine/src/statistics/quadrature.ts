import { normalDensity } from "./normal.ts";

/** A place and its share of the whole; the shares add up to 1. */
export interface Node {
  readonly z: number;
  readonly share: number;
}

const REACH = 8;

/**
 * Evenly spaced nodes of the standard normal distribution. `step` > 0, at most 0.5 standard deviations.
 *
 * The trapezoid rule meets a smooth function under the bell to far more digits than the step suggests; a function with
 * a kink or a sharp step needs a step well under its width.
 */
export function normalNodes(step: number): readonly Node[] {
  const half = Math.ceil(REACH / step);
  const raw = Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) * step);
  const total = raw.reduce((sum, z) => sum + normalDensity(z), 0);
  return raw.map((z) => ({ z, share: normalDensity(z) / total }));
}
