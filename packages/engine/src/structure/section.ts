import { defineFormula } from "../formula/index.ts";
import { beamFormulas } from "./sources.ts";

const validity = "Solid rectangle, b and d > 0.";

/** Area of a solid rectangle. b breadth, d depth [m], both > 0; A [m2]. */
export const rectangleArea = defineFormula(
  {
    id: "section.area",
    title: "Area of the section",
    symbol: "A",
    unit: "m2",
    text: "b * d",
    inputs: { b: "m", d: "m" },
    validity,
    source: beamFormulas("rectangular section"),
  },
  ({ b, d }) => b * d,
);

/** Section modulus of a solid rectangle about the axis parallel to b. d is the depth in the plane of bending [m]; S [m3]. */
export const rectangleSectionModulus = defineFormula(
  {
    id: "section.modulus",
    title: "Section modulus",
    symbol: "S",
    unit: "m3",
    text: "b * d^2 / 6",
    inputs: { b: "m", d: "m" },
    validity,
    source: beamFormulas("rectangular section"),
  },
  ({ b, d }) => (b * d ** 2) / 6,
);

/** Second moment of area of a solid rectangle about the axis parallel to b. d in the plane of bending [m]; I [m4]. */
export const rectangleInertia = defineFormula(
  {
    id: "section.inertia",
    title: "Second moment of area",
    symbol: "I",
    unit: "m4",
    text: "b * d^3 / 12",
    inputs: { b: "m", d: "m" },
    validity,
    source: beamFormulas("rectangular section"),
  },
  ({ b, d }) => (b * d ** 3) / 12,
);
