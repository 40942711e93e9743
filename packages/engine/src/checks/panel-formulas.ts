import { defineConstant, defineFormula, type Source, type SourceStatus } from "../formula/index.ts";
import { M_PER_IN } from "../units/index.ts";
import { grating, panelStrengthFormulas, perWidth } from "./panel-strength.ts";

const rule = (at: string, status: SourceStatus): Source => ({
  id: "causey-panels",
  title: "Project rule on panel decks",
  at,
  status,
});

/** Deflection of a simple span under uniform load. u [Pa], L [m], k [N*m]; delta [m]. */
export const panelUniformDeflection = defineFormula(
  {
    id: "panel.deflection.uniform",
    title: "Deflection of the panel under uniform load",
    symbol: "delta_u",
    unit: "m",
    text: "5 * u * L^4 / (384 * k)",
    inputs: { u: "Pa", L: "m", k: "N*m" },
    validity: "One simple span, bending part only.",
    source: perWidth("simple beam, uniformly distributed load"),
  },
  ({ u, L, k }) => (5 * u * L ** 4) / (384 * k),
);

/** Deflection of a simple span under a line load at midspan. c [N/m], L [m], k [N*m]; delta [m]. */
export const panelLineDeflection = defineFormula(
  {
    id: "panel.deflection.line",
    title: "Deflection of the panel under the load",
    symbol: "delta_l",
    unit: "m",
    text: "c * L^3 / (48 * k)",
    inputs: { c: "N/m", L: "m", k: "N*m" },
    validity: "One simple span, bending part only.",
    source: perWidth("simple beam, concentrated load at center"),
  },
  ({ c, L, k }) => (c * L ** 3) / (48 * k),
);

/** Width of panel that takes a load. c contact width, L span, W width of the deck [m], s [1]; b [m]. */
export const loadWidth = defineFormula(
  {
    id: "panel.load-width",
    title: "Width of panel that takes the load",
    symbol: "b",
    unit: "m",
    text: "min(W, c + s * L)",
    inputs: { W: "m", c: "m", s: "1", L: "m" },
    validity: "The load stands at the panel's free edge, so that it spreads to one side only.",
    source: rule("contact width and a share of the span, to one side", "practice"),
  },
  ({ W, c, s, L }) => Math.min(W, c + s * L),
);

/** Moment in one metre of width. M [N*m], b [m]; m_d [N*m per m]. */
export const momentPerWidth = defineFormula(
  {
    id: "panel.moment-per-width",
    title: "Moment in one metre of width",
    symbol: "m_d",
    unit: "N",
    text: "M / b",
    inputs: { M: "N*m", b: "m" },
    validity: "Even over the width that takes the load.",
    source: perWidth("moment over width"),
  },
  ({ M, b }) => M / b,
);

/** Load on one metre of the width that takes it. P [N], b [m]; c [N/m]. */
export const loadPerWidth = defineFormula(
  {
    id: "panel.load-per-width",
    title: "Load on one metre of the width that takes it",
    symbol: "c",
    unit: "N/m",
    text: "P / b",
    inputs: { P: "N", b: "m" },
    validity: "Even over that width.",
    source: perWidth("load over width"),
  },
  ({ P, b }) => P / b,
);

/** Pressure of the panel's own weight. q [kg/m2]; u [Pa]. */
export const ownPressure = defineFormula(
  {
    id: "panel.own-weight",
    title: "Own weight of the soaked panel",
    symbol: "u",
    unit: "Pa",
    text: "q * 9.80665",
    inputs: { q: "kg/m2" },
    validity: "Spread evenly.",
    source: perWidth("weight of one square metre"),
  },
  ({ q }) => q * 9.80665,
);

/** Moment of a uniform load in one metre of width. u [Pa], L [m]; m_u [N*m per m]. */
export const ownMoment = defineFormula(
  {
    id: "panel.own-moment",
    title: "Moment of the own weight in one metre of width",
    symbol: "m_u",
    unit: "N",
    text: "u * L^2 / 8",
    inputs: { u: "Pa", L: "m" },
    validity: "One simple span.",
    source: perWidth("simple beam, uniformly distributed load"),
  },
  ({ u, L }) => (u * L ** 2) / 8,
);

/** Moment of own weight and load together [N*m per m]. */
export const panelTotalMoment = defineFormula(
  {
    id: "panel.total-moment",
    title: "Moment of own weight and load in one metre of width",
    symbol: "m_t",
    unit: "N",
    text: "m_u + m_d",
    inputs: { m_u: "N", m_d: "N" },
    validity: "Both at midspan.",
    source: perWidth("D + L"),
  },
  ({ m_u, m_d }) => m_u + m_d,
);

/** Deflection with creep. psi [1] >= 1 for the lasting part; delta_u lasting, delta_l short [m]; delta [m]. */
export const panelTotalDeflection = defineFormula(
  {
    id: "panel.total-deflection",
    title: "Deflection under own weight that lasts and a load that passes",
    symbol: "delta",
    unit: "m",
    text: "psi * delta_u + delta_l",
    inputs: { psi: "1", delta_u: "m", delta_l: "m" },
    validity: "psi >= 1; what is left standing on the panel creeps as the own weight does.",
    source: rule("the lasting part times the panel's creep", "project"),
  },
  ({ psi, delta_u, delta_l }) => psi * delta_u + delta_l,
);

/** Largest deflection allowed: a share of the span, and never more than a fixed length. L, d_m [m], n [1]; d_r [m]. */
export const panelDeflectionAllowed = defineFormula(
  {
    id: "panel.deflection-allowed",
    title: "Deflection that the limits allow",
    symbol: "d_r",
    unit: "m",
    text: "min(L / n, d_m)",
    inputs: { L: "m", n: "1", d_m: "m" },
    validity: "n > 0.",
    source: rule("the stricter of the two limits", "project"),
  },
  ({ L, n, d_m }) => Math.min(L / n, d_m),
);

export const panelSpanLimit = defineConstant(
  "panel.deflection-limit.span",
  "Deflection limit of a panel: span over this",
  "n",
  200,
  "1",
  {
    id: "iso-14122-2",
    title: "ISO 14122-2, working platforms and walkways",
    at: "L/200 under 1.5 kN on 200 x 200 mm",
    status: "seen",
  },
);

export const panelDepthLimit = defineConstant(
  "panel.deflection-limit.depth",
  "Deflection limit of a panel: never more than",
  "d_m",
  0.25 * M_PER_IN,
  "m",
  grating("pedestrian comfort: at most 1/4 in"),
  `0.25 * ${M_PER_IN}`,
);

export const plateSpread = defineConstant(
  "panel.spread.plate",
  "Share of the span over which a plate or moulded grating spreads a load at its edge",
  "s",
  0.3,
  "1",
  rule("0.3 of the span to the one side that has panel: a rule for slabs; no source for decks", "practice"),
);

export const barSpread = defineConstant(
  "panel.spread.bars",
  "Share of the span over which the cross rods of bar grating spread a load at its edge",
  "s",
  0.15,
  "1",
  rule("half of a plate's: only the cross rods carry sideways; no source", "practice"),
);

export const panelFormulas = [
  ...panelStrengthFormulas,
  panelUniformDeflection,
  panelLineDeflection,
  loadWidth,
  momentPerWidth,
  loadPerWidth,
  ownPressure,
  ownMoment,
  panelTotalMoment,
  panelTotalDeflection,
  panelDeflectionAllowed,
  panelSpanLimit,
  panelDepthLimit,
  plateSpread,
  barSpread,
] as const;
