import { defineConstant, defineFormula, type Constant, type Trace } from "../../../formula/index.ts";
import { qty, type Qty } from "../../../units/index.ts";
import type { LoadDuration } from "../../contract.ts";
import type { FastenerJoint, JointMoisture } from "../../fastener-contract.ts";
import { clause, projectRule } from "./sources.ts";

type Duration = "permanent" | "medium-term" | "short-term" | "instantaneous";

/** People, carts and snow count as medium-term, building and wind as short-term. */
export const durationClass: Readonly<Record<LoadDuration, Duration>> = {
  permanent: "permanent",
  "ten-years": "medium-term",
  "two-months": "medium-term",
  "seven-days": "short-term",
  "ten-minutes": "short-term",
  impact: "instantaneous",
};

const kmod = (service: "dry" | "wet", duration: Duration, value: number): Constant<"1"> =>
  defineConstant(
    `ec5-2004.fastener.kmod.${service}.${duration}`,
    `Moisture and duration factor of a joint, service class ${service === "wet" ? 3 : "1 and 2"}, ${duration}`,
    "k_mod",
    value,
    "1",
    clause("Table 3.1, solid timber", "seen"),
  );
const row = (service: "dry" | "wet", [p, m, s, i]: readonly [number, number, number, number]) => ({
  permanent: kmod(service, "permanent", p),
  "medium-term": kmod(service, "medium-term", m),
  "short-term": kmod(service, "short-term", s),
  instantaneous: kmod(service, "instantaneous", i),
});
const kmods = { dry: row("dry", [0.6, 0.8, 0.9, 1.1]), wet: row("wet", [0.5, 0.65, 0.7, 0.9]) } as const;

const constant = (
  name: string,
  title: string,
  symbol: string,
  value: number,
  source = clause(""),
): Constant<"1"> => defineConstant(`ec5-2004.fastener.${name}`, title, symbol, value, "1", source);

export const gammaM = constant(
  "gamma-m",
  "Partial factor of connections",
  "g_M",
  1.3,
  clause("Table 2.3, connections"),
);
export const noFactor = constant(
  "no-factor",
  "Factor that does not apply",
  "k",
  1,
  projectRule("a factor that does not apply is 1"),
);
export const drying = constant(
  "drying",
  "Nails along their length in wood that dries out",
  "k_dry",
  2 / 3,
  clause("8.3.2(8)", "seen"),
);
export const endGrain = constant(
  "end-grain",
  "Across nails and screws driven into end grain",
  "k_end",
  1 / 3,
  clause("8.3.1.2(4)"),
);
export const toeNailLateral = constant(
  "toe-nail-lateral",
  "Toe-nails, across",
  "k_toe",
  0.83,
  projectRule("the American toe-nail factor: the European rules name none"),
);
export const toeNailWithdrawal = constant(
  "toe-nail-withdrawal",
  "Toe-nails, along",
  "k_toe",
  0.67,
  projectRule("the American toe-nail factor: the European rules name none"),
);

/** Design value of the joint. F_k [N] of one fastener, n_ef effective number, factors [1]; F_d [N]. */
export const designValue = defineFormula(
  {
    id: "ec5-2004.fastener.design",
    title: "Design value of the fasteners",
    symbol: "F_d",
    unit: "N",
    text: "n_ef * F_k * k_mod / g_M * k_a * k_h",
    inputs: { n_ef: "1", F_k: "N", k_mod: "1", g_M: "1", k_a: "1", k_h: "1" },
    validity:
      "Against loads with their partial factors; k_a end grain, toe-nail or drying, k_h a hole that is not new.",
    source: clause("equation 2.14", "seen"),
  },
  ({ n_ef, F_k, k_mod, g_M, k_a, k_h }) => ((n_ef * F_k * k_mod) / g_M) * k_a * k_h,
);

/** Whether the wood counts as service class 3. */
export const isClassThree = (moisture: JointMoisture): boolean => moisture === "wet" || moisture === "cycles";

export const kmodOf = ({ moisture, duration }: FastenerJoint, trace?: Trace): Qty<"1"> =>
  kmods[isClassThree(moisture) ? "wet" : "dry"][durationClass[duration]]({}, trace);

/** Effective number of thin fasteners in one row. x spacing over diameter, n in the row [1]; n_r [1]. */
export const rowOfThin = defineFormula(
  {
    id: "ec5-2004.fastener.row-thin",
    title: "Effective number of nails or screws in one row along the grain",
    symbol: "n_r",
    unit: "1",
    text: "n^min(1, 0.5 + min(3, x - 4) * 0.2 / 3 + max(0, min(3, x - 7)) * 0.05 + max(0, x - 10) * 0.0375)",
    inputs: { n: "1", x: "1" },
    validity: "Diameter up to 6 mm; x from 4 (bored) or 7 (not bored) on; n >= 1.",
    source: clause("8.3.1.1(8), Table 8.1, straight lines between its values"),
  },
  ({ n, x }) =>
    n **
    Math.min(
      1,
      0.5 +
        (Math.min(3, x - 4) * 0.2) / 3 +
        Math.max(0, Math.min(3, x - 7)) * 0.05 +
        Math.max(0, x - 10) * 0.0375,
    ),
);

/** The same for fasteners over 6 mm. */
export const rowOfThick = defineFormula(
  {
    id: "ec5-2004.fastener.row-thick",
    title: "Effective number of thick fasteners in one row along the grain",
    symbol: "n_r",
    unit: "1",
    text: "min(n, n^0.9 * (x / 13)^0.25)",
    inputs: { n: "1", x: "1" },
    validity: "Diameter over 6 mm; n >= 1.",
    source: clause("equation 8.34"),
  },
  ({ n, x }) => Math.min(n, n ** 0.9 * (x / 13) ** 0.25),
);

/** All fasteners, rows by rows. n fasteners, m in one row, n_r effective in one row [1]; n_ef [1]. */
export const effectiveNumber = defineFormula(
  {
    id: "ec5-2004.fastener.effective-number",
    title: "Effective number of fasteners",
    symbol: "n_ef",
    unit: "1",
    text: "n * n_r / m",
    inputs: { n: "1", n_r: "1", m: "1" },
    validity: "Rows alike.",
    source: clause("8.1.2(4)"),
  },
  ({ n, n_r, m }) => (n * n_r) / m,
);

/** Effective number across the fasteners. */
export function effectiveAcross(joint: FastenerJoint, trace?: Trace): Qty<"1"> {
  const n = qty(joint.count, "1");
  if (joint.per_row <= 1) return n;
  const d_mm = joint.fastener.diameter_mm;
  const at = { n: qty(joint.per_row, "1"), x: qty(((joint.row_spacing_m ?? NaN) * 1000) / d_mm, "1") };
  const n_r = d_mm > 6 ? rowOfThick(at, trace) : rowOfThin(at, trace);
  return effectiveNumber({ n, n_r, m: at.n }, trace);
}

export const factorFormulas = [
  ...Object.values(kmods.dry),
  ...Object.values(kmods.wet),
  gammaM,
  noFactor,
  drying,
  endGrain,
  toeNailLateral,
  toeNailWithdrawal,
  designValue,
  rowOfThin,
  rowOfThick,
  effectiveNumber,
] as const;
