import { defineFormula, type AnyFormula, type Source } from "../formula/index.ts";
import { M_PER_FT } from "../units/index.ts";

const arithmetic = (at: string): Source => ({
  id: "arithmetic",
  title: "Arithmetic",
  at,
  status: "computed",
});

/** Mass for each carrier. m [kg], n carriers [1] >= 1; m_1 [kg]. */
export const massPerCarrier = defineFormula(
  {
    id: "kit.mass-per-carrier",
    title: "Mass for each carrier",
    symbol: "m_1",
    unit: "kg",
    text: "m / n",
    inputs: { m: "kg", n: "1" },
    validity: "Even shares, n >= 1.",
    source: arithmetic("mass over carriers"),
  },
  ({ m, n }) => m / n,
);

/** Money for one metre of walkway. A [money], L pitch [m] > 0; a [money] for one metre. */
export const costPerMetre = defineFormula(
  {
    id: "kit.cost-per-metre",
    title: "Material of one metre",
    symbol: "a",
    unit: "money",
    text: "A / L",
    inputs: { A: "money", L: "m" },
    validity: "L > 0: from joint to joint. Supports are not in it.",
    source: arithmetic("cost over length"),
  },
  ({ A, L }) => A / L,
);

/** Money for one foot of walkway. a [money] for one metre; a_f [money] for one foot. */
export const costPerFoot = defineFormula(
  {
    id: "kit.cost-per-foot",
    title: "Material of one foot",
    symbol: "a_f",
    unit: "money",
    text: `a * ${M_PER_FT}`,
    inputs: { a: "money" },
    validity: "One foot is 0.3048 m.",
    source: arithmetic("0.3048 m in a foot"),
  },
  ({ a }) => a * M_PER_FT,
);

/** Ground under the shafts of screw piles. d [m], n [1]; A [m2]. */
export const shaftContact = defineFormula(
  {
    id: "kit.shaft-contact",
    title: "Ground under the shafts of the screw piles",
    symbol: "A",
    unit: "m2",
    text: "n * pi / 4 * d^2",
    inputs: { n: "1", d: "m" },
    validity: "Round shafts; the helices lie below the roots.",
    source: { id: "geometry", title: "Geometry", at: "area of a circle", status: "computed" },
  },
  ({ n, d }) => ((n * Math.PI) / 4) * d ** 2,
);

/** Rise of a ramp at its steepest. L on the slope [m], s rise over run [1]; h [m]. */
export const steepestRise = defineFormula(
  {
    id: "kit.ramp-rise",
    title: "Rise that the ramp may climb",
    symbol: "h",
    unit: "m",
    text: "L * s / sqrt(1 + s^2)",
    inputs: { L: "m", s: "1" },
    validity: "L measured on the slope.",
    source: { id: "geometry", title: "Geometry", at: "rise over run", status: "computed" },
  },
  ({ L, s }) => (L * s) / Math.sqrt(1 + s ** 2),
);

export const kitFigureFormulas: readonly AnyFormula[] = [
  massPerCarrier,
  costPerMetre,
  costPerFoot,
  shaftContact,
  steepestRise,
];
