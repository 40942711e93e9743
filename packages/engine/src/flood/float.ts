import { defineConstant, defineFormula } from "../formula/index.ts";

const archimedes = (at: string) =>
  ({ id: "archimedes", title: "Archimedes' principle", at, status: "computed" }) as const;
const metacentre = (at: string) =>
  ({
    id: "metacentric-height",
    title: "Small-angle stability of a floating body: GM = KB + I / V - KG",
    at,
    status: "memory",
  }) as const;

/** Draught of box-shaped floats. m [kg], rho_w [kg/m3], A waterplane [m2]; T [m]. */
export const floatDraught = defineFormula(
  {
    id: "float.draught",
    title: "Draught of the floats",
    symbol: "T",
    unit: "m",
    text: "m / (rho_w * A)",
    inputs: { m: "kg", rho_w: "kg/m3", A: "m2" },
    validity: "Upright boxes in still water, not yet under.",
    source: archimedes("mass over density and waterplane"),
  },
  ({ m, rho_w, A }) => m / (rho_w * A),
);

/**
 * Second moment of the waterplane about the walkway's middle line.
 * l along, b across one float [m], n floats [1], Q sum of the squares of their offsets [m2]; J [m4].
 */
export const waterplaneInertia = defineFormula(
  {
    id: "float.waterplane",
    title: "Second moment of the waterplane about the middle line",
    symbol: "J",
    unit: "m4",
    text: "n * l * b^3 / 12 + l * b * Q",
    inputs: { n: "1", l: "m", b: "m", Q: "m2" },
    validity: "Equal floats, boxes, the joint tips across the walk only.",
    source: metacentre("rectangles about a common axis"),
  },
  ({ n, l, b, Q }) => (n * l * b ** 3) / 12 + l * b * Q,
);

/** Height of the metacentre over the floats' bottom. T [m], J [m4], A [m2]; KM [m]. */
export const metacentreHeight = defineFormula(
  {
    id: "float.metacentre",
    title: "Height of the metacentre over the floats' bottom",
    symbol: "KM",
    unit: "m",
    text: "T / 2 + J / (A * T)",
    inputs: { T: "m", J: "m4", A: "m2" },
    validity: "Small angles, boxes, T > 0.",
    source: metacentre("KB = T / 2, BM = J / V"),
  },
  ({ T, J, A }) => T / 2 + J / (A * T),
);

/** Height of the common centre of gravity. m_d at h_d, m_l at h_l [kg, m]; KG [m]. */
export const gravityHeight = defineFormula(
  {
    id: "float.gravity",
    title: "Height of the centre of gravity over the floats' bottom",
    symbol: "KG",
    unit: "m",
    text: "(m_d * h_d + m_l * h_l) / (m_d + m_l)",
    inputs: { m_d: "kg", h_d: "m", m_l: "kg", h_l: "m" },
    validity: "Some mass.",
    source: metacentre("centre of two masses"),
  },
  ({ m_d, h_d, m_l, h_l }) => (m_d * h_d + m_l * h_l) / (m_d + m_l),
);

/** Slope across the walk under a load off the middle. M [N*m], m [kg], KM, KG [m]; s [1], tangent. */
export const heelSlope = defineFormula(
  {
    id: "float.heel",
    title: "Slope across the walk under the load off its middle",
    symbol: "s",
    unit: "1",
    text: "M / (m * 9.80665 * (KM - KG))",
    inputs: { M: "N*m", m: "kg", KM: "m", KG: "m" },
    validity: "KM > KG, small angles.",
    source: metacentre("righting moment = W GM sin(heel)"),
  },
  ({ M, m, KM, KG }) => M / (m * 9.80665 * (KM - KG)),
);

/** Freeboard at the low edge. H float's height, T draught, y edge off the middle [m], s [1]; f [m]; negative under water. */
export const lowFreeboard = defineFormula(
  {
    id: "float.freeboard",
    title: "Freeboard at the low edge",
    symbol: "f",
    unit: "m",
    text: "H - T - y * s",
    inputs: { H: "m", T: "m", y: "m", s: "1" },
    validity: "Small angles, still water.",
    source: { id: "geometry", title: "Geometry", at: "edge of a tilted box", status: "computed" },
  },
  ({ H, T, y, s }) => H - T - y * s,
);

export const bodyHeight = defineConstant(
  "float.body-height",
  "Centre of gravity of a standing person over the deck",
  "h_b",
  1,
  "m",
  {
    id: "causey-floats",
    title: "Project rule on floats",
    at: "about 1 m for a standing adult with a pack; no source",
    status: "practice",
  },
);

/** Water level at which the deck stands as drawn. z_g ground, h support's height, h_t timber over the floats, H float's height, T draught [m]; z [m]. */
export const drawnLevel = defineFormula(
  {
    id: "float.drawn-level",
    title: "Water level at which the deck stands as drawn",
    symbol: "z_w",
    unit: "m",
    text: "z_g + h - h_t - H + T",
    inputs: { z_g: "m", h: "m", h_t: "m", H: "m", T: "m" },
    validity: "Nobody on it; heights on the site's datum.",
    source: { id: "geometry", title: "Geometry", at: "heights added up", status: "computed" },
  },
  ({ z_g, h, h_t, H, T }) => z_g + h - h_t - H + T,
);

export const floatFormulas = [
  floatDraught,
  waterplaneInertia,
  metacentreHeight,
  gravityHeight,
  heelSlope,
  lowFreeboard,
  bodyHeight,
  drawnLevel,
] as const;
