import { defineConstant, defineFormula } from "../formula/index.ts";

const individual = (at: string) =>
  ({
    id: "individual-bearing",
    title: "Individual bearing method of screw piles: each helix bears by itself",
    at,
    status: "memory",
  }) as const;

/** Area of one helix around its shaft. D helix, d shaft [m], D > d; A_h [m2]. */
export const helixArea = defineFormula(
  {
    id: "ground.screw-pile.helix-area",
    title: "Area of one helix around its shaft",
    symbol: "A_h",
    unit: "m2",
    text: "pi / 4 * max(D^2 - d^2, 0)",
    inputs: { D: "m", d: "m" },
    validity: "Round shaft and helix, D > d.",
    source: { id: "geometry", title: "Geometry", at: "ring", status: "computed" },
  },
  ({ D, d }) => (Math.PI / 4) * Math.max(D ** 2 - d ** 2, 0),
);

/**
 * Ultimate capacity of one screw pile, up or down.
 *
 * n    helices [1], q bearing pressure on a helix [Pa], A_h [m2]; Q [N]
 *
 * Shaft friction and own weight are left out; helices at least three diameters apart so that each bears alone.
 */
export const screwPileCapacity = defineFormula(
  {
    id: "ground.screw-pile.capacity",
    title: "What one screw pile holds, pressed or pulled",
    symbol: "Q",
    unit: "N",
    text: "n * q * A_h",
    inputs: { n: "1", q: "Pa", A_h: "m2" },
    validity:
      "Soft clay or peat, undrained, one even strength; helices at least three diameters apart; shaft friction left out.",
    source: individual("sum of 9 su A over the helices"),
  },
  ({ n, q, A_h }) => n * q * A_h,
);

/** Load that keeps the chosen ratio. Q [N], F [1] >= 1; Q_a [N]. */
export const screwPileAllowed = defineFormula(
  {
    id: "ground.screw-pile.allowed",
    title: "Load allowed on one screw pile",
    symbol: "Q_a",
    unit: "N",
    text: "Q / F",
    inputs: { Q: "N", F: "1" },
    validity: "F >= 1: the ratio of capacity to pressure that the plan asks for.",
    source: { id: "plan-ground-safety", title: "The plan's chosen safety on bearing", status: "project" },
  },
  ({ Q, F }) => Q / F,
);

/** Upward pull on the lightest pile of a stiff support. N [N], m [N*m], n, o [m], Q [m2]; T [N], 0 when it is pressed. */
export const pilePull = defineFormula(
  {
    id: "ground.screw-pile.pull",
    title: "Pull on the lightest pile",
    symbol: "T",
    unit: "N",
    text: "max(0, m * o / Q - N / n)",
    inputs: { N: "N", m: "N*m", n: "1", o: "m", Q: "m2" },
    validity: "Stiff support, equal piles placed evenly about their middle, Q > 0.",
    source: {
      id: "statics",
      title: "Statics of a stiff support on its feet",
      at: "load shared in a straight line",
      status: "computed",
    },
  },
  ({ N, m, n, o, Q }) => Math.max(0, (m * o) / Q - N / n),
);

export const leastHelixDepth = defineConstant(
  "ground.screw-pile.least-depth",
  "Least depth of the lowest helix, in helix diameters",
  "n_z",
  5,
  "1",
  individual("at least five diameters deep to count as deep; shallower ones heave the surface"),
);

/** Least depth of a helix. n_z [1], D [m]; z [m]. */
export const helixDepth = defineFormula(
  {
    id: "ground.screw-pile.depth",
    title: "Least depth of the lowest helix",
    symbol: "z",
    unit: "m",
    text: "n_z * D",
    inputs: { n_z: "1", D: "m" },
    validity: "Below the root mat in any case.",
    source: individual("depth in diameters"),
  },
  ({ n_z, D }) => n_z * D,
);
