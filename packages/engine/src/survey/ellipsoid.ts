import { quantileOfSorted } from "./statistics.ts";

/** Heights further than this from every known height of the site are not of one datum with them [m]. */
export const FAR_FROM_KNOWN_M = 10;
/** Without known heights: ground does not lie in this range below zero, but ellipsoid heights at sea level do [m]. */
export const BELOW_SEA_M = { most: -15, least: -110 } as const;

export interface EllipsoidVerdict {
  readonly looksIt: boolean;
  /** The rule that decided, in words with its numbers. */
  readonly rule: string;
  /** Middle height [m]. */
  readonly median_m: number;
}

/**
 * Whether heights look like heights above the ellipsoid, as satellites give them, instead of above a vertical datum.
 *
 * heights_m  of the points [m]
 * known_m    heights of marks, check shots and water levels on the plan's datum [m]; may be empty
 * With known heights: looks it when the middle 90 % of the heights lie more than 10 m off every one of them. Without:
 * when the middle 90 % lie between -15 and -110 m. The bounds are decisions of this project: the geoid lies between
 * about 107 m below and 86 m above the ellipsoid (from memory), and hardly any marsh lies 15 m below the sea. Where the
 * geoid lies above the ellipsoid nothing can be told without a known height. Null for no heights.
 */
export function looksLikeEllipsoidHeights(
  heights_m: ArrayLike<number>,
  known_m: readonly number[],
): EllipsoidVerdict | null {
  if (heights_m.length === 0) return null;
  const sorted = Float64Array.from(heights_m).sort();
  const [low, middle, high] = [0.05, 0.5, 0.95].map((share) => quantileOfSorted(sorted, share)) as [
    number,
    number,
    number,
  ];
  const span = `nine tenths of the heights lie between ${low.toFixed(2)} and ${high.toFixed(2)} m`;
  if (known_m.length === 0)
    return {
      looksIt: high <= BELOW_SEA_M.most && low >= BELOW_SEA_M.least,
      rule: `${span}; ground is not expected between ${BELOW_SEA_M.least} and ${BELOW_SEA_M.most} m`,
      median_m: middle,
    };
  const gap = Math.min(...known_m.map((k) => Math.max(0, low - k, k - high)));
  return {
    looksIt: gap > FAR_FROM_KNOWN_M,
    rule: `${span}, ${gap.toFixed(2)} m from the nearest known height; ${FAR_FROM_KNOWN_M} m are allowed`,
    median_m: middle,
  };
}
