import { defineFormula } from "../../formula/index.ts";
import { PA_PER_PSI } from "../../units/index.ts";
import { nds } from "./sources.ts";

const validity =
  "Single shear, dowel under 1/4 in; D diameter, lm and ls lengths in the main and side piece, all > 0.";
const source = nds("Table 12.3.1A, yield limit equations", "seen");

/** Strength of wood under a dowel thinner than 1/4 in, along or across the grain alike. G [1]; Fe [Pa]. */
export const dowelBearingStrength = defineFormula(
  {
    id: "us-asd-2018.dowel.bearing",
    title: "Dowel bearing strength of the wood",
    symbol: "Fe",
    unit: "Pa",
    text: `16600 * ${PA_PER_PSI} * G^1.84`,
    inputs: { G: "1" },
    validity: "Diameter under 1/4 in. Not rounded to 50 psi as the printed table is.",
    source: nds("Table 12.3.3, note 2", "seen"),
  },
  ({ G }) => 16_600 * PA_PER_PSI * G ** 1.84,
);

const mode = <const I extends Readonly<Record<string, "m" | "Pa" | "1">>>(
  name: string,
  text: string,
  inputs: I,
) => ({
  id: `us-asd-2018.dowel.mode-${name}`,
  title: `Lateral value, yield mode ${name}`,
  symbol: `Z_${name}`,
  unit: "N" as const,
  text,
  inputs,
  validity,
  source,
});

const crush = { D: "m", l: "m", Fe: "Pa", Rd: "1" } as const;
export const yieldModeIm = defineFormula(
  mode("Im", "D * l * Fe / Rd", crush),
  ({ D, l, Fe, Rd }) => (D * l * Fe) / Rd,
);
export const yieldModeIs = defineFormula(
  mode("Is", "D * l * Fe / Rd", crush),
  ({ D, l, Fe, Rd }) => (D * l * Fe) / Rd,
);

/** Re = Fem/Fes and Rt = lm/ls [1]. */
export const yieldModeII = defineFormula(
  mode(
    "II",
    "D * ls * Fes / Rd * (sqrt(Re + 2 * Re^2 * (1 + Rt + Rt^2) + Rt^2 * Re^3) - Re * (1 + Rt)) / (1 + Re)",
    { D: "m", ls: "m", Fes: "Pa", Re: "1", Rt: "1", Rd: "1" },
  ),
  ({ D, ls, Fes, Re, Rt, Rd }) =>
    (((D * ls * Fes) / Rd) *
      (Math.sqrt(Re + 2 * Re ** 2 * (1 + Rt + Rt ** 2) + Rt ** 2 * Re ** 3) - Re * (1 + Rt))) /
    (1 + Re),
);

export const yieldModeIIIm = defineFormula(
  mode(
    "IIIm",
    "D * lm * Fem / ((1 + 2 * Re) * Rd) * (sqrt(2 * (1 + Re) + 2 * Fyb * (1 + 2 * Re) * D^2 / (3 * Fem * lm^2)) - 1)",
    { D: "m", lm: "m", Fem: "Pa", Re: "1", Fyb: "Pa", Rd: "1" },
  ),
  ({ D, lm, Fem, Re, Fyb, Rd }) =>
    ((D * lm * Fem) / ((1 + 2 * Re) * Rd)) *
    (Math.sqrt(2 * (1 + Re) + (2 * Fyb * (1 + 2 * Re) * D ** 2) / (3 * Fem * lm ** 2)) - 1),
);

export const yieldModeIIIs = defineFormula(
  mode(
    "IIIs",
    "D * ls * Fem / ((2 + Re) * Rd) * (sqrt(2 * (1 + Re) / Re + 2 * Fyb * (2 + Re) * D^2 / (3 * Fem * ls^2)) - 1)",
    { D: "m", ls: "m", Fem: "Pa", Re: "1", Fyb: "Pa", Rd: "1" },
  ),
  ({ D, ls, Fem, Re, Fyb, Rd }) =>
    ((D * ls * Fem) / ((2 + Re) * Rd)) *
    (Math.sqrt((2 * (1 + Re)) / Re + (2 * Fyb * (2 + Re) * D ** 2) / (3 * Fem * ls ** 2)) - 1),
);

export const yieldModeIV = defineFormula(
  mode("IV", "D^2 / Rd * sqrt(2 * Fem * Fyb / (3 * (1 + Re)))", {
    D: "m",
    Fem: "Pa",
    Fyb: "Pa",
    Re: "1",
    Rd: "1",
  }),
  ({ D, Fem, Fyb, Re, Rd }) => (D ** 2 / Rd) * Math.sqrt((2 * Fem * Fyb) / (3 * (1 + Re))),
);

/** Reduction term on the shank diameter, the safer of two readings for screws: decision record 0004. D [m]; Rd [1]. */
export const reductionTerm = defineFormula(
  {
    id: "us-asd-2018.dowel.reduction",
    title: "Reduction term on the shank diameter",
    symbol: "Rd",
    unit: "1",
    text: "max(2.2, 10 * D / 0.0254 + 0.5)",
    inputs: { D: "m" },
    validity: "Diameter under 1/4 in.",
    source: nds("Table 12.3.1B; on the shank diameter by project decision 0004", "seen"),
  },
  ({ D }) => Math.max(2.2, (10 * D) / 0.0254 + 0.5),
);
