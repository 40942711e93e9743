import { defineFormula } from "../formula/index.ts";

const statics = (at: string) =>
  ({ id: "statics", title: "Statics of a stiff support on its feet", at, status: "computed" }) as const;

/**
 * Load on one foot of a stiff support that stands on several equal feet, spread in a straight line across.
 *
 * N  vertical load on the support [N]; m its moment about the walkway's middle line [N*m]
 * n  number of feet [1]; o the foot's offset across [m]; Q sum of all offsets squared [m2] > 0
 * F  load on the foot [N]; may be negative where the support would lift off
 */
export const footLoad = defineFormula(
  {
    id: "ground.foot-load",
    title: "Load on the outer foot",
    symbol: "F",
    unit: "N",
    text: "N / n + m * o / Q",
    inputs: { N: "N", m: "N*m", n: "1", o: "m", Q: "m2" },
    validity: "Stiff support, equal feet placed evenly about their middle, Q > 0.",
    source: statics("load shared in a straight line"),
  },
  ({ N, m, n, o, Q }) => N / n + (m * o) / Q,
);

/** Length of a single foot that still bears under an off-centre load. c foot's length across, e off-centre distance [m]. */
export const bearingLength = defineFormula(
  {
    id: "ground.bearing-length",
    title: "Length of the foot that bears",
    symbol: "c1",
    unit: "m",
    text: "c - 2 * e",
    inputs: { c: "m", e: "m" },
    validity: "Meyerhof's effective width, 0 <= e < c/2.",
    source: {
      id: "meyerhof-1953",
      title: "Meyerhof, bearing capacity under eccentric loads: effective width",
      status: "memory",
    },
  },
  ({ c, e }) => c - 2 * e,
);

/** Pressure of a load on a rectangle. F [N], a and b sides [m] > 0; p [Pa]. */
export const footPressure = defineFormula(
  {
    id: "ground.foot-pressure",
    title: "Pressure under the foot",
    symbol: "p",
    unit: "Pa",
    text: "F / (a * b)",
    inputs: { F: "N", a: "m", b: "m" },
    validity: "Evenly pressed rectangle, a and b > 0.",
    source: statics("load over area"),
  },
  ({ F, a, b }) => F / (a * b),
);
