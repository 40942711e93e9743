import {
  defineMethod,
  inputProblem,
  type Calculation,
  type Field,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import { durationFactors, type LoadDuration } from "../codes/index.ts";
import type { CalcContext, PlywoodRow } from "../materials/index.ts";
import { M_PER_FT, M_PER_IN, N_PER_LBF, inches, millimetres, qty, type Qty } from "../units/index.ts";
import { number, optional, text, yes } from "./method-fields.ts";
import {
  deflectionSpan,
  panelBendingLoad,
  panelDeflectionLoad,
  panelMomentInUse,
  panelShearInUse,
  panelShearLoad,
  panelStiffnessInUse,
  wetPanel,
  type Spans,
} from "./plywood-formulas.ts";
import { namedRow, rowOrSizes } from "./row-input.ts";

const strengthSizes: readonly Field[] = [
  number("bending_nm_per_m", "Moment that one metre of width may carry, dry", 0.1, 1e6),
  number("stiffness_nm2_per_m", "Bending stiffness of one metre of width, dry", 0.1, 1e8),
];
const shearSize = optional(
  number("shear_n_per_m", "Shear in the plies that one metre of width may carry, dry", 1, 1e7),
);
const DURATIONS = Object.keys(durationFactors) as LoadDuration[];

interface Panel {
  readonly m_t: Qty<"N">;
  readonly k_t: Qty<"N*m">;
  readonly v_t: Qty<"N/m"> | null;
}

/** A foot of width by pounds and inches, as a metre of width by newtons and metres. */
const fromRow = (row: PlywoodRow): Panel => ({
  m_t: qty((row.bending_lb_in_per_ft * N_PER_LBF * M_PER_IN) / M_PER_FT, "N"),
  k_t: qty((row.stiffness_lb_in2_per_ft * N_PER_LBF * M_PER_IN ** 2) / M_PER_FT, "N*m"),
  v_t: row.shear_lb_per_ft === null ? null : qty((row.shear_lb_per_ft * N_PER_LBF) / M_PER_FT, "N/m"),
});

function readPanel(
  input: JsonObject,
  { tables }: CalcContext,
): Panel | { readonly problems: readonly Problem[] } {
  const row = namedRow(input, { key: "panel", rows: tables.plywood });
  const problems = [...(row.ok ? [] : row.problems), ...rowOrSizes(input, "panel", strengthSizes)];
  const [span, support] = [input["span_mm"] as number, input["support_mm"] as number];
  if (support >= span)
    problems.push(
      inputProblem(
        "support_mm",
        support,
        "as wide as the span or wider",
        "Give the width of one support, and the span middle to middle.",
      ),
    );
  if (!row.ok || problems.length > 0) return { problems };
  const shear = input["shear_n_per_m"] as number | undefined;
  const given = shear === undefined ? null : qty(shear, "N/m");
  if (row.value) return { ...fromRow(row.value), ...(given === null ? {} : { v_t: given }) };
  return {
    m_t: qty(input["bending_nm_per_m"] as number, "N"),
    k_t: qty(input["stiffness_nm2_per_m"] as number, "N*m"),
    v_t: given,
  };
}

function loads(input: JsonObject, panel: Panel, trace: Trace) {
  const spans = Number(input["spans"]) as Spans;
  const L = millimetres(input["span_mm"] as number);
  const support = millimetres(input["support_mm"] as number);
  const L_s = qty(L - support, "m");
  const l = deflectionSpan({ L_s, a: inches(support <= 2 * M_PER_IN ? 0.25 : 0.625) }, trace);
  const isWet = input["wet"] === true;
  const one = qty(1, "1");
  const CM = (what: keyof typeof wetPanel): Qty<"1"> => (isWet ? wetPanel[what]({}, trace) : one);
  const CD = durationFactors[input["load_duration"] as LoadDuration]({}, trace);
  const m_r = panelMomentInUse({ m_t: panel.m_t, CD, CM: CM("bending") }, trace);
  const k = panelStiffnessInUse({ k_t: panel.k_t, CM: CM("stiffness") }, trace);
  const bending = panelBendingLoad[spans]({ m_r, L }, trace);
  const d = qty(L / (input["deflection_limit"] as number), "m");
  const deflection = panelDeflectionLoad[spans]({ k, d, l }, trace);
  if (panel.v_t === null) return { bending, deflection, shear: null };
  const v_r = panelShearInUse({ v_t: panel.v_t, CD, CM: CM("shear") }, trace);
  return { bending, deflection, shear: panelShearLoad[spans]({ v_r, L_s }, trace) };
}

function answer(input: JsonObject, found: ReturnType<typeof loads>): JsonObject {
  const named: readonly (readonly [string, number])[] = [
    ["bending", found.bending],
    ["deflection", found.deflection],
    ...(found.shear === null ? [] : [["shear", found.shear] as const]),
  ];
  const [governs, uniform_pa] = named.reduce((a, b) => (b[1] < a[1] ? b : a));
  const asked = input["pressure_pa"] as number | undefined;
  return {
    bending_pa: found.bending,
    shear_pa: found.shear,
    deflection_pa: found.deflection,
    uniform_pa,
    governs,
    use: asked === undefined ? null : asked / uniform_pa,
    not_checked: [
      ...(found.shear === null ? ["shear in the plies: missing shear_n_per_m"] : []),
      "a foot or a wheel on one spot: see check.deck-panel",
    ],
  };
}

/** Uniform load on a plywood deck over one, two or three spans. */
export const plywoodDeck: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "deck.plywood",
    title: "Uniform load that a plywood deck carries",
    inputs: [
      optional(text("panel", "Panel of the table by its span rating, instead of moment and stiffness")),
      ...strengthSizes.map(optional),
      shearSize,
      text("spans", "Equal spans that one panel lies over: 1, 2, or 3 and more", ["1", "2", "3"]),
      number("span_mm", "Supports, middle to middle", 50, 5000),
      number("support_mm", "Width of one support", 5, 500),
      number("deflection_limit", "Deflection limit: span over this", 1, 10_000),
      yes("wet", "Wet service"),
      text("load_duration", "Shortest load of the combination", DURATIONS),
      optional(number("pressure_pa", "Uniform load to hold it against", 0, 1e6)),
    ],
    outputs: [
      number("bending_pa", "Uniform load by bending"),
      {
        key: "shear_pa",
        title: "Uniform load by shear in the plies, null where that capacity is not known",
        type: "any",
      },
      number("deflection_pa", "Uniform load at the largest deflection"),
      number("uniform_pa", "The least of them"),
      text("governs", "Which governs", ["bending", "shear", "deflection"]),
      { key: "use", title: "Asked load over that, null when none is asked", type: "any" },
      { key: "not_checked", title: "What this does not cover", type: "array" },
    ],
    validity:
      "Strong way across the supports, equal spans, edges held or tongued, own weight in the load. Wet factors are from memory.",
    sources: [panelBendingLoad[3].spec.source, panelDeflectionLoad[1].spec.source],
  },
  (input, context, trace) => {
    const panel = readPanel(input, context);
    if ("problems" in panel) return panel;
    return answer(input, loads(input, panel, trace));
  },
);
