import { defineFormula } from "../formula/index.ts";
import { movingLoads } from "./sources.ts";

const validity =
  "Simple span, two loads at a fixed distance, free to stand anywhere, the lighter not heavier than the first; P > 0, a >= 0, L > 0.";

/**
 * Largest moment of two equal loads P at a fixed distance a, moving over a simple span L.
 * P [N], a and L [m]; M [N*m]. The second term, one load alone at midspan, governs when a > 0.586 L.
 */
export const equalPairMoment = defineFormula(
  {
    id: "moving.equal-pair.moment",
    title: "Largest moment of two equal moving loads",
    symbol: "M",
    unit: "N*m",
    text: "max(P / (2 * L) * max(L - a / 2, 0)^2, P * L / 4)",
    inputs: { P: "N", a: "m", L: "m" },
    validity,
    source: movingLoads("two equal loads"),
  },
  ({ P, a, L }) => Math.max((P / (2 * L)) * Math.max(L - a / 2, 0) ** 2, (P * L) / 4),
);

/**
 * Largest moment of two unequal loads P1 >= P2 at a fixed distance a: the heavier load and the resultant stand
 * equally far from midspan, or the heavier load stands alone at midspan. P1, P2 [N], a and L [m]; M [N*m].
 */
export const unequalPairMoment = defineFormula(
  {
    id: "moving.unequal-pair.moment",
    title: "Largest moment of two unequal moving loads",
    symbol: "M",
    unit: "N*m",
    text: "max((P1 + P2) / L * (max(L - P2 * a / (P1 + P2), 0) / 2)^2, P1 * L / 4)",
    inputs: { P1: "N", P2: "N", a: "m", L: "m" },
    validity,
    source: movingLoads("two unequal loads"),
  },
  ({ P1, P2, a, L }) =>
    Math.max(((P1 + P2) / L) * (Math.max(L - (P2 * a) / (P1 + P2), 0) / 2) ** 2, (P1 * L) / 4),
);

/** Largest end reaction of two equal loads at a fixed distance a: one of them over the support. P [N], a, L [m]; R [N]. */
export const equalPairReaction = defineFormula(
  {
    id: "moving.equal-pair.reaction",
    title: "Largest end reaction of two equal moving loads",
    symbol: "R",
    unit: "N",
    text: "P * (1 + max(0, 1 - a / L))",
    inputs: { P: "N", a: "m", L: "m" },
    validity,
    source: movingLoads("two equal loads", "computed"),
  },
  ({ P, a, L }) => P * (1 + Math.max(0, 1 - a / L)),
);
