import { defineFormula, type Source } from "../formula/index.ts";

/** Statics of a strip one metre wide. */
export const perWidth = (at: string): Source => ({
  id: "statics",
  title: "Statics of a strip one metre wide",
  at,
  status: "computed",
});
/** Published load tables of steel bar grating. */
export const grating = (at: string): Source => ({
  id: "steel-grating",
  title: "Steel bar grating load tables (scribd.com 332168136)",
  at,
  status: "seen",
});

/** Section modulus of bar grating per metre width. b bar thickness, d depth, p pitch of the bars [m]; S_1 [m3 per m]. */
export const barModulus = defineFormula(
  {
    id: "panel.bar-modulus",
    title: "Section modulus of the bars in one metre of width",
    symbol: "S_1",
    unit: "m2",
    text: "b * d^2 / (6 * p)",
    inputs: { b: "m", d: "m", p: "m" },
    validity: "Bearing bars alone, b < p; cross rods carry nothing along.",
    source: grating("S = K b d^2 / 6, K bars in one foot"),
  },
  ({ b, d, p }) => (b * d ** 2) / (6 * p),
);

/** Second moment of area of bar grating per metre width [m4 per m]. */
export const barInertia = defineFormula(
  {
    id: "panel.bar-inertia",
    title: "Second moment of area of the bars in one metre of width",
    symbol: "I_1",
    unit: "m3",
    text: "b * d^3 / (12 * p)",
    inputs: { b: "m", d: "m", p: "m" },
    validity: "Bearing bars alone, b < p.",
    source: grating("I = S d / 2"),
  },
  ({ b, d, p }) => (b * d ** 3) / (12 * p),
);

/** Moment that one metre of width may carry. F allowable stress [Pa], S_1 [m3 per m]; m_r [N*m per m]. */
export const panelMoment = defineFormula(
  {
    id: "panel.moment",
    title: "Moment that one metre of width may carry",
    symbol: "m_r",
    unit: "N",
    text: "F * S_1",
    inputs: { F: "Pa", S_1: "m2" },
    validity: "Straight stress line over the depth.",
    source: perWidth("fb = M / S"),
  },
  ({ F, S_1 }) => F * S_1,
);

/** Bending stiffness of one metre of width. E [Pa], I_1 [m4 per m]; k [N*m2 per m]. */
export const panelStiffness = defineFormula(
  {
    id: "panel.stiffness",
    title: "Bending stiffness of one metre of width",
    symbol: "k",
    unit: "N*m",
    text: "E * I_1",
    inputs: { E: "Pa", I_1: "m3" },
    validity: "Bending part only.",
    source: perWidth("E I"),
  },
  ({ E, I_1 }) => E * I_1,
);

/** Uniform load that a simple span may carry. m_r [N*m per m], L [m]; u [Pa]. */
export const panelUniformLoad = defineFormula(
  {
    id: "panel.uniform-load",
    title: "Uniform load that the panel may carry",
    symbol: "u",
    unit: "Pa",
    text: "8 * m_r / L^2",
    inputs: { m_r: "N", L: "m" },
    validity: "One simple span, L > 0.",
    source: grating("U = 8 F S / L^2"),
  },
  ({ m_r, L }) => (8 * m_r) / L ** 2,
);

/** Uniform load on a panel over three equal spans. m_r [N*m per m], L [m]; u [Pa]. */
export const panelUniformLoadOverThree = defineFormula(
  {
    id: "panel.uniform-load.three-spans",
    title: "Uniform load that a panel over three spans may carry",
    symbol: "u",
    unit: "Pa",
    text: "10 * m_r / L^2",
    inputs: { m_r: "N", L: "m" },
    validity: "Three equal spans, L from centre to centre.",
    source: {
      id: "apa-d510",
      title: "APA D510, Panel Design Specification",
      at: "w = 120 FbS / L^2 with L in inches and FbS for one foot",
      status: "seen",
    },
  },
  ({ m_r, L }) => (10 * m_r) / L ** 2,
);

/** Line load across midspan that a simple span may carry. m_r [N*m per m], L [m]; c [N/m of width]. */
export const panelLineLoad = defineFormula(
  {
    id: "panel.line-load",
    title: "Line load at midspan that the panel may carry",
    symbol: "c",
    unit: "N/m",
    text: "4 * m_r / L",
    inputs: { m_r: "N", L: "m" },
    validity: "One simple span, L > 0.",
    source: grating("C = 4 F S / L"),
  },
  ({ m_r, L }) => (4 * m_r) / L,
);

export const panelStrengthFormulas = [
  barModulus,
  barInertia,
  panelMoment,
  panelStiffness,
  panelUniformLoad,
  panelUniformLoadOverThree,
  panelLineLoad,
] as const;
