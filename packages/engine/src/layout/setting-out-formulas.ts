import { defineFormula } from "../formula/index.ts";

const plane = { id: "causey-setting-out", title: "Plane geometry, by hand", status: "computed" } as const;

/** Distance of a place along a baseline. */
export const tapeAlong = defineFormula(
  {
    id: "layout.tape-along",
    title: "Distance along a baseline to the foot of a joint's offset",
    symbol: "a",
    unit: "m",
    text: "dx * e_x + dy * e_y",
    inputs: { dx: "m", dy: "m", e_x: "1", e_y: "1" },
    validity: "dx east and dy north from the baseline's beginning; e its direction, a unit vector.",
    source: plane,
  },
  ({ dx, dy, e_x, e_y }) => dx * e_x + dy * e_y,
);

/** Distance of a place square to a baseline, to the right of who walks along it. */
export const tapeOffset = defineFormula(
  {
    id: "layout.tape-offset",
    title: "Offset of a joint square to a baseline, to the right",
    symbol: "o",
    unit: "m",
    text: "dx * e_y - dy * e_x",
    inputs: { dx: "m", dy: "m", e_x: "1", e_y: "1" },
    validity: "dx east and dy north from the baseline's beginning; e its direction, a unit vector.",
    source: plane,
  },
  ({ dx, dy, e_x, e_y }) => dx * e_y - dy * e_x,
);

/** Distance between two places, as a tape held level reads it. */
export const tapeTie = defineFormula(
  {
    id: "layout.tape-tie",
    title: "Distance between two places, tape held level",
    symbol: "d",
    unit: "m",
    text: "sqrt(dx^2 + dy^2)",
    inputs: { dx: "m", dy: "m" },
    validity: "dx east and dy north from one place to the other; the tape is held level.",
    source: plane,
  },
  ({ dx, dy }) => Math.sqrt(dx ** 2 + dy ** 2),
);
