import {
  defineConstant,
  defineMethod,
  inputProblem,
  type Calculation,
  type Field,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { PA_PER_PSI, millimetres, pascals, qty, type Qty } from "../units/index.ts";
import { number, optional, text } from "./method-fields.ts";
import {
  panelDeflectionAllowed,
  panelDepthLimit,
  panelLineDeflection,
  panelSpanLimit,
  panelUniformDeflection,
} from "./panel-formulas.ts";
import {
  barInertia,
  barModulus,
  grating,
  panelLineLoad,
  panelMoment,
  panelStiffness,
  panelUniformLoad,
} from "./panel-strength.ts";
import { namedRow, rowOrSizes } from "./row-input.ts";
import { steelStiffness } from "./rules.ts";

export const gratingStress = defineConstant(
  "panel.grating-stress",
  "Bending stress that bar grating may take",
  "F",
  18_000 * PA_PER_PSI,
  "Pa",
  grating("18 000 psi"),
  `18000 * ${PA_PER_PSI}`,
);

const sizes: readonly Field[] = [
  number("bar_thickness_mm", "Thickness of a bearing bar", 0.5, 50),
  number("bar_depth_mm", "Depth of a bearing bar", 2, 300),
  number("bar_pitch_mm", "Bearing bars, middle to middle", 2, 500),
];

interface Bars {
  readonly bar_thickness_mm: number;
  readonly bar_depth_mm: number;
  readonly bar_pitch_mm: number;
}

function readBars(
  input: JsonObject,
  { tables }: CalcContext,
): Bars | { readonly problems: readonly Problem[] } {
  const row = namedRow(input, { key: "grating", rows: tables.bar_gratings });
  const problems = [...(row.ok ? [] : row.problems), ...rowOrSizes(input, "grating", sizes)];
  if (!row.ok || problems.length > 0) return { problems };
  const given = (key: string): number => input[key] as number;
  const bars = row.value ?? {
    bar_thickness_mm: given("bar_thickness_mm"),
    bar_depth_mm: given("bar_depth_mm"),
    bar_pitch_mm: given("bar_pitch_mm"),
  };
  if (bars.bar_thickness_mm < bars.bar_pitch_mm) return bars;
  const mend = "Give the pitch from middle to middle of the bars.";
  return {
    problems: [
      inputProblem("bar_thickness_mm", bars.bar_thickness_mm, "as thick as the pitch or thicker", mend),
    ],
  };
}

function allowed(input: JsonObject, bars: Bars, trace: Trace) {
  const at = {
    b: millimetres(bars.bar_thickness_mm),
    d: millimetres(bars.bar_depth_mm),
    p: millimetres(bars.bar_pitch_mm),
  };
  const asked = (key: string): number | undefined => input[key] as number | undefined;
  const stress = asked("allowable_mpa");
  const stiffness = asked("e_gpa");
  const F = stress === undefined ? gratingStress({}, trace) : pascals(stress * 1e6);
  const E = stiffness === undefined ? steelStiffness({}, trace) : pascals(stiffness * 1e9);
  const S_1 = barModulus(at, trace);
  const I_1 = barInertia(at, trace);
  const m_r = panelMoment({ F, S_1 }, trace);
  const k = panelStiffness({ E, I_1 }, trace);
  const L = millimetres(input["span_mm"] as number);
  return { S_1, I_1, L, k, u: panelUniformLoad({ m_r, L }, trace), c: panelLineLoad({ m_r, L }, trace) };
}

/** Share used by the loads asked for, and the deflection under them against its limit. */
function demanded(input: JsonObject, { L, k, u, c }: ReturnType<typeof allowed>, trace: Trace): JsonObject {
  const pressure = (input["pressure_pa"] as number | undefined) ?? 0;
  const line = (input["load_n_per_m"] as number | undefined) ?? 0;
  const limit = panelDeflectionAllowed(
    { L, n: panelSpanLimit({}, trace), d_m: panelDepthLimit({}, trace) },
    trace,
  );
  if (pressure === 0 && line === 0)
    return { use: null, deflection_mm: null, deflection_limit_mm: limit * 1000, status: "no load asked" };
  const sag: Qty<"m"> = qty(
    panelUniformDeflection({ u: pascals(pressure), L, k }, trace) +
      panelLineDeflection({ c: qty(line, "N/m"), L, k }, trace),
    "m",
  );
  const use = pressure / u + line / c;
  const status = use > 1 ? "fails in bending" : sag > limit ? "bends too far" : "pass";
  return { use, deflection_mm: sag * 1000, deflection_limit_mm: limit * 1000, status };
}

/** What steel bar grating carries on one simple span, as its load tables work it out. */
export const barGrating: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "deck.bar-grating",
    title: "Loads that bar grating carries on one span",
    inputs: [
      optional(text("grating", "Grating of the table, instead of its bars")),
      ...sizes.map(optional),
      number("span_mm", "Clear span of the bearing bars", 50, 10_000),
      ...[
        number("allowable_mpa", "Bending stress that the bars may take (18 000 psi unless given)", 1, 500),
        number("e_gpa", "Stiffness (steel, 29 000 000 psi, unless given)", 1, 400),
        number("pressure_pa", "Uniform load to hold it against", 0, 1e6),
        number("load_n_per_m", "Line load across midspan to hold it against, for one metre of width", 0, 1e7),
      ].map(optional),
    ],
    outputs: [
      number("section_modulus_mm3_per_m", "Section modulus of one metre of width"),
      number("inertia_mm4_per_m", "Second moment of area of one metre of width"),
      number("uniform_pa", "Uniform load it may carry in bending"),
      number("uniform_deflection_mm", "Deflection under that"),
      number("line_n_per_m", "Line load at midspan it may carry, for one metre of width"),
      number("line_deflection_mm", "Deflection under that"),
      {
        key: "use",
        title: "Share of the bending strength that the asked loads use, null when none is asked",
        type: "any",
      },
      {
        key: "deflection_mm",
        title: "Deflection under the asked loads, null when none is asked",
        type: "any",
      },
      number("deflection_limit_mm", "Limit of the deflection: L/200, at most 1/4 in"),
      text("status", "pass, fails in bending, bends too far, or no load asked"),
    ],
    validity:
      "Bearing bars alone, one simple span, own weight not taken off, no rust. A wheel's load must first be spread over the bars under it. Clips are not checked.",
    sources: [grating("U = 8 F S / L^2, C = 4 F S / L"), panelSpanLimit.spec.source],
  },
  (input, context, trace) => {
    const bars = readBars(input, context);
    if ("problems" in bars) return bars;
    const found = allowed(input, bars, trace);
    const { S_1, I_1, L, k, u, c } = found;
    return {
      section_modulus_mm3_per_m: S_1 * 1e9,
      inertia_mm4_per_m: I_1 * 1e12,
      uniform_pa: u,
      uniform_deflection_mm: panelUniformDeflection({ u, L, k }, trace) * 1000,
      line_n_per_m: c,
      line_deflection_mm: panelLineDeflection({ c, L, k }, trace) * 1000,
      ...demanded(input, found, trace),
    };
  },
);
