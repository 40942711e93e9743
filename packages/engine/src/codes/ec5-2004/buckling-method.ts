import {
  defineMethod,
  recordValue,
  type Calculation,
  type JsonObject,
  type Trace,
} from "../../formula/index.ts";
import type { CalcContext, StrengthClass } from "../../materials/index.ts";
import { millimetres, qty, type Qty } from "../../units/index.ts";
import { classFields, isProblem, readClass, rectangleFrom } from "./class-input.ts";
import { ec5 } from "./sources.ts";
import {
  effectiveLengthMiddle,
  effectiveLengthTop,
  lateralBuckling,
  lengthShares,
  type Rectangle,
} from "./stability.ts";
import { tabulated } from "./strength.ts";

/** E0,05 as asked, else of the class. */
function lowerStiffness(input: JsonObject, grade: StrengthClass, trace: Trace): Qty<"Pa"> {
  const asked = input["e_0_05_mpa"] as number | undefined;
  if (asked === undefined) return tabulated({ grade }, "e0_05", trace);
  const value = qty(asked * 1e6, "Pa");
  const source = { id: "input", title: "Input of this calculation", status: "project" } as const;
  recordValue(trace, {
    id: "ec5-2004.asked.e0-05",
    title: "Stiffness along the grain, lower",
    symbol: "E_0",
    value,
    unit: "Pa",
    source,
    how: "as asked",
  });
  return value;
}

function effectiveLength(input: JsonObject, { h }: Rectangle, trace: Trace): Qty<"m"> {
  const l = millimetres(input["free_length_mm"] as number);
  const k_l = lengthShares[input["load"] as keyof typeof lengthShares]({}, trace);
  return input["load_on_top"] === true
    ? effectiveLengthTop({ k_l, l, h }, trace)
    : effectiveLengthMiddle({ k_l, l }, trace);
}

/** Sideways buckling of a beam on edge by Eurocode 5. */
export const ec5LateralBuckling: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "ec5.lateral-buckling",
    title: "Sideways buckling of a softwood beam by Eurocode 5",
    inputs: [
      ...classFields,
      {
        key: "free_length_mm",
        title: "Free length against sideways buckling",
        type: "number",
        min: 1,
        max: 1e5,
      },
      { key: "load", title: "Form of the load", type: "string", choices: ["uniform", "midspan-point"] },
      { key: "load_on_top", title: "Load on the pressed edge (2 h more)", type: "boolean" },
      {
        key: "e_0_05_mpa",
        title: "Lower stiffness, when it is not that of the class",
        type: "number",
        min: 100,
        max: 50_000,
        optional: true,
      },
    ],
    outputs: [
      { key: "effective_length_mm", title: "Effective length", type: "number" },
      { key: "sigma_crit_pa", title: "Critical bending stress", type: "number" },
      { key: "lambda_rel", title: "Relative slenderness", type: "number" },
      { key: "kcrit", title: "Factor on the bending strength", type: "number" },
    ],
    validity: "Simple span held against turning at its ends, solid softwood rectangle on edge.",
    sources: [ec5("6.3.3", "seen"), ec5("Table 6.1", "memory")],
  },
  (input, { tables }, trace) => {
    const row = readClass(input, tables);
    if (isProblem(row)) return { problems: [row] };
    const section = rectangleFrom(input);
    const lef = effectiveLength(input, section, trace);
    const fm_k = tabulated({ grade: row }, "fm_k", trace);
    const E_05 = lowerStiffness(input, row, trace);
    const { s_crit, lam, kcrit } = lateralBuckling(section, lef, fm_k, E_05, trace);
    return { effective_length_mm: lef * 1000, sigma_crit_pa: s_crit, lambda_rel: lam, kcrit };
  },
);
