import { defineFormula, type AnyFormula, type Source } from "../formula/index.ts";

const statics = (at: string): Source => ({ id: "statics", title: "Statics", at, status: "computed" });

/** Moment of a load spread over a bay by the piece that lies along it. N [N], L bay [m]; M [N*m]. */
export const spreadMoment = defineFormula(
  {
    id: "check.spread-moment",
    title: "Moment of a load spread evenly over the bay",
    symbol: "M",
    unit: "N*m",
    text: "N * L / 8",
    inputs: { N: "N", L: "m" },
    validity: "Simple span; the piece above lies on the whole bay and is as stiff as this one.",
    source: statics("w L^2 / 8 with w = N / L"),
  },
  ({ N, L }) => (N * L) / 8,
);

/** Pull on the far screws of a board trodden on outside the stringers. P [N], e, a [m]; T [N]. */
export const leverPull = defineFormula(
  {
    id: "check.lever-pull",
    title: "Pull at the next stringer when someone stands outside the outer one",
    symbol: "T_l",
    unit: "N",
    text: "P * e / a",
    inputs: { P: "N", e: "m", a: "m" },
    validity: "The board tips over the outer stringer's middle; its own weight is left out; a > 0.",
    source: statics("moments about the outer stringer"),
  },
  ({ P, e, a }) => (P * e) / a,
);

/** Lift of still water on one bearing of a board. U lift of the board [N], n bearings [1]; T_w [N]. */
export const liftPerBearing = defineFormula(
  {
    id: "check.lift-per-bearing",
    title: "Lift of the water on one bearing of a board",
    symbol: "T_w",
    unit: "N",
    text: "U / n",
    inputs: { U: "N", n: "1" },
    validity: "Bearings of one board share its lift evenly.",
    source: statics("even share"),
  },
  ({ U, n }) => U / n,
);

/** Both pulls on one bearing. T_l, T_w [N]; T [N]. */
export const bearingPull = defineFormula(
  {
    id: "check.bearing-pull",
    title: "Pull on the screws of one bearing",
    symbol: "T",
    unit: "N",
    text: "T_l + T_w",
    inputs: { T_l: "N", T_w: "N" },
    validity: "Someone stands on the overhang while the water reaches the deck.",
    source: statics("both at once"),
  },
  ({ T_l, T_w }) => T_l + T_w,
);

/** Timber of one board. L length, b width, t thickness [m]; V [m3]. */
export const boardVolume = defineFormula(
  {
    id: "check.board-volume",
    title: "Volume of one board",
    symbol: "V",
    unit: "m3",
    text: "L * b * t",
    inputs: { L: "m", b: "m", t: "m" },
    validity: "A rectangular board.",
    source: { id: "geometry", title: "Geometry", at: "a box", status: "computed" },
  },
  ({ L, b, t }) => L * b * t,
);

export const fasteningFormulas: readonly AnyFormula[] = [
  spreadMoment,
  leverPull,
  liftPerBearing,
  bearingPull,
  boardVolume,
];
