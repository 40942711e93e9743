import { defineMethod, type Calculation, type Trace } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { rectangleArea, rectangleInertia, rectangleSectionModulus } from "../structure/index.ts";
import { inches, millimetres, pascals, qty, type Qty } from "../units/index.ts";
import { combinedPressure, isPlain, recordFactors } from "./combined.ts";
import type { Combination, DesignCode, Member, Situation } from "./contract.ts";
import { ec5 } from "./ec5-2004/index.ts";
import { bendingSpan, deflectionSpan, joistLoad, shearSpan } from "./joist-formulas.ts";
import { memberFields, readMember } from "./timber-input.ts";
import { nds } from "./us-asd-2018/index.ts";

type Governs = "bending" | "shear" | "deflection";
type Span = readonly [Governs, number];

interface Joist {
  readonly code: DesignCode;
  readonly member: Member;
  readonly situation: Omit<Situation, "duration">;
  readonly live: number;
  readonly dead: number;
  readonly spacing: Qty<"m">;
}

const sectionOf = ({ size }: Member) => ({ b: inches(size.thickness_in), d: inches(size.width_in) });

/** Loads of a combination as one pressure; factors of 1 stay out of the working. */
function pressure({ live, dead }: Joist, combination: Combination, trace: Trace): Qty<"Pa"> {
  const args = {
    gG: qty(combination.dead, "1"),
    g: pascals(dead),
    gQ: qty(combination.live, "1"),
    q: pascals(live),
  };
  if (isPlain(combination)) return combinedPressure(args);
  recordFactors(combination, trace);
  return combinedPressure(args, trace);
}

/** Spans by strength under one combination, with the strengths of its own duration. */
function strengthSpans(joist: Joist, combination: Combination, trace: Trace): Span[] {
  const { code, member, situation } = joist;
  const p = pressure(joist, combination, trace);
  if (p <= 0) return [];
  const { fb, fv } = code.strength(member, { ...situation, duration: combination.duration }, trace, [
    "fb",
    "fv",
  ]);
  const w = joistLoad({ p, s: joist.spacing }, trace, combination.title.toLowerCase());
  const section = sectionOf(member);
  const S = rectangleSectionModulus(section, trace);
  const A = rectangleArea(section, trace);
  return [
    ["bending", bendingSpan({ Fb: fb, S, w }, trace)],
    ["shear", shearSpan({ Fv: fv, A, w }, trace)],
  ];
}

/** Span at which the live load alone bends the joist to its limit. */
function liveSpan(joist: Joist, n: Qty<"1">, trace: Trace): Span {
  const { code, member, situation } = joist;
  const { e } = code.strength(member, { ...situation, duration: "ten-years" }, trace, ["e"]);
  const w = joistLoad({ p: pascals(joist.live), s: joist.spacing }, trace, "live");
  const I = rectangleInertia(sectionOf(member), trace);
  return ["deflection", deflectionSpan({ E: e, I, w, n }, trace)];
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
      "Simple span, uniform load of people, joist on edge, pressed edge held by the deck, shear at the support, bending part of the deflection at once. Loads as given, without factors: those of the code's combinations are put on them here. No vibration, notch, creep or bearing check.",
    sources: [
      nds("3.2 to 3.5 and 4.3", "memory"),
      ec5("6.1.6, 6.1.7 and 7.2", "memory"),
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
    const number = (key: string): number => input[key] as number;
    const joist: Joist = {
      ...found.value,
      situation: {
        use: "edge",
        wet: input["wet"] as boolean,
        incised: input["incised"] as boolean,
        repetitive: input["repetitive"] as boolean,
      },
      live: number("live_pa"),
      dead: number("dead_pa"),
      spacing: millimetres(number("spacing_mm")),
    };
    const spans = [
      ...found.value.code.combinations
        .filter((c) => c.state === "strength")
        .flatMap((c) => strengthSpans(joist, c, trace)),
      liveSpan(joist, qty(number("live_limit"), "1"), trace),
    ];
    const [governs, span] = spans.reduce((a, b) => (b[1] < a[1] ? b : a));
    return { span_mm: span * 1000, governs };
  },
);
