import { defineFormula } from "../formula/index.ts";

const statics = (at: string) =>
  ({
    id: "awc-da6-2007",
    title: "AWC Design Aid No. 6, Beam Design Formulas with Shear and Moment Diagrams (2007)",
    at: `simple beam, uniformly distributed load, solved for the span: ${at}`,
    status: "computed",
  }) as const;
const validity = "Simple span, uniform load, small deflection, all inputs > 0.";

/** Load per metre of one joist. p [Pa], s spacing [m]; w [N/m]. */
export const joistLoad = defineFormula(
  {
    id: "joist.load",
    title: "Load per length of joist",
    symbol: "w",
    unit: "N/m",
    text: "p * s",
    inputs: { p: "Pa", s: "m" },
    validity,
    source: statics("load on the width that one joist carries"),
  },
  ({ p, s }) => p * s,
);

/** Span at which bending is used up. Fb [Pa], S [m3], w [N/m]; L [m]. */
export const bendingSpan = defineFormula(
  {
    id: "joist.span.bending",
    title: "Span by bending",
    symbol: "L_b",
    unit: "m",
    text: "sqrt(8 * Fb * S / w)",
    inputs: { Fb: "Pa", S: "m3", w: "N/m" },
    validity,
    source: statics("M = w L^2 / 8"),
  },
  ({ Fb, S, w }) => Math.sqrt((8 * Fb * S) / w),
);

/** Span at which shear is used up, taken at the support. Fv [Pa], A [m2], w [N/m]; L [m]. */
export const shearSpan = defineFormula(
  {
    id: "joist.span.shear",
    title: "Span by shear",
    symbol: "L_v",
    unit: "m",
    text: "2 * (2 / 3 * Fv * A) / w",
    inputs: { Fv: "Pa", A: "m2", w: "N/m" },
    validity: `${validity} Shear at the support, nothing taken off for the depth.`,
    source: statics("1.5 V / A = Fv"),
  },
  ({ Fv, A, w }) => (2 * ((2 / 3) * Fv * A)) / w,
);

/** Span at which the live deflection reaches L/n. E [Pa], I [m4], w live load [N/m], n [1]; L [m]. */
export const deflectionSpan = defineFormula(
  {
    id: "joist.span.deflection",
    title: "Span by live deflection",
    symbol: "L_d",
    unit: "m",
    text: "(384 * E * I / (5 * w * n))^(1 / 3)",
    inputs: { E: "Pa", I: "m4", w: "N/m", n: "1" },
    validity,
    source: statics("5 w L^4 / (384 E I) = L / n"),
  },
  ({ E, I, w, n }) => ((384 * E * I) / (5 * w * n)) ** (1 / 3),
);
