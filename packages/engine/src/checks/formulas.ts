import { defineFormula, type Source } from "../formula/index.ts";

const statics = (at: string): Source => ({ id: "statics", title: "Statics", at, status: "computed" });

/** Dead load along one stringer. q mass per length of the whole part [kg/m], k the stringer's share [1]; w [N/m]. */
export const deadLoad = defineFormula(
  {
    id: "check.dead-load",
    title: "Dead load along the stringer",
    symbol: "w",
    unit: "N/m",
    text: "q * 9.80665 * k",
    inputs: { q: "kg/m", k: "1" },
    validity: "Own weight spread evenly along the part.",
    source: statics("weight of the part by the stringer's share"),
  },
  ({ q, k }) => q * 9.80665 * k,
);

/** Mass of a part. V timber volume [m3], rho [kg/m3], m_o other mass [kg]; m [kg]. */
export const partMass = defineFormula(
  {
    id: "check.part-mass",
    title: "Mass of the part",
    symbol: "m",
    unit: "kg",
    text: "V * rho + m_o",
    inputs: { V: "m3", rho: "kg/m3", m_o: "kg" },
    validity: "Screws and clips left out: under 2 % of a part.",
    source: statics("volume by density, and what is not timber"),
  },
  ({ V, rho, m_o }) => V * rho + m_o,
);

/** Mass of what is not timber with the water that it takes up. m_p, m_w [kg]; m_o [kg]. */
export const soakedOther = defineFormula(
  {
    id: "check.soaked-other",
    title: "Panels with the water they take up",
    symbol: "m_o",
    unit: "kg",
    text: "m_p + m_w",
    inputs: { m_p: "kg", m_w: "kg" },
    validity: "Soaked through.",
    source: statics("dry mass and water"),
  },
  ({ m_p, m_w }) => m_p + m_w,
);

/** Load of one axle of a cart with its bump allowance. m mass [kg], k_b [1], n axles [1]; P [N]. */
export const axleLoad = defineFormula(
  {
    id: "check.axle-load",
    title: "Load of one axle of the cart",
    symbol: "P_a",
    unit: "N",
    text: "m * 9.80665 * k_b / n",
    inputs: { m: "kg", k_b: "1", n: "1" },
    validity: "Load shared evenly by the axles.",
    source: statics("weight by the bump allowance over the axles"),
  },
  ({ m, k_b, n }) => (m * 9.80665 * k_b) / n,
);

/** Load of one wheel: half an axle. P_a [N]; P [N]. */
export const wheelLoad = defineFormula(
  {
    id: "check.wheel-load",
    title: "Load of one wheel",
    symbol: "P_w",
    unit: "N",
    text: "P_a / 2",
    inputs: { P_a: "N" },
    validity: "Two wheels on an axle, evenly loaded.",
    source: statics("half an axle"),
  },
  ({ P_a }) => P_a / 2,
);

/** Sum of the live and the dead moment, each at its own worst place. [N*m]. */
export const totalMoment = defineFormula(
  {
    id: "check.total-moment",
    title: "Moment of dead and live load",
    symbol: "M",
    unit: "N*m",
    text: "M_d + M_l",
    inputs: { M_d: "N*m", M_l: "N*m" },
    validity: "Both largest values are added, though they need not meet at one section.",
    source: statics("D + L"),
  },
  ({ M_d, M_l }) => M_d + M_l,
);

/** Sum of the live and the dead end shear or reaction. [N]. */
export const totalForce = defineFormula(
  {
    id: "check.total-force",
    title: "Force of dead and live load",
    symbol: "V",
    unit: "N",
    text: "V_d + V_l",
    inputs: { V_d: "N", V_l: "N" },
    validity: "Both at the end of the span.",
    source: statics("D + L"),
  },
  ({ V_d, V_l }) => V_d + V_l,
);

/** Moment a section may carry. F [Pa], S [m3]; M_r [N*m]. */
export const momentCapacity = defineFormula(
  {
    id: "check.moment-capacity",
    title: "Moment that the section may carry",
    symbol: "M_r",
    unit: "N*m",
    text: "F * S",
    inputs: { F: "Pa", S: "m3" },
    validity: "Straight stress line over the depth.",
    source: statics("fb = M / S"),
  },
  ({ F, S }) => F * S,
);

/** Shear a rectangular section may carry. F [Pa], A [m2]; V_r [N]. */
export const shearCapacity = defineFormula(
  {
    id: "check.shear-capacity",
    title: "Shear that the section may carry",
    symbol: "V_r",
    unit: "N",
    text: "2 / 3 * F * A",
    inputs: { F: "Pa", A: "m2" },
    validity: "Rectangular section without a notch.",
    source: statics("fv = 1.5 V / A"),
  },
  ({ F, A }) => (2 / 3) * F * A,
);

/** Deflection that the limit allows. L span [m], n [1]; d [m]. */
export const allowedDeflection = defineFormula(
  {
    id: "check.allowed-deflection",
    title: "Deflection that the limit allows",
    symbol: "d_r",
    unit: "m",
    text: "L / n",
    inputs: { L: "m", n: "1" },
    validity: "n > 0.",
    source: statics("span over a number"),
  },
  ({ L, n }) => L / n,
);

/** Load that a rectangle of wood across the grain may carry. F [Pa], b and l [m]; R_r [N]. */
export const bearingCapacity = defineFormula(
  {
    id: "check.bearing-capacity",
    title: "Load that the seat may carry",
    symbol: "R_r",
    unit: "N",
    text: "F * b * l",
    inputs: { F: "Pa", b: "m", l: "m" },
    validity: "Even bearing over the seat.",
    source: statics("stress by area"),
  },
  ({ F, b, l }) => F * b * l,
);

/** Seat of a module end on a shared sill. b width of the sill, g joint gap [m]; s [m]. */
export const sillSeat = defineFormula(
  {
    id: "check.sill-seat",
    title: "Seat of a module end on the sill",
    symbol: "s",
    unit: "m",
    text: "max(0, (b - g) / 2)",
    inputs: { b: "m", g: "m" },
    validity: "Two ends share one sill, the gap over its middle.",
    source: statics("geometry of the joint"),
  },
  ({ b, g }) => Math.max(0, (b - g) / 2),
);

/** Seat of the next module on a catch board. p projection, g joint gap [m]; s [m]. */
export const catchBoardSeat = defineFormula(
  {
    id: "check.catch-board-seat",
    title: "Seat of the next module on the catch board",
    symbol: "s",
    unit: "m",
    text: "max(0, p - g)",
    inputs: { p: "m", g: "m" },
    validity: "The projection is measured from the end of the module's body.",
    source: statics("geometry of the joint"),
  },
  ({ p, g }) => Math.max(0, p - g),
);

/** Seat that is left once the module lies off its mark and the timber has dried. s, t, d_a, d_l, d_s [m]; s_1 [m]. */
export const seatLeft = defineFormula(
  {
    id: "check.seat-left",
    title: "Seat left after the slop in laying, shrinkage and slope",
    symbol: "s_1",
    unit: "m",
    text: "max(0, s - t - d_a - d_l - d_s)",
    inputs: { s: "m", t: "m", d_a: "m", d_l: "m", d_s: "m" },
    validity: "All the slop on one side, shrinkage and slope shared by both ends.",
    source: statics("geometry of the joint"),
  },
  ({ s, t, d_a, d_l, d_s }) => Math.max(0, s - t - d_a - d_l - d_s),
);

export const checkFormulas = [
  deadLoad,
  partMass,
  soakedOther,
  axleLoad,
  wheelLoad,
  totalMoment,
  totalForce,
  momentCapacity,
  shearCapacity,
  allowedDeflection,
  bearingCapacity,
  sillSeat,
  catchBoardSeat,
  seatLeft,
] as const;
