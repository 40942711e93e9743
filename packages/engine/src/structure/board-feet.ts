import { defineFormula } from "../formula/index.ts";
import { lumberMeasure } from "./sources.ts";

/**
 * Board feet of one piece, from its nominal (not dressed) size: the yard's measure of lumber.
 * t, w nominal thickness and width in inches [1]; L length in feet [1]; board feet [1].
 */
export const boardFeet = defineFormula(
  {
    id: "timber.board-feet",
    title: "Board feet of one piece",
    symbol: "bf",
    unit: "1",
    text: "t * w * L / 12",
    inputs: { t: "1", w: "1", L: "1" },
    validity: "t and w nominal, in inches; L in feet; all > 0. Thickness under 1 in counts as 1.",
    source: lumberMeasure,
  },
  ({ t, w, L }) => (t * w * L) / 12,
);
