import { defineConstant, defineFormula } from "../../../formula/index.ts";
import { nds } from "../sources.ts";

export const leastPenetration = defineConstant(
  "us-asd-2018.fastener.least-penetration",
  "Least penetration of a nail or wood screw, in shank diameters",
  "p_min",
  6,
  "1",
  nds("12.1.5 and 12.1.6", "seen"),
);

export const leastLagPenetration = defineConstant(
  "us-asd-2018.fastener.least-lag-penetration",
  "Least penetration of a lag screw without its point, in diameters",
  "p_min",
  4,
  "1",
  nds("12.1.4", "seen"),
);

/** How far a fastener is inside the piece that holds it. l length, s pieces before it, m its thickness [m]; p [m]. */
export const penetration = defineFormula(
  {
    id: "us-asd-2018.fastener.penetration",
    title: "Penetration into the piece that holds the point",
    symbol: "p",
    unit: "m",
    text: "max(0, min(l - s, m))",
    inputs: { l: "m", s: "m", m: "m" },
    validity: "Head flush with the side piece.",
    source: nds("12.1.4 to 12.1.6", "memory"),
  },
  ({ l, s, m }) => Math.max(0, Math.min(l - s, m)),
);

/** Penetration of a toe-nail at 30 degrees, started a third of its length from the end. l, m [m]; p [m]. */
export const toePenetration = defineFormula(
  {
    id: "us-asd-2018.fastener.toe-penetration",
    title: "Penetration of a toe-nail",
    symbol: "p",
    unit: "m",
    text: "max(0, min(l * cos(pi / 6) - l / 3, m))",
    inputs: { l: "m", m: "m" },
    validity: "Driven at about 30 degrees to the side piece, a third of the nail's length up from its end.",
    source: nds("12.1.6.3 and 12.3.5", "memory"),
  },
  ({ l, m }) => Math.max(0, Math.min(l * Math.cos(Math.PI / 6) - l / 3, m)),
);

/** How far a nail driven at 30 degrees reaches along the straight way. l [m]; l_t [m]. */
export const toeLength = defineFormula(
  {
    id: "us-asd-2018.fastener.toe-length",
    title: "Reach of a toe-nail along the straight way",
    symbol: "l_t",
    unit: "m",
    text: "l * cos(pi / 6)",
    inputs: { l: "m" },
    validity: "Driven at about 30 degrees.",
    source: nds("12.1.6.3 and 12.3.5", "memory"),
  },
  ({ l }) => l * Math.cos(Math.PI / 6),
);

export const toeSide = defineFormula(
  {
    id: "us-asd-2018.fastener.toe-side",
    title: "Length of a toe-nail in the side piece",
    symbol: "ls",
    unit: "m",
    text: "l / 3",
    inputs: { l: "m" },
    validity: "Started a third of the nail's length up from the end of the side piece.",
    source: nds("12.1.6.3", "memory"),
  },
  ({ l }) => l / 3,
);

export const usualTip = defineFormula(
  {
    id: "us-asd-2018.fastener.tip",
    title: "Length of the tapered point",
    symbol: "E",
    unit: "m",
    text: "2 * D",
    inputs: { D: "m" },
    validity: "Nails and wood screws; lag screws whose point is not tabulated.",
    source: nds("12.3.5", "memory"),
  },
  ({ D }) => 2 * D,
);

/** Part of the point that is inside the holding piece. E point, l length, s before, m thickness [m]; E_t [m]. */
export const tipInside = defineFormula(
  {
    id: "us-asd-2018.fastener.tip-inside",
    title: "Part of the point that is inside the holding piece",
    symbol: "E_t",
    unit: "m",
    text: "max(0, E - max(0, l - s - m))",
    inputs: { E: "m", l: "m", s: "m", m: "m" },
    validity: "A fastener that comes out at the back loses less of its point.",
    source: nds("12.3.5", "memory"),
  },
  ({ E, l, s, m }) => Math.max(0, E - Math.max(0, l - s - m)),
);

/** Length that counts in the yield modes: short fasteners lose half their point. p, E_t [m]; l_b [m]. */
export const bearingLength = defineFormula(
  {
    id: "us-asd-2018.fastener.bearing-length",
    title: "Length of the fastener that bears in the piece that holds the point",
    symbol: "l_b",
    unit: "m",
    text: "p - E_t / 2",
    inputs: { p: "m", E_t: "m" },
    validity: "p < 10 D; with p >= 10 D nothing is taken off.",
    source: nds("12.3.5", "memory"),
  },
  ({ p, E_t }) => p - E_t / 2,
);

/** Share of the tabulated lateral value of a fastener that reaches less deep than the tables assume. p, p_t [m]; C_p [1]. */
export const shortShare = defineFormula(
  {
    id: "us-asd-2018.fastener.short-share",
    title: "Share of the tabulated value for a short reach",
    symbol: "C_p",
    unit: "1",
    text: "min(1, p / p_t)",
    inputs: { p: "m", p_t: "m" },
    validity: "p from 6 D (lag screws 4 D) on; p_t is 10 D, for lag screws 8 D.",
    source: nds(
      "Tables 12J to 12R: p over 10 D, lag screws over 8 D (AWC answer on the penetration depth factor)",
      "seen",
    ),
  },
  ({ p, p_t }) => Math.min(1, p / p_t),
);
