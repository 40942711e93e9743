import { defineConstant, defineFormula, type AnyFormula, type Source } from "../formula/index.ts";

const project = (at: string): Source => ({
  id: "causey-checks",
  title: "Project decision on checks",
  at,
  status: "project",
});

export const handlingFactor = defineConstant(
  "check.handling-factor",
  "Allowance for jerks while a module is lifted and set down",
  "k_h",
  2,
  "1",
  project("twice its own soaked weight; no source"),
);

/** Load along a stringer while its module is lifted. w own weight [N/m], k_h [1]; w_h [N/m]. */
export const handlingLoad = defineFormula(
  {
    id: "check.handling-load",
    title: "Load along the stringer while the module is lifted",
    symbol: "w_h",
    unit: "N/m",
    text: "w * k_h",
    inputs: { w: "N/m", k_h: "1" },
    validity: "Held at its two ends, deck up.",
    source: project("own weight by the allowance"),
  },
  ({ w, k_h }) => w * k_h,
);

/** Load along a stringer of n modules stacked on it. w of one module [N/m], n [1]; w_s [N/m]. */
export const stackLoad = defineFormula(
  {
    id: "check.stack-load",
    title: "Load along the stringer of the modules stacked on it",
    symbol: "w_s",
    unit: "N/m",
    text: "w * n",
    inputs: { w: "N/m", n: "1" },
    validity: "Modules of the same length, laid flat one on another, soaked.",
    source: project("the laid module's own weight once for each on it"),
  },
  ({ w, n }) => w * n,
);

/** Sum of two live moments, of what is stacked and of those who walk beside it. [N*m]. */
export const stackedMoment = defineFormula(
  {
    id: "check.stacked-moment",
    title: "Moment of the stack and of those who walk beside it",
    symbol: "M_l",
    unit: "N*m",
    text: "M_s + M_w",
    inputs: { M_s: "N*m", M_w: "N*m" },
    validity: "Both at their largest.",
    source: project("both at once"),
  },
  ({ M_s, M_w }) => M_s + M_w,
);

/** Sum of two live end shears. [N]. */
export const stackedShear = defineFormula(
  {
    id: "check.stacked-shear",
    title: "End shear of the stack and of those who walk beside it",
    symbol: "V_l",
    unit: "N",
    text: "V_s + V_w",
    inputs: { V_s: "N", V_w: "N" },
    validity: "Both at their largest.",
    source: project("both at once"),
  },
  ({ V_s, V_w }) => V_s + V_w,
);

export const handlingFormulas: readonly AnyFormula[] = [
  handlingFactor,
  handlingLoad,
  stackLoad,
  stackedMoment,
  stackedShear,
];
