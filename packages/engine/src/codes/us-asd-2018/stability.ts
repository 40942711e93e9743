import { defineConstant, defineFormula, type Constant, type Trace } from "../../formula/index.ts";
import { metres, type Qty } from "../../units/index.ts";
import { nds } from "./sources.ts";

const effectiveSpec = (id: string, title: string, text: string, status: "seen" | "memory") =>
  ({
    id: `us-asd-2018.effective-length.${id}`,
    title: `Effective length against sideways buckling, ${title}`,
    symbol: "le",
    unit: "m",
    text,
    validity: "One span held at its ends, lu free length and d depth > 0.",
    source: nds("Table 3.3.3", status),
  }) as const;

const ofLength = (id: string, title: string, k: number) =>
  defineFormula(
    { ...effectiveSpec(id, title, `${k} * lu`, "memory"), inputs: { lu: "m" } },
    ({ lu }) => k * lu,
  );

const ofLengthAndDepth = (id: string, title: string, k: number) =>
  defineFormula(
    { ...effectiveSpec(id, title, `${k} * lu + 3 * d`, "seen"), inputs: { lu: "m", d: "m" } },
    ({ lu, d }) => k * lu + 3 * d,
  );

/** Table 3.3.3 by the form of the load and the ratio lu/d. The uniform rows stand for any load but one at midspan. */
export const effectiveLengths = {
  uniformShort: ofLength("uniform-short", "any load, lu/d under 7", 2.06),
  uniform: ofLengthAndDepth("uniform", "uniform load, lu/d 7 or more", 1.63),
  anyLong: ofLength("any-long", "any load, lu/d over 14.3", 1.84),
  pointShort: ofLength("point-short", "load at midspan, lu/d under 7", 1.8),
  point: ofLengthAndDepth("point", "load at midspan, lu/d 7 or more", 1.37),
} as const;

/** Slenderness of a bending member. le, d depth, b breadth [m]; RB [1], at most 50. */
export const beamSlenderness = defineFormula(
  {
    id: "us-asd-2018.beam-slenderness",
    title: "Slenderness of the beam",
    symbol: "RB",
    unit: "1",
    text: "sqrt(le * d / b^2)",
    inputs: { le: "m", d: "m", b: "m" },
    validity: "RB at most 50.",
    source: nds("3.3.3.6", "seen"),
  },
  ({ le, d, b }) => Math.sqrt((le * d) / b ** 2),
);

/** Critical bending stress for sideways buckling. Emin [Pa], RB [1]; FbE [Pa]. */
export const criticalBendingStress = defineFormula(
  {
    id: "us-asd-2018.critical-bending",
    title: "Critical bending stress",
    symbol: "FbE",
    unit: "Pa",
    text: "1.20 * Emin / RB^2",
    inputs: { Emin: "Pa", RB: "1" },
    validity: "Emin with all its factors, RB > 0.",
    source: nds("3.3.3.8", "seen"),
  },
  ({ Emin, RB }) => (1.2 * Emin) / RB ** 2,
);

/** Beam stability factor. F = FbE/Fb* [1]; CL [1]. */
export const beamStabilityFactor = defineFormula(
  {
    id: "us-asd-2018.beam-stability",
    title: "Beam stability factor",
    symbol: "CL",
    unit: "1",
    text: "(1 + F) / 1.9 - sqrt(((1 + F) / 1.9)^2 - F / 0.95)",
    inputs: { F: "1" },
    validity: "F = FbE / Fb*, > 0.",
    source: nds("equation 3.3-6", "seen"),
  },
  ({ F }) => (1 + F) / 1.9 - Math.sqrt(((1 + F) / 1.9) ** 2 - F / 0.95),
);

/** Critical stress of a post. Emin [Pa], s = le/d [1]; FcE [Pa]. */
export const criticalColumnStress = defineFormula(
  {
    id: "us-asd-2018.critical-column",
    title: "Critical stress of the post",
    symbol: "FcE",
    unit: "Pa",
    text: "0.822 * Emin / s^2",
    inputs: { Emin: "Pa", s: "1" },
    validity: "s = le/d, > 0 and at most 50.",
    source: nds("3.7.1.5", "seen"),
  },
  ({ Emin, s }) => (0.822 * Emin) / s ** 2,
);

/** Column stability factor. F = FcE/Fc* [1]; CP [1]. */
export const columnStabilityFactor = defineFormula(
  {
    id: "us-asd-2018.column-stability",
    title: "Column stability factor",
    symbol: "CP",
    unit: "1",
    text: "(1 + F) / 1.6 - sqrt(((1 + F) / 1.6)^2 - F / 0.8)",
    inputs: { F: "1" },
    validity: "Sawn lumber (c = 0.8), F = FcE / Fc*, > 0.",
    source: nds("equation 3.7-1", "seen"),
  },
  ({ F }) => (1 + F) / 1.6 - Math.sqrt(((1 + F) / 1.6) ** 2 - F / 0.8),
);

/** Ratio of two stresses. a, b [Pa]; F [1]. */
export const stressRatio = defineFormula(
  {
    id: "us-asd-2018.stress-ratio",
    title: "Critical stress over strength",
    symbol: "F",
    unit: "1",
    text: "a / b",
    inputs: { a: "Pa", b: "Pa" },
    validity: "b > 0.",
    source: nds("3.3.3.8", "seen"),
  },
  ({ a, b }) => a / b,
);

export const slendernessLimit: Constant<"1"> = defineConstant(
  "us-asd-2018.slenderness-limit",
  "Largest slenderness of a beam or post",
  "R_max",
  50,
  "1",
  nds("3.3.3.7 and 3.7.1.4", "memory"),
);

/** Effective length by the ratio of free length to depth and the form of the load. lu, d [m] > 0. */
export function effectiveLength(
  lu: number,
  d: number,
  load: "uniform" | "midspan-point",
  trace?: Trace,
): Qty<"m"> {
  const args = { lu: metres(lu), d: metres(d) };
  const ratio = lu / d;
  const { uniformShort, uniform, anyLong, pointShort, point } = effectiveLengths;
  if (load === "midspan-point") return ratio < 7 ? pointShort(args, trace) : point(args, trace);
  if (ratio < 7) return uniformShort(args, trace);
  return ratio <= 14.3 ? uniform(args, trace) : anyLong(args, trace);
}
