import { defineConstant, defineFormula, type Trace } from "../../formula/index.ts";
import { metres, type Qty } from "../../units/index.ts";
import { ec5 } from "./sources.ts";

const lengthShare = (id: string, title: string, value: number, status: "seen" | "memory") =>
  defineConstant(
    `ec5-2004.effective-length.${id}`,
    `Effective length against sideways buckling, of the free length, ${title}`,
    "k_l",
    value,
    "1",
    ec5("Table 6.1", status),
  );

export const lengthShares = {
  uniform: lengthShare("uniform", "uniform load", 0.9, "seen"),
  "midspan-point": lengthShare("point", "load at midspan", 0.8, "memory"),
} as const;

/** Effective length with the load on the pressed edge. k_l [1], l free length, h depth [m]; lef [m]. */
export const effectiveLengthTop = defineFormula(
  {
    id: "ec5-2004.effective-length",
    title: "Effective length, load on the pressed edge",
    symbol: "lef",
    unit: "m",
    text: "k_l * l + 2 * h",
    inputs: { k_l: "1", l: "m", h: "m" },
    validity: "Simple span held against turning at its ends.",
    source: ec5("Table 6.1, note", "memory"),
  },
  ({ k_l, l, h }) => k_l * l + 2 * h,
);

/** Effective length with the load at the middle of the depth. */
export const effectiveLengthMiddle = defineFormula(
  {
    id: "ec5-2004.effective-length.middle",
    title: "Effective length, load at the middle of the depth",
    symbol: "lef",
    unit: "m",
    text: "k_l * l",
    inputs: { k_l: "1", l: "m" },
    validity: "Simple span held against turning at its ends.",
    source: ec5("Table 6.1", "memory"),
  },
  ({ k_l, l }) => k_l * l,
);

/** Critical bending stress of a softwood rectangle. E0,05 [Pa], b breadth, h depth, lef [m]; [Pa]. */
export const criticalBendingStress = defineFormula(
  {
    id: "ec5-2004.critical-bending",
    title: "Critical bending stress",
    symbol: "s_crit",
    unit: "Pa",
    text: "0.78 * b^2 * E_05 / (h * lef)",
    inputs: { b: "m", h: "m", E_05: "Pa", lef: "m" },
    validity: "Softwood, solid rectangle.",
    source: ec5("equation 6.32", "seen"),
  },
  ({ b, h, E_05, lef }) => (0.78 * b ** 2 * E_05) / (h * lef),
);

/** Relative slenderness: the root of characteristic strength over critical stress. f, s_crit [Pa]; [1]. */
export const relativeSlenderness = defineFormula(
  {
    id: "ec5-2004.relative-slenderness",
    title: "Relative slenderness of the beam",
    symbol: "lam_m",
    unit: "1",
    text: "sqrt(fm_k / s_crit)",
    inputs: { fm_k: "Pa", s_crit: "Pa" },
    validity: "Both > 0.",
    source: ec5("equation 6.30", "seen"),
  },
  ({ fm_k, s_crit }) => Math.sqrt(fm_k / s_crit),
);

/** Factor for sideways buckling. lam [1] > 0; kcrit [1]: 1 up to 0.75, then a line, 1 / lam^2 from 1.4 on. */
export const lateralBucklingFactor = defineFormula(
  {
    id: "ec5-2004.kcrit",
    title: "Factor for sideways buckling",
    symbol: "kcrit",
    unit: "1",
    text: "min(1, max(1.56 - 0.75 * lam, 1 / max(lam, 1.4)^2))",
    inputs: { lam: "1" },
    validity: "lam > 0.",
    source: ec5("equation 6.34", "seen"),
  },
  ({ lam }) => Math.min(1, Math.max(1.56 - 0.75 * lam, 1 / Math.max(lam, 1.4) ** 2)),
);

/** Relative slenderness of a post. l free length, t the side it leans over [m], f, E0,05 [Pa]; [1]. */
export const columnSlenderness = defineFormula(
  {
    id: "ec5-2004.column-slenderness",
    title: "Relative slenderness of the post",
    symbol: "lam_c",
    unit: "1",
    text: "l * sqrt(12) / t / pi * sqrt(fc0_k / E_05)",
    inputs: { l: "m", t: "m", fc0_k: "Pa", E_05: "Pa" },
    validity: "Solid rectangle, ends free to turn.",
    source: ec5("equations 6.21 and 6.22", "memory"),
  },
  ({ l, t, fc0_k, E_05 }) => (((l * Math.sqrt(12)) / t) * Math.sqrt(fc0_k / E_05)) / Math.PI,
);

/** Help value of the post's buckling, straightness 0.2 for solid timber. lam [1]; k [1]. */
export const columnHelp = defineFormula(
  {
    id: "ec5-2004.column-k",
    title: "Instability of the post",
    symbol: "k_c",
    unit: "1",
    text: "0.5 * (1 + 0.2 * (lam - 0.3) + lam^2)",
    inputs: { lam: "1" },
    validity: "Solid timber (beta_c 0.2), lam > 0.3.",
    source: ec5("equations 6.27 to 6.29", "memory"),
  },
  ({ lam }) => 0.5 * (1 + 0.2 * (lam - 0.3) + lam ** 2),
);

/** Factor for the buckling of a post. lam, k [1]; kc [1]. */
export const columnFactor = defineFormula(
  {
    id: "ec5-2004.kc",
    title: "Factor for the buckling of the post",
    symbol: "kc",
    unit: "1",
    text: "min(1, 1 / (k + sqrt(k^2 - lam^2)))",
    inputs: { k: "1", lam: "1" },
    validity: "k of the same slenderness, k > lam.",
    source: ec5("equation 6.25", "memory"),
  },
  ({ k, lam }) => Math.min(1, 1 / (k + Math.sqrt(k ** 2 - lam ** 2))),
);

/** Slenderness up to which a post does not buckle. */
export const stockyPost = defineConstant(
  "ec5-2004.stocky-post",
  "Slenderness up to which a post does not buckle",
  "lam_0",
  0.3,
  "1",
  ec5("6.3.2(2)", "memory"),
);

export interface Rectangle {
  readonly b: Qty<"m">;
  readonly h: Qty<"m">;
}

/** kcrit of a beam with a free length, its load on the pressed edge; 1 where it is no deeper than broad. */
export function lateralBuckling(
  { b, h }: Rectangle,
  lef: Qty<"m">,
  fm_k: Qty<"Pa">,
  E_05: Qty<"Pa">,
  trace?: Trace,
) {
  const s_crit = criticalBendingStress({ b, h, E_05, lef }, trace);
  const lam = relativeSlenderness({ fm_k, s_crit }, trace);
  return { s_crit, lam, kcrit: lateralBucklingFactor({ lam }, trace) };
}

export const loadOnTop = (
  free_m: number,
  h: Qty<"m">,
  load: keyof typeof lengthShares,
  trace?: Trace,
): Qty<"m"> => effectiveLengthTop({ k_l: lengthShares[load]({}, trace), l: metres(free_m), h }, trace);
