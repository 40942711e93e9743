import { defineFormula } from "../formula/index.ts";

/** Level between two turning points of the tide. */
export const halfCosine = defineFormula(
  {
    id: "water.half-cosine",
    title: "Level between a high and a low water",
    symbol: "z",
    unit: "m",
    text: "a + (b - a) * (1 - cos(pi * s)) / 2",
    inputs: { a: "m", b: "m", s: "1" },
    validity:
      "a the turning point before, b the one after, s the share of the time between them, 0 to 1. Shallow-water tides rise faster than they fall: expect 0.1 to 0.2 m of error in an estuary.",
    source: {
      id: "half-cosine",
      title: "Half a cosine between high and low water, the usual reading of a tide table",
      status: "practice",
    },
  },
  ({ a, b, s }) => a + ((b - a) * (1 - Math.cos(Math.PI * s))) / 2,
);

/** Share of the time between two turning points at which the level is z; z must lie between them, a unequal b. */
export const timeOfLevel = (a: number, b: number, z: number): number =>
  Math.acos(Math.min(1, Math.max(-1, 1 - (2 * (z - a)) / (b - a)))) / Math.PI;
