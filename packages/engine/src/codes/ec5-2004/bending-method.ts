import {
  defineFormula,
  defineMethod,
  inputProblem,
  recordValue,
  type Calculation,
  type Field,
  type JsonObject,
  type Problem,
  type Trace,
} from "../../formula/index.ts";
import type { CalcContext } from "../../materials/index.ts";
import { rectangleSectionModulus, uniformMoment } from "../../structure/index.ts";
import { millimetres, qty, type Qty } from "../../units/index.ts";
import { classFields, isProblem, readClass, rectangleFrom } from "./class-input.ts";
import { ec52004 } from "./code.ts";
import { durationClasses, kmod, type DurationClass, type ServiceClass } from "./duration.ts";
import { depthFactor, gammaM, noFactor, sharingFactor } from "./factors.ts";
import { ec5 } from "./sources.ts";
import { tabulated } from "./strength.ts";
import { bendingDesign } from "./strength-formulas.ts";

/** Design load along a member under areas of dead and live load. g, q [Pa], spacing s [m], factors [1]; p [N/m]. */
export const designLineLoad = defineFormula(
  {
    id: "ec5-2004.design-load",
    title: "Design load along the member",
    symbol: "p_d",
    unit: "N/m",
    text: "(gG * g + gQ * q) * s",
    inputs: { gG: "1", g: "Pa", gQ: "1", q: "Pa", s: "m" },
    validity: "Even loads on the width that one member carries.",
    source: ec52004.combinations[0]!.source,
  },
  ({ gG, g, gQ, q, s }) => (gG * g + gQ * q) * s,
);

/** Bending stress. M [N*m], W [m3]; [Pa]. */
export const bendingStress = defineFormula(
  {
    id: "ec5-2004.bending-stress",
    title: "Bending stress",
    symbol: "s_m",
    unit: "Pa",
    text: "M / W",
    inputs: { M: "N*m", W: "m3" },
    validity: "W > 0.",
    source: ec5("6.1.6", "seen"),
  },
  ({ M, W }) => M / W,
);

const LOADS = ["span_mm", "spacing_mm", "dead_pa", "live_pa"] as const;
const optional = (key: string, title: string, min: number, max: number): Field => ({
  key,
  title,
  type: "number",
  min,
  max,
  optional: true,
});

const inputs: readonly Field[] = [
  ...classFields,
  { key: "service_class", title: "Service class: 1, 2 or 3", type: "integer", min: 1, max: 3 },
  { key: "duration", title: "Duration of the shortest load", type: "string", choices: durationClasses },
  { key: "load_sharing", title: "Members alike that share the load (ksys 1.1)", type: "boolean" },
  { key: "depth_factor", title: "Use kh below 150 mm depth", type: "boolean" },
  optional("moment_n_m", "Design moment, load factors inside", 0, 1e9),
  optional("span_mm", "Span, when loads are given instead of the moment", 1, 1e6),
  optional("spacing_mm", "Width that one member carries", 1, 1e5),
  optional("dead_pa", "Dead load, without its factor", 0, 1e6),
  optional("live_pa", "Live load, without its factor", 0, 1e6),
];

function momentOf(input: JsonObject, trace: Trace): Qty<"N*m"> | readonly Problem[] {
  const moment = input["moment_n_m"] as number | undefined;
  const missing = LOADS.filter((key) => input[key] === undefined);
  if (moment !== undefined) {
    if (missing.length < LOADS.length)
      return [
        inputProblem("moment_n_m", moment, "moment and loads are both given", "Give the one or the others."),
      ];
    return qty(moment, "N*m");
  }
  if (missing.length > 0)
    return missing.map((key) =>
      inputProblem(key, undefined, "is missing", `Give "moment_n_m", or all of ${LOADS.join(", ")}.`),
    );
  const number = (key: (typeof LOADS)[number]): number => input[key] as number;
  const { dead, live, source, title } = ec52004.combinations[0]!;
  for (const [symbol, value] of [
    ["gG", dead],
    ["gQ", live],
  ] as const)
    recordValue(trace, {
      id: `ec5-2004.load-factor.${symbol}`,
      title,
      symbol,
      value,
      unit: "1",
      source,
      how: "as tabulated",
    });
  const w = designLineLoad(
    {
      gG: qty(dead, "1"),
      g: qty(number("dead_pa"), "Pa"),
      gQ: qty(live, "1"),
      q: qty(number("live_pa"), "Pa"),
      s: millimetres(number("spacing_mm")),
    },
    trace,
  );
  return uniformMoment({ w, L: millimetres(number("span_mm")) }, trace);
}

/** Bending of one member by Eurocode 5, in any section: strength, stress and how much of it is used. */
export const ec5Bending: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "ec5.bending",
    title: "Bending of solid softwood by Eurocode 5",
    inputs,
    outputs: [
      { key: "fm_d_pa", title: "Design bending strength", type: "number" },
      { key: "moment_n_m", title: "Design moment", type: "number" },
      { key: "stress_pa", title: "Bending stress", type: "number" },
      { key: "utilisation", title: "Stress over strength", type: "number" },
      { key: "kmod", title: "Moisture and duration factor", type: "number" },
      { key: "kh", title: "Depth factor", type: "number" },
    ],
    validity:
      "One simple span, pressed edge held against leaning sideways. Loads along the span are factored 1.35 and 1.5.",
    sources: [ec5("6.1.6", "seen"), ec52004.combinations[0]!.source],
  },
  (input, { tables }, trace) => {
    const row = readClass(input, tables);
    const M = momentOf(input, trace);
    const problems = [...(isProblem(row) ? [row] : []), ...(typeof M === "number" ? [] : M)];
    if (isProblem(row) || typeof M !== "number" || problems.length > 0) return { problems };
    const section = rectangleFrom(input);
    const service = input["service_class"] as ServiceClass;
    const k = {
      kmod: kmod[service][input["duration"] as DurationClass]({}, trace),
      kh: input["depth_factor"] === true ? depthFactor({ h: section.h }, trace) : noFactor({}),
      ksys: input["load_sharing"] === true ? sharingFactor({}, trace) : noFactor({}),
      kinc: noFactor({}),
      kcrit: noFactor({}),
      gM: gammaM({}, trace),
    };
    const fm_d = bendingDesign({ fm_k: tabulated({ grade: row }, "fm_k", trace), ...k }, trace);
    const W = rectangleSectionModulus({ b: section.b, d: section.h }, trace);
    const stress = bendingStress({ M, W }, trace);
    return {
      fm_d_pa: fm_d,
      moment_n_m: M,
      stress_pa: stress,
      utilisation: stress / fm_d,
      kmod: k.kmod,
      kh: k.kh,
    };
  },
);
