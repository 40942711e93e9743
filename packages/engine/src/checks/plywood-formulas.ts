import { defineConstant, defineFormula, type Source, type SourceStatus } from "../formula/index.ts";

const apa = (at: string, status: SourceStatus): Source => ({
  id: "apa-d510",
  title: "APA D510, Panel Design Specification",
  at,
  status,
});

export type Spans = 1 | 2 | 3;

const perSpans = <const T>(make: (spans: Spans) => T): Readonly<Record<Spans, T>> => ({
  1: make(1),
  2: make(2),
  3: make(3),
});
const words = { 1: "one span", 2: "two spans", 3: "three spans or more" } as const;

const bendingTimes = { 1: 8, 2: 8, 3: 10 } as const;
/** Uniform load by bending. m_r moment of one metre of width [N*m per m], L supports middle to middle [m]; u_b [Pa]. */
export const panelBendingLoad = perSpans((n) =>
  defineFormula(
    {
      id: `plywood.bending-${n}`,
      title: `Uniform load by bending, ${words[n]}`,
      symbol: "u_b",
      unit: "Pa",
      text: `${bendingTimes[n]} * m_r / L^2`,
      inputs: { m_r: "N", L: "m" },
      validity: "Equal spans, L middle to middle of the supports.",
      source: apa(n === 3 ? "w = 120 FbS / L^2" : "w = 96 FbS / L^2", n === 3 ? "seen" : "memory"),
    },
    ({ m_r, L }) => (bendingTimes[n] * m_r) / L ** 2,
  ),
);

const shearTimes = { 1: 24, 2: 19.2, 3: 20 } as const;
/** Uniform load by shear in the plies. v_r of one metre of width [N/m], L_s clear span [m]; u_v [Pa]. */
export const panelShearLoad = perSpans((n) =>
  defineFormula(
    {
      id: `plywood.shear-${n}`,
      title: `Uniform load by shear in the plies, ${words[n]}`,
      symbol: "u_v",
      unit: "Pa",
      text: `${shearTimes[n]} / 12 * v_r / L_s`,
      inputs: { v_r: "N/m", L_s: "m" },
      validity: "Equal spans, L_s clear between the supports.",
      source: apa(`w = ${shearTimes[n]} Fs / Ls`, n === 3 ? "seen" : "memory"),
    },
    ({ v_r, L_s }) => ((shearTimes[n] / 12) * v_r) / L_s,
  ),
);

const bendTimes = { 1: 921.6, 2: 2220, 3: 1743 } as const;
/** Uniform load at a deflection. k stiffness of one metre of width [N*m2 per m], d deflection, l span for it [m]; u_d [Pa]. */
export const panelDeflectionLoad = perSpans((n) =>
  defineFormula(
    {
      id: `plywood.deflection-${n}`,
      title: `Uniform load at the largest deflection, ${words[n]}`,
      symbol: "u_d",
      unit: "Pa",
      text: `${bendTimes[n]} / 12 * k * d / l^4`,
      inputs: { k: "N*m", d: "m", l: "m" },
      validity: "Equal spans, l clear span and an allowance for the width of the supports.",
      source: apa(`w = ${bendTimes[n]} EI d / l^4`, n === 3 ? "seen" : "memory"),
    },
    ({ k, d, l }) => ((bendTimes[n] / 12) * k * d) / l ** 4,
  ),
);

/** Span for the deflection. L_s clear span, a allowance [m]; l [m]. */
export const deflectionSpan = defineFormula(
  {
    id: "plywood.deflection-span",
    title: "Span for the deflection",
    symbol: "l",
    unit: "m",
    text: "L_s + a",
    inputs: { L_s: "m", a: "m" },
    validity: "a 1/4 in on supports of 2 in nominal, 5/8 in on thicker ones.",
    source: apa("3.3.2, support width factor", "memory"),
  },
  ({ L_s, a }) => L_s + a,
);

/** A capacity of the dry panel with what wet and the load's length make of it. c [N or N/m], factors [1]. */
export const panelMomentInUse = defineFormula(
  {
    id: "plywood.moment-in-use",
    title: "Moment that one metre of width may carry in use",
    symbol: "m_r",
    unit: "N",
    text: "m_t * CD * CM",
    inputs: { m_t: "N", CD: "1", CM: "1" },
    validity: "Strong way across the supports.",
    source: apa("4.5, adjustments", "memory"),
  },
  ({ m_t, CD, CM }) => m_t * CD * CM,
);
export const panelShearInUse = defineFormula(
  {
    id: "plywood.shear-in-use",
    title: "Shear in the plies that one metre of width may carry in use",
    symbol: "v_r",
    unit: "N/m",
    text: "v_t * CD * CM",
    inputs: { v_t: "N/m", CD: "1", CM: "1" },
    validity: "Strong way across the supports.",
    source: apa("4.5, adjustments", "memory"),
  },
  ({ v_t, CD, CM }) => v_t * CD * CM,
);
export const panelStiffnessInUse = defineFormula(
  {
    id: "plywood.stiffness-in-use",
    title: "Bending stiffness of one metre of width in use",
    symbol: "k",
    unit: "N*m",
    text: "k_t * CM",
    inputs: { k_t: "N*m", CM: "1" },
    validity: "Strong way across the supports.",
    source: apa("4.5, adjustments", "memory"),
  },
  ({ k_t, CM }) => k_t * CM,
);

const wet = (name: string, title: string, value: number) =>
  defineConstant(
    `plywood.wet.${name}`,
    `Wet service factor of panels, ${title}`,
    "CM",
    value,
    "1",
    apa("moisture adjustment", "memory"),
  );
export const wetPanel = {
  bending: wet("bending", "bending", 0.75),
  stiffness: wet("stiffness", "stiffness", 0.85),
  shear: wet("shear", "shear in the plies", 0.75),
} as const;

export const plywoodFormulas = [
  ...Object.values(panelBendingLoad),
  ...Object.values(panelShearLoad),
  ...Object.values(panelDeflectionLoad),
  deflectionSpan,
  panelMomentInUse,
  panelShearInUse,
  panelStiffnessInUse,
  ...Object.values(wetPanel),
] as const;
