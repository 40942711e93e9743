import { defineMethod, inputProblem, type Calculation, type JsonObject } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import type { Situation } from "./contract.ts";
import { ec5 } from "./ec5-2004/index.ts";
import { durationField, loadDuration, memberFields, readMember } from "./timber-input.ts";
import { nds, supplement } from "./us-asd-2018/index.ts";

const yes = (key: string, title: string) => ({ key, title, type: "boolean" }) as const;
const strengths = [
  ["fb_pa", "Bending strength Fb'"],
  ["fv_pa", "Shear strength Fv'"],
  ["fcp_pa", "Bearing strength across the grain Fcp'"],
  ["fc_pa", "Compression strength along the grain Fc'"],
  ["e_pa", "Stiffness E'"],
  ["emin_pa", "Least stiffness Emin'"],
] as const;
const factors = [
  ["cd", "Load duration"],
  ["cm_fb", "Wet service, bending"],
  ["cm_fv", "Wet service, shear"],
  ["cm_fcp", "Wet service, bearing"],
  ["cm_fc", "Wet service, compression"],
  ["cm_e", "Wet service, stiffness"],
  ["cf_fb", "Size, bending"],
  ["cf_fc", "Size, compression"],
  ["cfu", "Flat use"],
  ["ci", "Incising, strength"],
  ["ci_e", "Incising, stiffness"],
  ["cr", "Repetitive member"],
  ["cl", "Beam stability"],
  ["cp", "Column stability"],
  ["kmod", "Eurocode 5: moisture and duration"],
  ["gamma_m", "Eurocode 5: partial factor of the timber"],
  ["kinc", "Eurocode 5: incised, strength"],
  ["kinc_e", "Eurocode 5: incised, stiffness"],
  ["kh", "Eurocode 5: depth"],
  ["ksys", "Eurocode 5: shared load"],
  ["kcr", "Eurocode 5: cracks, shear"],
  ["kcrit", "Eurocode 5: sideways buckling"],
  ["kc", "Eurocode 5: buckling of a post"],
] as const;

const situationOf = (input: JsonObject): Situation => ({
  use: input["use"] as Situation["use"],
  wet: input["wet"] as boolean,
  incised: input["incised"] as boolean,
  repetitive: input["repetitive"] as boolean,
  duration: loadDuration(input),
  unbraced_load: (input["unbraced_load"] as "uniform" | "midspan-point" | undefined) ?? "uniform",
  ...(input["unbraced_length_mm"] === undefined
    ? {}
    : { unbraced_m: (input["unbraced_length_mm"] as number) / 1000 }),
  ...(input["column_length_mm"] === undefined
    ? {}
    : { column_m: (input["column_length_mm"] as number) / 1000 }),
});

/** Strengths of one graded piece after every adjustment factor, with the factors. */
export const adjustedValues: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "timber.adjusted-values",
    title: "Strengths of graded lumber after every adjustment factor",
    inputs: [
      ...memberFields,
      { key: "use", title: "How the piece lies", type: "string", choices: ["edge", "flat"] },
      yes("wet", "Wet service: moisture above 19 % for long"),
      yes("incised", "Incised for the preservative"),
      yes("repetitive", "Three or more alike at most 24 in apart under sharing boards"),
      durationField,
      {
        key: "unbraced_length_mm",
        title: "Free length against sideways buckling",
        type: "number",
        min: 1,
        optional: true,
      },
      {
        key: "unbraced_load",
        title: "Load form for that length (uniform unless given)",
        type: "string",
        choices: ["uniform", "midspan-point"],
        optional: true,
      },
      { key: "column_length_mm", title: "Free length as a post", type: "number", min: 1, optional: true },
    ],
    outputs: [
      ...strengths.map(([key, title]) => ({ key, title, type: "number" }) as const),
      ...factors.map(([key, title]) => ({ key, title, type: "number", optional: true }) as const),
    ],
    validity:
      "NDS: sawn lumber 2 in to 4 in thick, up to 38 C, allowable stresses; thinner boards take the grade's values without gain of size or flat use (project decision). Eurocode 5: solid softwood, design strengths for loads with their partial factors; wet is service class 3, dry class 2. The two are never comparable as they stand. Without a free length the pressed edge counts as held all along.",
    sources: [
      nds("4.3 and 3.3.3, 3.7.1", "memory"),
      supplement("Tables 4A and 4B", "seen"),
      ec5("2.4, 3.2, 6.1, 6.3 and 6.6", "memory"),
    ],
  },
  (input, { tables }, trace) => {
    const found = readMember(input, tables);
    if (!found.ok) return { problems: found.problems };
    const result = found.value.code.strength(found.value.member, situationOf(input), trace);
    const tooSlender = (["cl", "cp"] as const).filter((c) => result.factors[c] === 0);
    if (tooSlender.length > 0)
      return {
        problems: tooSlender.map((c) => {
          const key = c === "cl" ? "unbraced_length_mm" : "column_length_mm";
          return inputProblem(
            key,
            input[key],
            "the piece is too slender: over 50",
            "Shorten the free length or choose a stouter size.",
          );
        }),
      };
    const { fb, fv, fcp, fc, e, emin, factors: named } = result;
    return { fb_pa: fb, fv_pa: fv, fcp_pa: fcp, fc_pa: fc, e_pa: e, emin_pa: emin, ...named };
  },
);
