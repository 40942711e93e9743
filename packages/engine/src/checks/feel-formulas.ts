import { defineConstant, defineFormula, type AnyFormula, type Source } from "../formula/index.ts";

const statics = (at: string): Source => ({ id: "statics", title: "Statics", at, status: "computed" });

export const leastFrequency = defineConstant(
  "feel.least-frequency",
  "Slowest beat of a walkway that people do not set bouncing",
  "f_min",
  3,
  "Hz",
  {
    id: "aashto-pedestrian-2009",
    title: "AASHTO Guide Specifications for Design of Pedestrian Bridges (2009)",
    at: "at least 3 Hz up and down; people walk at 1.6 to 2.4 steps a second",
    status: "memory",
  },
);

/** First beat of a simple span under its own weight. L [m], E [Pa], I [m4], w [N/m] > 0; f_1 [Hz]. */
export const firstFrequency = defineFormula(
  {
    id: "feel.first-frequency",
    title: "First beat of the stringer under its own weight",
    symbol: "f_1",
    unit: "Hz",
    text: "pi / (2 * L^2) * sqrt(E * I * 9.80665 / w)",
    inputs: { L: "m", E: "Pa", I: "m4", w: "N/m" },
    validity:
      "One uniform member on two stiff supports, bending only. People standing on it and soft ground make it slower.",
    source: statics("first mode of a simple beam: pi/2 sqrt(EI/m)/L^2"),
  },
  ({ L, E, I, w }) => (Math.PI / (2 * L ** 2)) * Math.sqrt((E * I * 9.80665) / w),
);

/** Deflection after years. d_G and d_Q at once [m], psi_G and psi_Q [1]; d_t [m]. */
export const lastingSag = defineFormula(
  {
    id: "feel.lasting-sag",
    title: "Deflection under all loads, after creep",
    symbol: "d_t",
    unit: "m",
    text: "psi_G * d_G + psi_Q * d_Q",
    inputs: { psi_G: "1", d_G: "m", psi_Q: "1", d_Q: "m" },
    validity: "Own weight lasts for years; people and carts come and go.",
    source: statics("each deflection by its creep"),
  },
  ({ psi_G, d_G, psi_Q, d_Q }) => psi_G * d_G + psi_Q * d_Q,
);

export const feelFormulas: readonly AnyFormula[] = [leastFrequency, firstFrequency, lastingSag];
