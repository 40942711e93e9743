import { defineFormula, type Trace } from "../../../formula/index.ts";
import type { Qty } from "../../../units/index.ts";
import { clause } from "./sources.ts";

const validity =
  "One fastener and one shear plane; t_1, t_2 lengths in the pieces, b = f_h2 / f_h1, without the rope part.";
const mode = <const I extends Readonly<Record<string, "m" | "Pa" | "1" | "N*m">>>(
  name: string,
  text: string,
  inputs: I,
  at = "equation 8.6",
) => ({
  id: `ec5-2004.fastener.mode-${name}`,
  title: `Lateral value, failure mode ${name}`,
  symbol: `F_${name}`,
  unit: "N" as const,
  text,
  inputs,
  validity,
  source: clause(at),
});

const crush = { f_h: "Pa", t: "m", d: "m" } as const;
export const modeA = defineFormula(mode("a", "f_h * t * d", crush), ({ f_h, t, d }) => f_h * t * d);
export const modeB = defineFormula(mode("b", "f_h * t * d", crush), ({ f_h, t, d }) => f_h * t * d);
export const modeG = defineFormula(
  mode("g", "f_h * t * d", crush, "equation 8.7"),
  ({ f_h, t, d }) => f_h * t * d,
);
export const modeH = defineFormula(
  mode("h", "0.5 * f_h * t * d", crush, "equation 8.7"),
  ({ f_h, t, d }) => 0.5 * f_h * t * d,
);

/** r = t_2 / t_1 [1]. */
export const modeC = defineFormula(
  mode("c", "f_h1 * t_1 * d / (1 + b) * (sqrt(b + 2 * b^2 * (1 + r + r^2) + b^3 * r^2) - b * (1 + r))", {
    f_h1: "Pa",
    t_1: "m",
    d: "m",
    b: "1",
    r: "1",
  }),
  ({ f_h1, t_1, d, b, r }) =>
    ((f_h1 * t_1 * d) / (1 + b)) *
    (Math.sqrt(b + 2 * b ** 2 * (1 + r + r ** 2) + b ** 3 * r ** 2) - b * (1 + r)),
);

const bent = { f_h1: "Pa", t: "m", d: "m", b: "1", M_y: "N*m" } as const;
const headText =
  "1.05 * f_h1 * t * d / (2 + b) * (sqrt(2 * b * (1 + b) + 4 * b * (2 + b) * M_y / (f_h1 * d * t^2)) - b)";
type Bent = { readonly [K in keyof typeof bent]: Qty<(typeof bent)[K]> };
const headBends = ({ f_h1, t, d, b, M_y }: Bent): number =>
  ((1.05 * f_h1 * t * d) / (2 + b)) *
  (Math.sqrt(2 * b * (1 + b) + (4 * b * (2 + b) * M_y) / (f_h1 * d * t ** 2)) - b);
export const modeD = defineFormula(mode("d", headText, bent), headBends);
export const modeJ = defineFormula(mode("j", headText, bent, "equation 8.7"), headBends);

export const modeE = defineFormula(
  mode(
    "e",
    "1.05 * f_h1 * t * d / (1 + 2 * b) * (sqrt(2 * b^2 * (1 + b) + 4 * b * (1 + 2 * b) * M_y / (f_h1 * d * t^2)) - b)",
    bent,
  ),
  ({ f_h1, t, d, b, M_y }) =>
    ((1.05 * f_h1 * t * d) / (1 + 2 * b)) *
    (Math.sqrt(2 * b ** 2 * (1 + b) + (4 * b * (1 + 2 * b) * M_y) / (f_h1 * d * t ** 2)) - b),
);

const twice = { f_h1: "Pa", d: "m", b: "1", M_y: "N*m" } as const;
const twiceText = "1.15 * sqrt(2 * b / (1 + b)) * sqrt(2 * M_y * f_h1 * d)";
type Twice = { readonly [K in keyof typeof twice]: Qty<(typeof twice)[K]> };
const bendsTwice = ({ f_h1, d, b, M_y }: Twice): number =>
  1.15 * Math.sqrt((2 * b) / (1 + b)) * Math.sqrt(2 * M_y * f_h1 * d);
export const modeF = defineFormula(mode("f", twiceText, twice), bendsTwice);
export const modeK = defineFormula(mode("k", twiceText, twice, "equation 8.7"), bendsTwice);

export const woodModeFormulas = [
  modeA,
  modeB,
  modeC,
  modeD,
  modeE,
  modeF,
  modeG,
  modeH,
  modeJ,
  modeK,
] as const;

/** One way to fail: whether the pull along the fastener helps, and the value of one shear plane. */
export interface Mode {
  readonly name: string;
  readonly rope: boolean;
  readonly value: (trace?: Trace) => Qty<"N">;
}

/** A fastener in wood: d [m], M_y [N*m], embedding [Pa] and length [m] of side (1) and main or middle piece (2). */
export interface WoodDowel {
  readonly d: Qty<"m">;
  readonly M_y: Qty<"N*m">;
  readonly f_h1: Qty<"Pa">;
  readonly f_h2: Qty<"Pa">;
  readonly t_1: Qty<"m">;
  readonly t_2: Qty<"m">;
  readonly b: Qty<"1">;
  readonly r: Qty<"1">;
}

export const singleModes = (w: WoodDowel): readonly Mode[] => [
  { name: "a", rope: false, value: (t) => modeA({ f_h: w.f_h1, t: w.t_1, d: w.d }, t) },
  { name: "b", rope: false, value: (t) => modeB({ f_h: w.f_h2, t: w.t_2, d: w.d }, t) },
  { name: "c", rope: true, value: (t) => modeC(w, t) },
  { name: "d", rope: true, value: (t) => modeD({ ...w, t: w.t_1 }, t) },
  { name: "e", rope: true, value: (t) => modeE({ ...w, t: w.t_2 }, t) },
  { name: "f", rope: true, value: (t) => modeF(w, t) },
];

export const doubleModes = (w: WoodDowel): readonly Mode[] => [
  { name: "g", rope: false, value: (t) => modeG({ f_h: w.f_h1, t: w.t_1, d: w.d }, t) },
  { name: "h", rope: false, value: (t) => modeH({ f_h: w.f_h2, t: w.t_2, d: w.d }, t) },
  { name: "j", rope: true, value: (t) => modeJ({ ...w, t: w.t_1 }, t) },
  { name: "k", rope: true, value: (t) => modeK(w, t) },
];
