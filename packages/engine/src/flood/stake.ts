import { defineFormula } from "../formula/index.ts";

const shaft = (at: string) =>
  ({
    id: "alpha-method",
    title: "Alpha method: shaft friction of piles in clay",
    at,
    status: "memory",
  }) as const;

/**
 * Share of the undrained strength that grips the shaft of a stake.
 * su [Pa] > 0; alpha [1], 1 up to 25 kPa, falling to 0.5 at 70 kPa and beyond.
 */
export const adhesionFactor = defineFormula(
  {
    id: "ground.stake.adhesion",
    title: "Adhesion factor of the shaft",
    symbol: "alpha",
    unit: "1",
    text: "max(0.5, min(1, 1 - 0.5 * (su - 25000) / 45000))",
    inputs: { su: "Pa" },
    validity:
      "Set-up complete; in the first hours after driving a stake holds 0.3 to 0.5 of it, a tapered stake less.",
    source: shaft("alpha 1 below 25 kPa, 0.5 at 70 kPa"),
  },
  ({ su }) => Math.max(0.5, Math.min(1, 1 - (0.5 * (su - 25_000)) / 45_000)),
);

/** Girth of a rectangular stake. b, d [m]; P [m]. */
export const stakeGirth = defineFormula(
  {
    id: "ground.stake.girth",
    title: "Girth of the stake",
    symbol: "P",
    unit: "m",
    text: "2 * (b + d)",
    inputs: { b: "m", d: "m" },
    validity: "Rectangular stake.",
    source: { id: "geometry", title: "Geometry", status: "computed" },
  },
  ({ b, d }) => 2 * (b + d),
);

/** Length of a stake that grips: the top 1.5 b or 0.2 m, whichever is more, is ignored. L embedment, b wider side [m]. */
export const grippingLength = defineFormula(
  {
    id: "ground.stake.gripping-length",
    title: "Length of the stake that grips",
    symbol: "L_g",
    unit: "m",
    text: "max(0, L - max(1.5 * b, 0.2))",
    inputs: { L: "m", b: "m" },
    validity: "The ground near the surface cracks, dries and is stirred by sway.",
    source: shaft("ignore the top 1.5 widths or 0.2 m"),
  },
  ({ L, b }) => Math.max(0, L - Math.max(1.5 * b, 0.2)),
);

/**
 * Pull-out of one straight stake in soft ground, ultimate, its own weight not counted.
 * alpha [1], su [Pa], P girth [m], L_g gripping length [m]; R [N].
 */
export const stakePullOut = defineFormula(
  {
    id: "ground.stake.pull-out",
    title: "Pull-out of one stake",
    symbol: "R_1",
    unit: "N",
    text: "alpha * su * P * L_g",
    inputs: { alpha: "1", su: "Pa", P: "m", L_g: "m" },
    validity: "Straight stake driven without a hole, undrained, set-up complete, no sway.",
    source: shaft("R = alpha su P L"),
  },
  ({ alpha, su, P, L_g }) => alpha * su * P * L_g,
);
