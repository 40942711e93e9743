import { defineFormula, type AnyFormula, type Source } from "../formula/index.ts";

const statics = (at: string): Source => ({ id: "statics", title: "Statics", at, status: "computed" });

/** Moment of feet beyond the outer stringer about it. W [N], e how far beyond [m]; M_t [N*m]. */
export const overhangTipping = defineFormula(
  {
    id: "check.overhang-tipping",
    title: "Moment of feet at the edge about the outer stringer",
    symbol: "M_t",
    unit: "N*m",
    text: "W * e",
    inputs: { W: "N", e: "m" },
    validity: "e >= 0: feet stand outside the outer stringer.",
    source: statics("moment about the outer stringer"),
  },
  ({ W, e }) => W * e,
);

/** Moment of own weight that keeps a part down. G [N], y outer stringer off the middle [m]; M_r [N*m]. */
export const ownRestoring = defineFormula(
  {
    id: "check.own-restoring",
    title: "Moment of own weight about the outer stringer",
    symbol: "M_r",
    unit: "N*m",
    text: "G * y",
    inputs: { G: "N", y: "m" },
    validity: "A part that is alike on both sides of its middle line.",
    source: statics("weight in the middle"),
  },
  ({ G, y }) => G * y,
);

export const frameFormulas: readonly AnyFormula[] = [overhangTipping, ownRestoring];
