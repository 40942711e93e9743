import { defineFormula } from "../formula/index.ts";

const saintVenant = {
  id: "saint-venant-torsion",
  title: "Saint-Venant's torsion of a rectangle, usual closed approximation",
  at: "J = a b^3 (1/3 - 0.21 b/a (1 - b^4 / (12 a^4))), a >= b",
  status: "memory",
} as const;

/** Torsion constant of a rectangle. a longer side, b shorter side [m], a >= b > 0; J [m4], within 0.5 %. */
export const torsionConstant = defineFormula(
  {
    id: "section.torsion",
    title: "Torsion constant of a rectangle",
    symbol: "J",
    unit: "m4",
    text: "a * b^3 * (1 / 3 - 0.21 * b / a * (1 - b^4 / (12 * a^4)))",
    inputs: { a: "m", b: "m" },
    validity: "Solid rectangle, a >= b > 0, free to warp; within 0.5 per cent.",
    source: saintVenant,
  },
  ({ a, b }) => a * b ** 3 * (1 / 3 - ((0.21 * b) / a) * (1 - b ** 4 / (12 * a ** 4))),
);

/** Shear modulus of softwood along the grain from its stiffness. E [Pa]; G [Pa]. */
export const shearModulus = defineFormula(
  {
    id: "timber.shear-modulus",
    title: "Shear modulus along the grain",
    symbol: "G",
    unit: "Pa",
    text: "E / 16",
    inputs: { E: "Pa" },
    validity: "Softwood; a share of common use, not a tabulated value of the grade.",
    source: { id: "timber-practice", title: "G = E/16 for softwood", status: "memory" },
  },
  ({ E }) => E / 16,
);

/** Shear stiffness of a rectangle: five sixths of its area. G [Pa], A [m2]; GA [N]. */
export const shearStiffness = defineFormula(
  {
    id: "section.shear-stiffness",
    title: "Shear stiffness of a rectangle",
    symbol: "GA",
    unit: "N",
    text: "5 / 6 * G * A",
    inputs: { G: "Pa", A: "m2" },
    validity: "Solid rectangle.",
    source: {
      id: "mechanics",
      title: "Strength of materials",
      at: "shear coefficient 5/6",
      status: "memory",
    },
  },
  ({ G, A }) => (5 / 6) * G * A,
);
