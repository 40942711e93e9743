import { normalNodes, studentBelow, studentQuantile } from "../statistics/index.ts";

/** A quantity that is mean + scale T + model_sd Z: Student's t of a strength and the normal error of a formula. */
export interface LogSpread {
  readonly mean: number;
  /** > 0. */
  readonly scale: number;
  readonly df: number;
  /** >= 0. */
  readonly model_sd: number;
}

/** Chance that such a quantity lies below x: Student's share averaged over the formula's error. */
export function chanceBelow(x: number, { mean, scale, df, model_sd }: LogSpread): number {
  if (scale === 0 && model_sd === 0) return x > mean ? 1 : 0;
  if (model_sd === 0) return studentBelow((x - mean) / scale, df);
  // The step must stay under the width of Student's share as the formula's error sees it.
  const step = Math.min(0.5, Math.max(0.02, (0.6 * scale) / model_sd));
  let chance = 0;
  for (const { z, share } of normalNodes(step)) {
    if (share < 1e-12) continue;
    const at = (x - mean - model_sd * z) / Math.max(scale, 1e-9);
    chance += share * studentBelow(at, df);
  }
  return Math.min(1, chance);
}

/** How far above its mean such a quantity reaches with chance `share`, 0.5 < share < 1. It reaches as far below. */
export function halfWidth(share: number, spread: LogSpread): number {
  const { scale, df, model_sd } = spread;
  if (model_sd === 0 || scale === 0)
    return scale * studentQuantile(share, df) + model_sd * studentQuantile(share, 1e5);
  const miss = (x: number): number => chanceBelow(x, { ...spread, mean: 0 }) - share;
  let low = { x: 0, miss: 0.5 - share };
  let high = { x: scale * studentQuantile(share, df), miss: 0 };
  while ((high.miss = miss(high.x)) < 0) [low, high] = [high, { x: 1.5 * high.x, miss: 0 }];
  for (let i = 0; i < 80 && high.x - low.x > 1e-12 * high.x; i++) {
    const x = (low.x * high.miss - high.x * low.miss) / (high.miss - low.miss);
    const at = { x, miss: miss(x) };
    if (Math.abs(at.miss) < 1e-13) return x;
    // Illinois' rule: the end that stays counts half, so that both ends move.
    if (at.miss > 0) [low, high] = [{ ...low, miss: low.miss / 2 }, at];
    else [low, high] = [at, { ...high, miss: high.miss / 2 }];
  }
  return high.x;
}

/** Where `halfWidths` works the width out in full between the narrowest and the widest. */
const KNOTS = 9;

/**
 * `halfWidth` of many spreads that differ in `mean` and `scale` alone, as the joints of one field do: in full at nine
 * scales; between them its square goes in a straight line with the square of the scale (off by less than 0.2 %).
 */
export function halfWidths(share: number, spreads: readonly LogSpread[]): number[] {
  if (spreads.length <= KNOTS) return spreads.map((s) => halfWidth(share, s));
  const low = spreads.reduce((a, s) => Math.min(a, s.scale), Infinity);
  const high = spreads.reduce((a, s) => Math.max(a, s.scale), 0);
  const gap = (high - low) / (KNOTS - 1);
  if (!(gap > 1e-9 * high)) return new Array<number>(spreads.length).fill(halfWidth(share, spreads[0]!));
  const at = Array.from({ length: KNOTS }, (_, k) =>
    halfWidth(share, { ...spreads[0]!, scale: low + k * gap }),
  );
  return spreads.map(({ scale }) => {
    const k = Math.min(KNOTS - 2, Math.floor((scale - low) / gap));
    const [a, b] = [(low + k * gap) ** 2, (low + (k + 1) * gap) ** 2];
    const x = (scale ** 2 - a) / (b - a);
    return Math.sqrt(at[k]! ** 2 + x * (at[k + 1]! ** 2 - at[k]! ** 2));
  });
}
