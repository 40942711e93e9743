/**
 * What counts in a fit, all in cubic metres: squared distance times length, as the deviation is.
 * Decisions of this project; `docs/methods/drawn-line.md` says why.
 */
export interface FitPrices {
  /** One broken rule: more than any deviation inside the corridor along hundreds of metres. */
  readonly rule: number;
  /** One metre of the guide left behind the corridor, more than the rules that parts along it could break. */
  readonly open: number;
  /** One turn on a platform, so that a slanting line becomes few long steps and not many short ones. */
  readonly turn: number;
  /** One part, beside one unit of money or harm: they decide between fits that deviate alike. */
  readonly part: number;
  readonly money: number;
  /** One part laid farther than allowed from the last place to pass: no closed area is entered for a passing platform. */
  readonly passing: number;
  /** What the line cannot do without: a platform where another branches off, a joint where a plot is reached. */
  readonly missing: number;
}

const RULE = 1000;
const OPEN = 5;
const TURN_SHARE = 1 / 8;

export function fitPrices(corridor_m: number): FitPrices {
  const rule = RULE * Math.max(1, corridor_m ** 2);
  return {
    rule,
    open: OPEN * rule,
    turn: TURN_SHARE * corridor_m ** 3,
    passing: rule / 2,
    part: 1e-4,
    money: 1e-6,
    missing: 100 * rule,
  };
}
