import {
  inputProblem,
  type Calculation,
  type JsonObject,
  type Problem,
  type Source,
} from "../formula/index.ts";
import type { Foot, SupportKind } from "../kit/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { pascals, qty } from "../units/index.ts";
import { checkBearing } from "./bearing-check.ts";
import type { GroundStrength } from "./ground-strength.ts";
import { ladderOf } from "./ladder.ts";
import { checkLifting, type LiftState } from "./lifting.ts";
import { demandFields, demandFrom, number, optional, text } from "./method-fields.ts";
import { checkMethod } from "./method-results.ts";
import { recommendedWeightLimit } from "./niosh.ts";
import { checkUplift, stakeShare } from "./uplift.ts";
import { flotationSafety } from "../flood/index.ts";
import { netBearingCapacity } from "../ground/index.ts";
import { casesOf } from "./walk-demand.ts";

const asked: Source = { id: "asked", title: "Value as given", status: "project" };
const metre = (input: JsonObject, key: string): number => (input[key] as number) / 1000;

const strengthFrom = (input: JsonObject): GroundStrength | null =>
  input["su_kpa"] === undefined
    ? null
    : { su: pascals((input["su_kpa"] as number) * 1000), source: asked, how: "as given" };

/** Reads `feet`: a list of { along_mm, across_mm, offset_across_mm }. */
function feetFrom(input: JsonObject): readonly Foot[] | { readonly problems: readonly Problem[] } {
  const feet = input["feet"] as readonly unknown[];
  const keys = ["along_mm", "across_mm", "offset_across_mm"] as const;
  const isFoot = (f: unknown): f is Foot =>
    typeof f === "object" &&
    f !== null &&
    keys.every((k) => Number.isFinite((f as Record<string, unknown>)[k])) &&
    (f as Foot).along_mm > 0 &&
    (f as Foot).across_mm > 0;
  if (feet.length > 0 && feet.every(isFoot)) return feet;
  return {
    problems: [
      inputProblem(
        "feet",
        input["feet"],
        "must be one or more feet with sides over 0",
        `Give each as { ${keys.join(", ")} }.`,
      ),
    ],
  };
}

const supportOf = (feet: readonly Foot[]): SupportKind => ({
  id: "asked",
  name: "support",
  form: "sleeper",
  height_min_mm: 0,
  height_max_mm: 0,
  height_step_mm: 1,
  sill: { size: "2x4", length_mm: 1000, lay: "flat" },
  pieces: [],
  feet,
  rating_n: null,
  anchor: null,
  screws: [],
  stands: { ground_above_m: null, not_in: [] },
});

const bearingCalculation = checkMethod(
  {
    id: "check.bearing",
    title: "Check of the ground under a support",
    inputs: [
      number("left_mm", "Span on one side, 0 for none", 0, 100_000),
      number("right_mm", "Span on the other side, 0 for none", 0, 100_000),
      number("dead_kg", "Soaked mass on the joint with the support", 0, 10_000),
      { key: "feet", title: "Feet: { along_mm, across_mm, offset_across_mm }", type: "array" },
      number("clear_width_mm", "Clear width of the deck", 50, 20_000),
      optional(number("su_kpa", "Undrained strength of the ground", 0.1, 500)),
      number("safety", "Ratio of capacity to pressure asked for", 1, 10),
      ...demandFields,
    ],
    validity: "Soft ground, undrained, one even layer, feet on the surface, straight walkway.",
    sources: [netBearingCapacity.spec.source],
  },
  (input, context) => {
    const feet = feetFrom(input);
    if ("problems" in feet) return feet;
    const demands = [demandFrom(input)];
    const joint = {
      left_m: metre(input, "left_mm"),
      right_m: metre(input, "right_mm"),
      dead_kg: input["dead_kg"] as number,
      support: supportOf(feet),
      clear_width_m: metre(input, "clear_width_mm"),
    };
    const demand = {
      cases: casesOf(demands, context.units),
      rungs: ladderOf(demands, context.units),
      safety: input["safety"] as number,
    };
    return [
      checkBearing(joint, strengthFrom(input), demand, { id: "asked", name: "support", parts: [] }, context),
    ];
  },
);

const massFields = [
  number("specific_gravity", "Specific gravity of the timber", 0.2, 0.9),
  number("timber_m3", "Volume of the timber", 0, 100),
  number("other_kg", "Mass of what is not timber", 0, 10_000),
] as const;
const massFrom = (input: JsonObject) => ({
  timber_m3: input["timber_m3"] as number,
  other_kg: input["other_kg"] as number,
});
const gravityFrom = (input: JsonObject) => qty(input["specific_gravity"] as number, "1");

const upliftCalculation = checkMethod(
  {
    id: "check.uplift",
    title: "Check that a part stays put under water",
    inputs: [
      ...massFields,
      number("water_kg_m3", "Density of the water", 900, 1100),
      number("depth_mm", "Flood level over the underside of the part", -100_000, 100_000),
      {
        key: "stakes_per_support",
        title: "Stakes at each of its two supports",
        type: "integer",
        min: 0,
        max: 20,
      },
      text("stake", "Size of the stakes"),
      number("embedment_mm", "Length of a stake in the ground", 0, 10_000),
      optional(number("su_kpa", "Undrained strength of the ground", 0.1, 500)),
    ],
    validity:
      "Still water; timber and supports given together; half of each support's stakes count. A level at or under the underside does not apply.",
    sources: [flotationSafety.spec.source],
  },
  (input, context) => {
    const hold = {
      stakes: (input["stakes_per_support"] as number) * stakeShare({}),
      size: input["stake"] as string,
      embedment_m: metre(input, "embedment_mm"),
      strength: strengthFrom(input),
    };
    const part = {
      gravity: gravityFrom(input),
      mass: massFrom(input),
      holds: [hold, hold],
      water_kg_m3: input["water_kg_m3"] as number,
      depth_m: metre(input, "depth_mm"),
    };
    return [checkUplift(part, { id: "asked", name: "part", parts: [], level: "the flood level" }, context)];
  },
);

const liftingCalculation = checkMethod(
  {
    id: "check.lifting",
    title: "Check of a part's mass against what its carriers may lift",
    inputs: [
      ...massFields,
      text("state", "State of the timber", ["new", "soaked"]),
      { key: "carriers", title: "People who lift it", type: "integer", min: 1, max: 20 },
    ],
    validity: recommendedWeightLimit.spec.validity,
    sources: [recommendedWeightLimit.spec.source],
  },
  (input, context) => [
    checkLifting(
      massFrom(input),
      gravityFrom(input),
      input["state"] as LiftState,
      { id: "asked", name: "part", parts: [] },
      input["carriers"] as number,
      context,
    ),
  ],
);

export const groundCheckCalculations: readonly Calculation<CalcContext>[] = [
  bearingCalculation,
  upliftCalculation,
  liftingCalculation,
];
