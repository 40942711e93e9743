import { defineConstant, defineFormula, type AnyFormula, type Source } from "../formula/index.ts";

const statics = (at: string): Source => ({ id: "statics", title: "Statics", at, status: "computed" });
const memory = (at: string): Source => ({
  id: "mud-practice",
  title: "Pulling things out of mud",
  at,
  status: "memory",
});

/** Diameter of the round post with the same girth. P [m]; D [m]. */
export const roundOfGirth = defineFormula(
  {
    id: "check.cold.round-of-girth",
    title: "Round post with the girth of this one",
    symbol: "D",
    unit: "m",
    text: "P / pi",
    inputs: { P: "m" },
    validity: "For a grip that acts on the girth.",
    source: { id: "geometry", title: "Geometry", at: "circle", status: "computed" },
  },
  ({ P }) => P / Math.PI,
);
/** Lift of the ice on all posts of a support. n [1], F one [N]; F_i [N]. */
export const iceOnSupport = defineFormula(
  {
    id: "check.cold.ice",
    title: "Lift of the ice on one support",
    symbol: "F_i",
    unit: "N",
    text: "n * F",
    inputs: { n: "1", F: "N" },
    validity: "Ice frozen round each of them.",
    source: statics("sum over posts and stakes"),
  },
  ({ n, F }) => n * F,
);

export const suctionShare = defineConstant(
  "check.removal.suction",
  "Share of the ground's strength that sucks at a foot pulled fast",
  "k_v",
  1,
  "1",
  memory("suction about su on the area of the foot, up to several times it when pulled fast and deep in"),
);
export const siltDepth = defineConstant(
  "check.removal.silt",
  "Silt that lies on a foot when it is taken out",
  "t_s",
  0.05,
  "m",
  memory("50 mm after some seasons"),
);
export const siltDensity = defineConstant(
  "check.removal.silt-density",
  "Density of that silt",
  "rho_s",
  1500,
  "kg/m3",
  memory("soft wet silt 1,400 to 1,600"),
);
/** What comes up with a support, as a mass to lift. m soaked [kg], A feet [m2], t_s [m], rho_s [kg/m3], k_v [1], su [Pa]; m_l [kg]. */
export const outOfMud = defineFormula(
  {
    id: "check.removal.mass",
    title: "Pull to lift the support out of the mud, as a mass",
    symbol: "m_l",
    unit: "kg",
    text: "m + A * (t_s * rho_s + k_v * su / 9.80665)",
    inputs: { m: "kg", A: "m2", t_s: "m", rho_s: "kg/m3", k_v: "1", su: "Pa" },
    validity:
      "All feet at once, straight up, pulled within a minute; slowly, or one edge first, it takes less.",
    source: memory("own mass, silt and suction"),
  },
  ({ m, A, t_s, rho_s, k_v, su }) => m + A * (t_s * rho_s + (k_v * su) / 9.80665),
);
/** Pull on one stake as a mass. R_s [N]; m_l [kg]. */
export const stakeAsMass = defineFormula(
  {
    id: "check.removal.stake",
    title: "Pull to draw one stake, as a mass",
    symbol: "m_l",
    unit: "kg",
    text: "R_s / 9.80665",
    inputs: { R_s: "N" },
    validity: "Straight up, ground closed round it; its own weight left out.",
    source: statics("force over g"),
  },
  ({ R_s }) => R_s / 9.80665,
);

export const coldCheckFormulas: readonly AnyFormula[] = [
  roundOfGirth,
  iceOnSupport,
  suctionShare,
  siltDepth,
  siltDensity,
  outOfMud,
  stakeAsMass,
];
