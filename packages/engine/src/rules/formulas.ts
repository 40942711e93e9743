import { defineConstant, defineFormula, type AnyFormula, type Source } from "../formula/index.ts";
import { M_PER_IN } from "../units/index.ts";

const geometry = (at: string): Source => ({ id: "geometry", title: "Geometry", at, status: "computed" });
const project = (at: string): Source => ({
  id: "causey-rules",
  title: "Project decision on rule checks",
  at,
  status: "project",
});

export const fallReach = defineConstant(
  "rules.fall-reach",
  "How far beside the deck the ground counts for a fall",
  "r_f",
  1,
  "m",
  project("where a person who steps off the edge lands"),
);

export const bankReach = defineConstant(
  "rules.bank-reach",
  "How far from a support a channel's bed counts for its bank",
  "r_b",
  8,
  "m",
  project("banks of marsh creeks are lower than this"),
);

export const sidewaysShare = defineConstant(
  "rules.sideways-share",
  "Sideways push of a person, as a share of the weight, at the deck",
  "k_h",
  0.1,
  "1",
  project("one tenth of the weight, sway and a cart's jerk; no source"),
);

export const boardGapSlack = defineConstant(
  "rules.gap-slack",
  'How far a gap may differ from a rule that says "about"',
  "s_g",
  0.003,
  "m",
  project("3 mm, as far as a board deck's gaps are evened out"),
);

export const leastCurb = defineConstant(
  "rules.least-curb",
  "Least height of a curb where the rule gives none",
  "c_min",
  1.5 * M_PER_IN,
  "m",
  {
    id: "common-practice",
    title: "Common practice, no source",
    at: "a 2x2 or 2x4 laid flat",
    status: "practice",
  },
  `1.5 * ${M_PER_IN}`,
);

/** Fall from a deck's edge. z_d top of the deck, z_g lowest ground within reach [m], one datum; f [m] >= 0. */
export const fallHeight = defineFormula(
  {
    id: "rules.fall",
    title: "Fall from the edge of the deck",
    symbol: "f",
    unit: "m",
    text: "max(0, z_d - z_g)",
    inputs: { z_d: "m", z_g: "m" },
    validity: "Ground or bed as the terrain shows it; water is not counted as something to land on.",
    source: geometry("deck over the lowest ground beside it"),
  },
  ({ z_d, z_g }) => Math.max(0, z_d - z_g),
);

/** Grade of a part. h rise, up or down [m] >= 0; l on plan [m] > 0; g [1]. */
export const gradeFormula = defineFormula(
  {
    id: "rules.grade",
    title: "Grade: rise over run",
    symbol: "g",
    unit: "1",
    text: "h / l",
    inputs: { h: "m", l: "m" },
    validity: "Straight between two joints, l > 0.",
    source: geometry("rise over run"),
  },
  ({ h, l }) => h / l,
);

/** Largest ball that an opening stops. a along the walkway, b across [m]; o [m]. */
export const openingSize = defineFormula(
  {
    id: "rules.opening",
    title: "Ball that the opening just stops",
    symbol: "o",
    unit: "m",
    text: "min(a, b)",
    inputs: { a: "m", b: "m" },
    validity: "Rectangular opening.",
    source: geometry("the shorter side"),
  },
  ({ a, b }) => Math.min(a, b),
);

/**
 * How near a wheel is to dropping into an opening: 1 = it drops in.
 * a opening along the wheel's travel, b across it; c contact length of the wheel, w its width [m] > 0; u [1].
 */
export const wheelDrop = defineFormula(
  {
    id: "rules.wheel-drop",
    title: "Opening over wheel, the smaller of both ways",
    symbol: "u",
    unit: "1",
    text: "min(a / c, b / w)",
    inputs: { a: "m", b: "m", c: "m", w: "m" },
    validity: "A wheel is held by what is wider or longer than the opening, one way or the other.",
    source: project("contact patch against opening; practice, no source"),
  },
  ({ a, b, c, w }) => Math.min(a / c, b / w),
);

/** Width that a cart's wheels need between curbs. t track, w wheel width, m room left at each side [m]; b [m]. */
export const cartWidth = defineFormula(
  {
    id: "rules.cart-width",
    title: "Width that the wheels need",
    symbol: "b",
    unit: "m",
    text: "t + w + 2 * m",
    inputs: { t: "m", w: "m", m: "m" },
    validity: "Straight on; the body may stand out over a curb.",
    source: geometry("wheels and room at both sides"),
  },
  ({ t, w, m }) => t + w + 2 * m,
);

/** Circle in which a cart turns on the spot. L length, w width overall, m room left [m]; d [m]. */
export const turningCircle = defineFormula(
  {
    id: "rules.turning-circle",
    title: "Circle that the cart sweeps when it turns on the spot",
    symbol: "d",
    unit: "m",
    text: "sqrt(L^2 + w^2) + 2 * m",
    inputs: { L: "m", w: "m", m: "m" },
    validity: "Turned about its middle; who pulls it stands within the circle or on the next part.",
    source: geometry("diagonal of the cart"),
  },
  ({ L, w, m }) => Math.sqrt(L ** 2 + w ** 2) + 2 * m,
);

/** Square between the curbs of a platform. s side, c width of a curb [m]; q [m]. */
export const clearSquare = defineFormula(
  {
    id: "rules.clear-square",
    title: "Clear square of the platform",
    symbol: "q",
    unit: "m",
    text: "s - 2 * c",
    inputs: { s: "m", c: "m" },
    validity: "Curbs on all edges; an edge where a part joins has none.",
    source: geometry("side less two curbs"),
  },
  ({ s, c }) => s - 2 * c,
);

/** Distance a support keeps from a channel's edge. k factor [1]; z_s ground there, z_b bed [m]; s [m]. */
export const bankSetback = defineFormula(
  {
    id: "rules.bank-setback",
    title: "Distance from the edge that the bank's height asks for",
    symbol: "s",
    unit: "m",
    text: "k * max(0, z_s - z_b)",
    inputs: { k: "1", z_s: "m", z_b: "m" },
    validity: "An even bank without a crack, a slump or an undercut edge: look before setting a foot there.",
    source: {
      id: "common-practice",
      title: "Common practice, no source",
      at: "as far off as the bank is high",
      status: "practice",
    },
  },
  ({ k, z_s, z_b }) => k * Math.max(0, z_s - z_b),
);

/**
 * Moment that would tip a support about its outer foot edge.
 * W person [N]; e the person's, o the foot edge's distance from the middle [m]; k_h sideways share; h deck over ground.
 */
export const tippingMoment = defineFormula(
  {
    id: "rules.tipping-moment",
    title: "Moment of a person at the deck's edge about the outer edge of the feet",
    symbol: "M",
    unit: "N*m",
    text: "max(0, W * (e - o) + k_h * W * h)",
    inputs: { W: "N", e: "m", o: "m", k_h: "1", h: "m" },
    validity: "Stiff support and deck; one person, none on the other side.",
    source: {
      id: "statics",
      title: "Statics",
      at: "moments about the outer edge of the feet",
      status: "computed",
    },
  },
  ({ W, e, o, k_h, h }) => Math.max(0, W * (e - o) + k_h * W * h),
);

/** Moment that holds a support down. D dead load [N] at o [m]; R_s pull-out of the far stakes [N] at l [m]; n ratio asked. */
export const tippingHold = defineFormula(
  {
    id: "rules.tipping-hold",
    title: "Moment that holds it down, over the ratio asked for",
    symbol: "M_h",
    unit: "N*m",
    text: "(D * o + R_s * l) / n",
    inputs: { D: "N", o: "m", R_s: "N", l: "m", n: "1" },
    validity:
      "Dead load in the middle; stakes tied to the sill's ends; ground that does not give way under the foot.",
    source: {
      id: "statics",
      title: "Statics",
      at: "moments about the outer edge of the feet",
      status: "computed",
    },
  },
  ({ D, o, R_s, l, n }) => (D * o + R_s * l) / n,
);

/** Height that a deck of this width asks for. k height per width [1]; w [m]; h [m]. */
export const heightForWidth = defineFormula(
  {
    id: "rules.height-for-width",
    title: "Height over the marsh that the deck's width asks for",
    symbol: "h",
    unit: "m",
    text: "k * w",
    inputs: { k: "1", w: "m" },
    validity: "Guidance for docks over salt marsh.",
    source: {
      id: "small-docks",
      title: "Management of small docks and piers, public slides (cdn.slideserve.com/balin)",
      at: "1 ft high for each ft wide",
      status: "seen",
    },
  },
  ({ k, w }) => k * w,
);

export const ruleFormulas: readonly AnyFormula[] = [
  fallReach,
  bankReach,
  sidewaysShare,
  boardGapSlack,
  leastCurb,
  fallHeight,
  gradeFormula,
  openingSize,
  wheelDrop,
  cartWidth,
  turningCircle,
  clearSquare,
  bankSetback,
  tippingMoment,
  tippingHold,
  heightForWidth,
];
