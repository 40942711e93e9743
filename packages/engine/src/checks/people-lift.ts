import {
  defineMethod,
  inputProblem,
  type Calculation,
  type Field,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { millimetres, newtons, qty, type Qty } from "../units/index.ts";
import { massOf, type LiftState } from "./lifting.ts";
import { number, optional, text } from "./method-fields.ts";
import {
  distanceMultiplier,
  horizontalMultiplier,
  loadConstant,
  recommendedWeightLimit,
  verticalMultiplier,
} from "./niosh.ts";
import { carrierShare, grips, liftingIndex } from "./people-lift-formulas.ts";
import { togetherOrNone } from "./row-input.ts";

const timberFields: readonly Field[] = [
  number("timber_m3", "Volume of the timber", 0, 10),
  number("specific_gravity", "Specific gravity of the timber", 0.2, 0.9),
].map(optional);

const inputs: readonly Field[] = [
  optional(number("mass_kg", "Mass of the module, when it was weighed", 0.1, 5000)),
  ...timberFields,
  optional(number("other_kg", "Mass of what is not timber", 0, 5000)),
  optional(number("soak_kg", "Water that its panels take up", 0, 5000)),
  optional(text("state", "Timber new and dry, or soaked", ["new", "soaked"])),
  { key: "carriers", title: "People who lift it", type: "integer", min: 1, max: 12 },
  number("reach_mm", "Hands before the ankles (under 10 in counts as 10 in)", 0, 635),
  number("hands_mm", "Height of the hands at the start", 0, 1778),
  number("set_down_mm", "Height of the hands where it is set down or carried: the top of a stack", 0, 1778),
  text("grip", "Handles, edges to grip, or neither", ["good", "fair", "poor"]),
  optional(number("suction_n", "Pull by which mud holds the module, in all", 0, 50_000)),
];

function readMass(input: JsonObject, trace: Trace): Qty<"kg"> | { readonly problems: readonly Problem[] } {
  const weighed = input["mass_kg"] as number | undefined;
  const parts = ["timber_m3", "specific_gravity", "state"];
  const rest = [...parts, "other_kg", "soak_kg"];
  if (weighed !== undefined) {
    const beside = rest.filter((key) => input[key] !== undefined);
    if (beside.length === 0) return qty(weighed, "kg");
    return {
      problems: beside.map((key) =>
        inputProblem(key, input[key], "stands beside a weighed mass", `Remove "${key}" or "mass_kg".`),
      ),
    };
  }
  const none = parts.every((key) => input[key] === undefined);
  const missing = none
    ? [
        inputProblem(
          "mass_kg",
          undefined,
          "is missing",
          'Give "mass_kg", or "timber_m3", "specific_gravity" and "state".',
        ),
      ]
    : togetherOrNone(input, parts);
  if (missing.length > 0) return { problems: missing };
  const kg = (key: string): number => (input[key] as number | undefined) ?? 0;
  const mass = { timber_m3: kg("timber_m3"), other_kg: kg("other_kg"), soak_kg: kg("soak_kg") };
  return massOf(mass, qty(input["specific_gravity"] as number, "1"), input["state"] as LiftState, trace);
}

/** Limit of one carrier with the hands at one end of the lift. */
function limitAt(input: JsonObject, height_mm: number, trace: Trace): Qty<"kg"> {
  const mm = (key: string): number => input[key] as number;
  return recommendedWeightLimit(
    {
      LC: loadConstant({}, trace),
      HM: horizontalMultiplier({ H: millimetres(mm("reach_mm")) }, trace),
      VM: verticalMultiplier({ V: millimetres(height_mm) }, trace),
      DM: distanceMultiplier({ D: millimetres(Math.abs(mm("set_down_mm") - mm("hands_mm"))) }, trace),
      CM: grips[input["grip"] as keyof typeof grips]({}, trace),
    },
    trace,
  );
}

/** Mass per carrier of one module against the recommended limit, at the start of the lift and where it ends. */
export const peopleLift: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "people.lift",
    title: "Lifting one module: mass per carrier against the recommended limit",
    inputs,
    outputs: [
      text("status", "pass or fail"),
      number("mass_kg", "Mass of the module"),
      number("per_carrier_kg", "What one carrier lifts, the pull of mud in it"),
      number("limit_kg", "Recommended limit of one carrier"),
      text("governs", "Where the limit is least", ["start of the lift", "where it is set down"]),
      number("index", "Mass over limit: over 1 some carriers are at risk, over 3 most"),
      number("carriers_needed", "Carriers for whom it passes"),
    ],
    validity:
      "Two-handed lift on firm, even ground without twist, rarely done, even shares. Not for mud underfoot or for carrying; a team lifts less well than its members alone.",
    sources: [recommendedWeightLimit.spec.source, carrierShare.spec.source],
  },
  (input, _context, trace) => {
    const m = readMass(input, trace);
    if (typeof m !== "number") return m;
    const P_s = newtons((input["suction_n"] as number | undefined) ?? 0);
    const m_1 = carrierShare({ m, P_s, n: qty(input["carriers"] as number, "1") }, trace);
    const start = limitAt(input, input["hands_mm"] as number, trace);
    const end = limitAt(input, input["set_down_mm"] as number, trace);
    const RWL = qty(Math.min(start, end), "kg");
    const index = liftingIndex({ m_1, RWL }, trace);
    const alone = carrierShare({ m, P_s, n: qty(1, "1") });
    return {
      status: index <= 1 ? "pass" : "fail",
      mass_kg: m,
      per_carrier_kg: m_1,
      limit_kg: RWL,
      governs: start <= end ? "start of the lift" : "where it is set down",
      index,
      carriers_needed: Math.max(1, Math.ceil(alone / RWL - 1e-9)),
    };
  },
);
