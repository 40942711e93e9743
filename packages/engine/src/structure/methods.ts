import {
  defineMethod,
  inputProblem,
  recordValue,
  type Calculation,
  type Json,
  type JsonObject,
  type Problem,
} from "../formula/index.ts";
import { leverShares } from "./lever-rule.ts";
import { largestDeflection } from "./moving-deflection.ts";
import { largestJointReaction, largestMoment, largestReaction, type Train } from "./moving-train.ts";
import { movingLoads } from "./sources.ts";

const MM = 1000;
const numbers = (v: Json | undefined): readonly number[] | null =>
  Array.isArray(v) && v.length > 0 && v.every((x) => typeof x === "number" && Number.isFinite(x))
    ? (v as readonly number[])
    : null;

const listProblem = (key: string, value: Json | undefined): Problem =>
  inputProblem(key, value, "must be a list of one or more numbers", `Give "${key}" as [number, ...].`);

/** Reads `loads_n` and `at_mm` into a train, or says what is wrong with them. */
function readTrain(input: JsonObject): Train | readonly Problem[] {
  const weights = numbers(input["loads_n"]);
  const at = numbers(input["at_mm"]);
  const problems = [
    ...(weights ? [] : [listProblem("loads_n", input["loads_n"])]),
    ...(at ? [] : [listProblem("at_mm", input["at_mm"])]),
  ];
  if (!weights || !at) return problems;
  if (weights.length !== at.length)
    return [inputProblem("at_mm", input["at_mm"], "has not one place per load", "Give as many as loads_n.")];
  if (weights.some((w) => w < 0))
    return [
      inputProblem("loads_n", input["loads_n"], "holds a negative load", "Loads act down: give them >= 0."),
    ];
  return weights.map((weight, i) => ({ weight, at: at[i]! / MM }));
}
const isTrain = (v: Train | readonly Problem[]): v is Train => v.length === 0 || "weight" in v[0]!;

const trainInputs = [
  { key: "loads_n", title: "Loads of the train [N]", type: "array" },
  { key: "at_mm", title: "Place of each load along the train [mm]", type: "array" },
] as const;

const movingTrain = defineMethod<unknown>(
  {
    id: "beam.moving-loads",
    title: "Largest moment, end reaction and deflection of a train of loads on a simple span",
    inputs: [
      { key: "span_mm", title: "Span", type: "number", min: 1, max: 1e6 },
      ...trainInputs,
      {
        key: "ei_n_m2",
        title: "Stiffness EI; without it no deflection is given",
        type: "number",
        min: 1e-6,
        optional: true,
      },
    ],
    outputs: [
      { key: "moment_n_m", title: "Largest moment", type: "number" },
      { key: "moment_at_mm", title: "Section of the largest moment, from one support", type: "number" },
      { key: "reaction_n", title: "Largest end reaction and end shear", type: "number" },
      { key: "deflection_mm", title: "Largest deflection", type: "number" },
    ],
    validity:
      "Point loads at fixed distances, one simple span, the train free to stand anywhere. Moment and reaction are exact; the deflection is a sweep of span/64, refined, within 0.1 %.",
    sources: [movingLoads("load and resultant equally far from midspan")],
  },
  (input, _context, trace) => {
    const train = readTrain(input);
    if (!isTrain(train)) return { problems: train };
    const span = (input["span_mm"] as number) / MM;
    const moment = largestMoment(train, span);
    const reaction = largestReaction(train, span);
    recordTrain(trace, "M", "Largest moment of the train", moment.value, "N*m");
    recordTrain(trace, "R", "Largest end reaction of the train", reaction.value, "N");
    const ei = input["ei_n_m2"] as number | undefined;
    return {
      moment_n_m: moment.value,
      moment_at_mm: moment.section * MM,
      reaction_n: reaction.value,
      ...(ei === undefined ? {} : { deflection_mm: (largestDeflection(train, span).value / ei) * MM }),
    };
  },
);

/** Puts a value found by the moving-train method into the working. */
export function recordTrain(
  trace: Parameters<typeof recordValue>[0],
  symbol: string,
  title: string,
  value: number,
  unit: "N*m" | "N" | "m",
  note?: string,
): void {
  recordValue(trace, {
    id: "beam.moving-loads",
    title,
    symbol,
    value,
    unit,
    source: movingLoads("load and resultant equally far from midspan"),
    how: "largest over all places of the train",
    ...(note === undefined ? {} : { note }),
  });
}

const jointReaction = defineMethod<unknown>(
  {
    id: "structure.joint-reaction",
    title: "Largest reaction of a support between two simple spans under a train of loads",
    inputs: [
      { key: "left_mm", title: "Span on one side, 0 for none", type: "number", min: 0, max: 1e6 },
      { key: "right_mm", title: "Span on the other side, 0 for none", type: "number", min: 0, max: 1e6 },
      ...trainInputs,
    ],
    outputs: [{ key: "reaction_n", title: "Largest reaction", type: "number" }],
    validity: "Both spans simple, point loads at fixed distances. Exact: one load stands over the support.",
    sources: [movingLoads("influence line of a support between two simple beams", "computed")],
  },
  (input, _context, trace) => {
    const train = readTrain(input);
    if (!isTrain(train)) return { problems: train };
    const [left, right] = [input["left_mm"] as number, input["right_mm"] as number];
    const { value } = largestJointReaction(train, left / MM, right / MM);
    recordTrain(trace, "R", "Largest reaction of the support", value, "N");
    return { reaction_n: value };
  },
);

const stringerShares = defineMethod<unknown>(
  {
    id: "structure.stringer-shares",
    title: "Share of a load on each stringer by the lever rule",
    inputs: [
      { key: "stringers_mm", title: "Stringer centres across the walkway, rising", type: "array" },
      { key: "load_mm", title: "Place of the load across the walkway", type: "number" },
    ],
    outputs: [{ key: "shares", title: "Share per stringer, sum 1", type: "array" }],
    validity: "Cross pieces span freely from stringer to stringer; a load outside levers on the outer pair.",
    sources: [{ id: "lever-rule", title: "Lever rule: statics of a simple cross piece", status: "computed" }],
  },
  (input) => {
    const at = numbers(input["stringers_mm"]);
    if (!at || at.length < 2 || at.some((p, i) => i > 0 && p <= at[i - 1]!))
      return {
        problems: [
          inputProblem(
            "stringers_mm",
            input["stringers_mm"],
            "must be two or more rising places",
            "Give them in order.",
          ),
        ],
      };
    return { shares: leverShares(at, input["load_mm"] as number) };
  },
);

export const structureMethods: readonly Calculation[] = [movingTrain, jointReaction, stringerShares];
