import {
  defineConstant,
  defineFormula,
  formulaCalculation,
  type AnyFormula,
  type Calculation,
  type Source,
} from "../formula/index.ts";

const SOLE: Source = {
  id: "foot-pressure",
  title: "Pressure of a person standing (socratic.org 58bd70927c0149140a038469)",
  at: "both feet 0.0258 m2; one foot half of it, drawn as 250 x 52 mm",
  status: "seen",
};
const project = (at: string): Source => ({
  id: "causey-options",
  title: "Project decision on options",
  at,
  status: "project",
});

export const soleLength = defineConstant(
  "options.sole-length",
  "Length of a foot on the ground",
  "a",
  0.25,
  "m",
  SOLE,
);
export const soleWidth = defineConstant(
  "options.sole-width",
  "Width of a foot that bears on average",
  "b",
  0.052,
  "m",
  SOLE,
);

export const stride = defineConstant(
  "options.stride",
  "Length of a step",
  "s",
  0.7,
  "m",
  project("0.7 m on soft ground; no source"),
);

export const deepPeat = defineConstant(
  "options.deep-peat",
  "Depth of peat from which loose bearers are warned of",
  "d_p",
  1,
  "m",
  project("1 m; the failures that were read stood on deep, quaking peat"),
);

/** Footfalls of one visit over a year. l one way [m], s step [m] > 0, n people, v visits a year; f [1]. */
export const footfalls = defineFormula(
  {
    id: "options.footfalls",
    title: "Footfalls in a year, there and back",
    symbol: "f",
    unit: "1",
    text: "2 * l / s * n * v",
    inputs: { l: "m", s: "m", n: "1", v: "1" },
    validity: "Straight from the start to the farthest plot: the way on foot is longer.",
    source: { id: "geometry", title: "Geometry", at: "distance over step", status: "computed" },
  },
  ({ l, s, n, v }) => ((2 * l) / s) * n * v,
);

export const optionFormulas: readonly AnyFormula[] = [soleLength, soleWidth, stride, deepPeat, footfalls];

/** Every calculation of this topic, for the registry. */
export const optionCalculations: readonly Calculation[] = optionFormulas.map(formulaCalculation);
