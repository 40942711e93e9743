import { defineMethod, type Calculation, type JsonObject, type Trace } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { rectangleArea, rectangleInertia, rectangleSectionModulus } from "../structure/index.ts";
import { inches, millimetres, pascals, qty } from "../units/index.ts";
import type { Member, Strengths } from "./contract.ts";
import { bendingSpan, deflectionSpan, joistLoad, shearSpan } from "./joist-formulas.ts";
import { memberFields, readMember } from "./timber-input.ts";
import { nds } from "./us-asd-2018/index.ts";

type Governs = "bending" | "shear" | "deflection";

/** The least of the three spans and its name. */
function leastSpan(member: Member, strengths: Strengths, input: JsonObject, trace: Trace) {
  const number = (key: string): number => input[key] as number;
  const section = { b: inches(member.size.thickness_in), d: inches(member.size.width_in) };
  const spacing = millimetres(number("spacing_mm"));
  const total = joistLoad(
    { p: pascals(number("live_pa") + number("dead_pa")), s: spacing },
    trace,
    "dead and live",
  );
  const live = joistLoad({ p: pascals(number("live_pa")), s: spacing }, trace, "live");
  const S = rectangleSectionModulus(section, trace);
  const A = rectangleArea(section, trace);
  const I = rectangleInertia(section, trace);
  const n = qty(number("live_limit"), "1");
  const spans: readonly (readonly [Governs, number])[] = [
    ["bending", bendingSpan({ Fb: strengths.fb, S, w: total }, trace)],
    ["shear", shearSpan({ Fv: strengths.fv, A, w: total }, trace)],
    ["deflection", deflectionSpan({ E: strengths.e, I, w: live, n }, trace)],
  ];
  return spans.reduce((a, b) => (b[1] < a[1] ? b : a));
}

/** Longest simple span of a floor or deck joist under uniform load: the figure of a span table. */
export const joistSpan: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "timber.joist-span",
    title: "Longest simple span of a joist under uniform load",
    inputs: [
      ...memberFields,
      { key: "spacing_mm", title: "Spacing of the joists", type: "number", min: 1, max: 10_000 },
      { key: "live_pa", title: "Live load", type: "number", min: 1, max: 1e6 },
      { key: "dead_pa", title: "Dead load", type: "number", min: 0, max: 1e6 },
      { key: "wet", title: "Wet service", type: "boolean" },
      { key: "incised", title: "Incised for the preservative", type: "boolean" },
      {
        key: "repetitive",
        title: "Three or more alike at most 24 in apart under sharing boards",
        type: "boolean",
      },
      {
        key: "live_limit",
        title: "Live deflection limit: span over this",
        type: "number",
        min: 1,
        max: 10_000,
      },
    ],
    outputs: [
      { key: "span_mm", title: "Longest span", type: "number" },
      { key: "governs", title: "What governs", type: "string", choices: ["bending", "shear", "deflection"] },
    ],
    validity:
      "Simple span, uniform load for ten years, joist on edge, pressed edge held by the deck, shear at the support, bending part of the deflection. No vibration, notch or bearing check.",
    sources: [
      nds("3.2 to 3.5 and 4.3", "memory"),
      {
        id: "awc-dca-6",
        title: "AWC DCA 6, Prescriptive Residential Wood Deck Construction Guide (2015 IRC edition)",
        at: "Table 2, whose spans this reproduces",
        status: "seen",
      },
    ],
  },
  (input, { tables }, trace) => {
    const found = readMember(input, tables);
    if (!found.ok) return { problems: found.problems };
    const { code, member } = found.value;
    const strengths = code.strength(
      member,
      {
        use: "edge",
        wet: input["wet"] as boolean,
        incised: input["incised"] as boolean,
        repetitive: input["repetitive"] as boolean,
        duration: "ten-years",
      },
      trace,
    );
    const [governs, span] = leastSpan(member, strengths, input, trace);
    return { span_mm: span * 1000, governs };
  },
);
