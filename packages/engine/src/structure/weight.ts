import { defineFormula } from "../formula/index.ts";

/** Weight of a mass. m [kg]; W [N]. */
export const weightOf = defineFormula(
  {
    id: "structure.weight",
    title: "Weight",
    symbol: "W",
    unit: "N",
    text: "m * 9.80665",
    inputs: { m: "kg" },
    validity: "Standard gravity.",
    source: { id: "cgpm-3-1901", title: "Standard gravity, 3rd CGPM, 1901", status: "seen" },
  },
  ({ m }) => m * 9.80665,
);
