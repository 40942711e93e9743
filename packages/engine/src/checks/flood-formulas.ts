import { defineConstant, defineFormula, type AnyFormula, type Source } from "../formula/index.ts";

const statics = (at: string): Source => ({ id: "statics", title: "Statics", at, status: "computed" });
const decision = (at: string): Source => ({
  id: "causey-flood",
  title: "Project decision on floods",
  at,
  status: "project",
});

/** Push of the water on a part. F_p on itself, F_s on all supports under it, F_w on the wrack [N], k_h [1]; F [N]. */
export const pushOnPart = defineFormula(
  {
    id: "check.flood.push",
    title: "Push of the water on the part and its share of the supports",
    symbol: "F",
    unit: "N",
    text: "F_p + k_h * F_s + F_w",
    inputs: { F_p: "N", k_h: "1", F_s: "N", F_w: "N" },
    validity: "Square or at an angle to the line; pieces behind each other each take the full flow.",
    source: statics("a support serves two parts"),
  },
  ({ F_p, k_h, F_s, F_w }) => F_p + k_h * F_s + F_w,
);

/** Area of a mat of wrack. t thickness, l length of the part [m]; A_w [m2]. */
export const wrackArea = defineFormula(
  {
    id: "check.flood.wrack-area",
    title: "Area of the wrack that the flow sees",
    symbol: "A_w",
    unit: "m2",
    text: "t * l",
    inputs: { t: "m", l: "m" },
    validity: "A mat along the whole part, no thicker than the water is deep.",
    source: { id: "geometry", title: "Geometry", at: "thickness times length", status: "computed" },
  },
  ({ t, l }) => t * l,
);

/** Side force that several stakes may hold. n [1], H_u of one [N], F [1] asked for; H [N]. */
export const sideAllowed = defineFormula(
  {
    id: "check.flood.side-allowed",
    title: "Side force that the stakes may hold",
    symbol: "H",
    unit: "N",
    text: "n * H_u / F",
    inputs: { n: "1", H_u: "N", F: "1" },
    validity: "Stakes share alike, three widths apart or more.",
    source: statics("stakes add up"),
  },
  ({ n, H_u, F }) => (n * H_u) / F,
);

/** Pull that the stakes of a joint must hold. H_n asked for, W counted weight [N]; U_r [N] >= 0. */
export const pullAsked = defineFormula(
  {
    id: "check.anchor.pull-asked",
    title: "Pull that the stakes of the joint must hold",
    symbol: "U_r",
    unit: "N",
    text: "max(0, H_n - k_w * W)",
    inputs: { H_n: "N", k_w: "1", W: "N" },
    validity: "H_n holds the ratio asked for.",
    source: statics("what the own weight does not hold"),
  },
  ({ H_n, k_w, W }) => Math.max(0, H_n - k_w * W),
);

/** The same pull without its ratio. U_r [N], n_f [1]; U [N]. */
export const plainPull = defineFormula(
  {
    id: "check.anchor.pull",
    title: "Pull without the ratio asked for",
    symbol: "U",
    unit: "N",
    text: "U_r / n_f",
    inputs: { U_r: "N", n_f: "1" },
    validity: "n_f >= 1.",
    source: statics("the ratio comes on again in the utilisation"),
  },
  ({ U_r, n_f }) => U_r / n_f,
);

/** Drag of current and wave together. F_1 drag at 1 m/s [N], V, u_s [m/s]; F_D [N]. */
export const dragTogether = defineFormula(
  {
    id: "check.flood.drag-together",
    title: "Drag of current and wave together",
    symbol: "F_D",
    unit: "N",
    text: "F_1 * (V + u_s)^2 / 1",
    inputs: { F_1: "N", V: "m/s", u_s: "m/s" },
    validity:
      "F_1 at 1 m/s; the wave's speed at the surface taken over the whole wetted height, the safer reading.",
    source: decision("the wave runs with the current"),
  },
  ({ F_1, V, u_s }) => F_1 * (V + u_s) ** 2,
);

/** Utilisation of several stakes or piles pulled and pushed: the plain sum. u_p, u_h [1]; u [1]. */
export const pilesTogether = defineFormula(
  {
    id: "check.anchor.piles-together",
    title: "Utilisation of the screw piles, pull and side force together",
    symbol: "u",
    unit: "1",
    text: "u_p + u_h",
    inputs: { u_p: "1", u_h: "1" },
    validity: "A straight-line sum: no test stands behind it. Bending of the steel is not in it.",
    source: decision("straight-line sum"),
  },
  ({ u_p, u_h }) => u_p + u_h,
);

export const mostDammedShare = defineConstant(
  "check.flood.most-dammed",
  "Largest share of the sheet of water that the walkway may dam",
  "B_m",
  0.3,
  "1",
  decision("0.3: a line, not a dam; no source"),
);

export const tetherFactor = defineConstant(
  "check.flood.tether-factor",
  "Factor on the pull of the rope",
  "n_r",
  3,
  "1",
  {
    id: "rope-practice",
    title: "Common practice of rope",
    at: "3 and more for jerks and knots",
    status: "practice",
  },
);

/** Force in the middle of a stringer that breaks it sideways. M_w [N*m], l [m]; F [N]. */
export const midspanForce = defineFormula(
  {
    id: "check.flood.midspan-force",
    title: "Force that breaks the outer stringer sideways",
    symbol: "F_b",
    unit: "N",
    text: "4 * M_w / l",
    inputs: { M_w: "N*m", l: "m" },
    validity: "Hit in the middle, ends free to turn; deck and cross pieces left out.",
    source: statics("M = F l / 4"),
  },
  ({ M_w, l }) => (4 * M_w) / l,
);

export const legPush = defineConstant(
  "check.flood.leg-push",
  "Push on a walker's legs at which the walkway is closed",
  "F_l",
  40,
  "N",
  decision("a firm shove at the shins on wet boards; no source"),
);
export const legWidth = defineConstant(
  "check.flood.leg-width",
  "Width of one leg in a boot",
  "b_l",
  0.12,
  "m",
  decision("a calf in a boot"),
);
export const legDepth = defineConstant(
  "check.flood.leg-depth",
  "Water over the deck that a late walker may meet",
  "h_l",
  0.3,
  "m",
  decision("half-way to the knee"),
);
/** Speed at which that push is reached on two legs. F_l [N], rho_w [kg/m3], C_d [1], b_l, h_l [m]; V_c [m/s]. */
export const closingSpeed = defineFormula(
  {
    id: "check.flood.closing-speed",
    title: "Speed of the water at which the walkway is closed",
    symbol: "V_c",
    unit: "m/s",
    text: "sqrt(F_l / (rho_w * C_d * b_l * h_l))",
    inputs: { F_l: "N", rho_w: "kg/m3", C_d: "1", b_l: "m", h_l: "m" },
    validity: "Two legs beside each other, F = 0.5 rho Cd 2 b h V^2.",
    source: statics("drag on two legs"),
  },
  ({ F_l, rho_w, C_d, b_l, h_l }) => Math.sqrt(F_l / (rho_w * C_d * b_l * h_l)),
);

export const floodCheckFormulas: readonly AnyFormula[] = [
  pushOnPart,
  wrackArea,
  sideAllowed,
  pullAsked,
  plainPull,
  dragTogether,
  pilesTogether,
  mostDammedShare,
  tetherFactor,
  midspanForce,
  legPush,
  legWidth,
  legDepth,
  closingSpeed,
];
