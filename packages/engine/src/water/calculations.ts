import {
  defineMethod,
  formulaCalculation,
  inputProblem,
  type Calculation,
  type Json,
  type JsonObject,
  type Problem,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { halfCosine } from "./half-cosine.ts";
import { meanLevels } from "./mean-levels.ts";
import { makeSeries, type Series } from "./series.ts";
import { tideRelations } from "./tide-relations.ts";
import { turningPoints } from "./turning-points.ts";
import { wetTime } from "./wet-time.ts";

const seriesFields = [
  { key: "t_s", title: "Times, seconds, ascending", type: "array" },
  { key: "z_m", title: "Levels", type: "array" },
  {
    key: "kind",
    title: "Readings, or turning points alone",
    type: "string",
    choices: ["readings", "high-low"],
  },
] as const;

type Outcome = JsonObject | { readonly problems: readonly Problem[] };

/** Runs a calculation on the series of an input, or says what is wrong with it. */
function withSeries(input: JsonObject, run: (series: Series) => JsonObject): Outcome {
  const [t, z] = ["t_s", "z_m"].map((key) => input[key] as readonly Json[]);
  const isNumbers = (list: readonly Json[]): boolean => list.every((v) => typeof v === "number");
  if (!isNumbers(t!) || !isNumbers(z!) || t!.length !== z!.length)
    return refused(t!.length, "Times and levels are two lists of numbers of one length.");
  if (t!.some((v, i) => i > 0 && (v as number) <= (t![i - 1] as number)))
    return refused(t!.length, "Times ascend from one to the next.");
  return run(
    makeSeries({
      kind: input["kind"] as Series["kind"],
      basis: "recorded",
      t_s: Float64Array.from(t as readonly number[]),
      z_m: Float64Array.from(z as readonly number[]),
    }),
  );
}

const refused = (count: number, message: string): Outcome => ({
  problems: [inputProblem("t_s, z_m", count, message, "Give t_s and z_m so.")],
});

const project = {
  id: "causey-water",
  title: "Causey's reading of water records, docs/methods/water.md",
  status: "project",
} as const;

const wetMethod = defineMethod<CalcContext>(
  {
    id: "water.wet-time",
    title: "How long a height lies under water in a record",
    inputs: [
      ...seriesFields,
      { key: "height_m", title: "Height, on the datum of the levels", type: "number" },
    ],
    outputs: [
      { key: "wet_s", title: "Time under water", type: "number" },
      { key: "covered_s", title: "Time covered by the record", type: "number" },
      { key: "gap_s", title: "Time that gaps leave out", type: "number" },
      {
        key: "hours_per_year",
        title: "The share as hours of a mean year, null for a record of less than a year",
        type: "any",
      },
      { key: "wet_share", title: "Share under water, null when nothing is covered", type: "any" },
      { key: "longest_dry_s", title: "Longest time dry", type: "number" },
      { key: "longest_wet_s", title: "Longest time under water", type: "number" },
      { key: "floods", title: "Times the water came over it", type: "number" },
    ],
    validity: "Straight between readings, half a cosine between turning points; gaps are never bridged.",
    sources: [project],
  },
  (input) => withSeries(input, (series) => ({ ...wetTime(series, input["height_m"] as number) })),
);

const meansMethod = defineMethod<CalcContext>(
  {
    id: "water.mean-levels",
    title: "Mean high and low waters of a record",
    inputs: [...seriesFields],
    outputs: [
      { key: "mhw_m", title: "Mean high water", type: "any" },
      { key: "mlw_m", title: "Mean low water", type: "any" },
      { key: "mhhw_m", title: "Mean higher high water", type: "any" },
      { key: "mllw_m", title: "Mean lower low water", type: "any" },
      { key: "msl_m", title: "Mean of the readings", type: "any" },
      { key: "mn_m", title: "Mean range", type: "any" },
      { key: "gt_m", title: "Great diurnal range", type: "any" },
      { key: "dhq_m", title: "Diurnal high water inequality", type: "any" },
      { key: "dlq_m", title: "Diurnal low water inequality", type: "any" },
      { key: "basis", title: "Predicted or recorded, as the series is", type: "string" },
      { key: "highs", title: "High waters found", type: "number" },
      { key: "lows", title: "Low waters found", type: "number" },
      { key: "highest_m", title: "Highest level", type: "any" },
      { key: "lowest_m", title: "Lowest level", type: "any" },
      { key: "days", title: "Days covered", type: "number" },
      { key: "cautions", title: "What makes the means doubtful", type: "array" },
    ],
    validity: "Means of the record's own months: not a 19-year datum.",
    sources: [project],
  },
  (input) => withSeries(input, (series) => ({ ...meanLevels(series) })),
);

const picksMethod = defineMethod<CalcContext>(
  {
    id: "water.high-low",
    title: "High and low waters of a record",
    inputs: [...seriesFields],
    outputs: [{ key: "points", title: "High and low waters: t_s, z_m, high", type: "array" }],
    validity:
      "Neighbours differ by 0.03 m and lie two hours apart (practice of the US tide service, from memory); fine readings are smoothed over an hour; none is read across a gap.",
    sources: [project],
  },
  (input) => withSeries(input, (series) => ({ points: turningPoints(series).map((p) => ({ ...p })) })),
);

/** Registered calculations of water. */
export const waterCalculations: readonly Calculation<CalcContext>[] = [
  ...[...tideRelations, halfCosine].map((formula) => formulaCalculation(formula)),
  picksMethod,
  wetMethod,
  meansMethod,
];
