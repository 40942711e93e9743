import { defineFormula } from "../formula/index.ts";
import { stretchedWire } from "./sources.ts";

const validity =
  "One straight elastic strand between ends that do not slip, no slack, no pretension, load at midspan, sag small against the span.";

/** Area of round wire. d diameter [m] > 0; A [m2]. */
export const wireArea = defineFormula(
  {
    id: "mesh.wire-area",
    title: "Area of the wire",
    symbol: "A",
    unit: "m2",
    text: "pi * d^2 / 4",
    inputs: { d: "m" },
    validity: "Round wire, d > 0.",
    source: { ...stretchedWire, at: "area of a circle", status: "computed" },
  },
  ({ d }) => (Math.PI * d ** 2) / 4,
);

/** Sag of the strand at midspan. P [N], A [m2], E [Pa], L [m]; delta [m]. */
export const strandSag = defineFormula(
  {
    id: "mesh.strand-sag",
    title: "Sag of a strand under a load at midspan",
    symbol: "delta",
    unit: "m",
    text: "L / 2 * (P / (A * E))^(1 / 3)",
    inputs: { P: "N", A: "m2", E: "Pa", L: "m" },
    validity,
    source: stretchedWire,
  },
  ({ P, A, E, L }) => (L / 2) * (P / (A * E)) ** (1 / 3),
);

/** Stress in the strand; the span drops out. P [N], A [m2], E [Pa]; sigma [Pa]. */
export const strandStress = defineFormula(
  {
    id: "mesh.strand-stress",
    title: "Stress in the strand",
    symbol: "sigma",
    unit: "Pa",
    text: "(E * P^2 / (8 * A^2))^(1 / 3)",
    inputs: { P: "N", A: "m2", E: "Pa" },
    validity,
    source: { ...stretchedWire, status: "computed" },
  },
  ({ P, A, E }) => ((E * P ** 2) / (8 * A ** 2)) ** (1 / 3),
);

/** Pull of the strand on its anchorage. P [N], A [m2], E [Pa]; T [N]. */
export const strandTension = defineFormula(
  {
    id: "mesh.strand-tension",
    title: "Pull of the strand on its anchorage",
    symbol: "T",
    unit: "N",
    text: "P / 2 * (A * E / P)^(1 / 3)",
    inputs: { P: "N", A: "m2", E: "Pa" },
    validity,
    source: { ...stretchedWire, status: "computed" },
  },
  ({ P, A, E }) => (P / 2) * ((A * E) / P) ** (1 / 3),
);
