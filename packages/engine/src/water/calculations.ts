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
import { backBefore, dryDays } from "./dry-days.ts";
import { deckBelow } from "./deck-under.ts";
import { halfCosine } from "./half-cosine.ts";
import { meanLevels } from "./mean-levels.ts";
import { residualsOf } from "./residuals.ts";
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
function withSeries(input: JsonObject, run: (series: Series) => Outcome): Outcome {
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

const dryDaysMethod = defineMethod<CalcContext>(
  {
    id: "water.dry-days",
    title: "Dry hours and safe windows of a station, day by day",
    inputs: [
      ...seriesFields,
      { key: "ground_m", title: "Ground at the station, on the datum of the levels", type: "number" },
      { key: "way_m", title: "Lowest ground on the way to it", type: "number" },
      { key: "from", title: "First day, ISO", type: "string" },
      { key: "to", title: "Last day, ISO", type: "string" },
    ],
    outputs: [{ key: "days", title: "Days: dry hours, covered hours, windows", type: "array" }],
    validity:
      "Days in UTC, 31 at most. A window needs the lowest ground on the way dry, and is left four hours before the next high water. Daylight and wind are left out.",
    sources: [project, backBefore.spec.source],
  },
  (input) => {
    const [from, to] = [input["from"] as string, input["to"] as string];
    const isDay = (text: string): boolean =>
      /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(Date.parse(text));
    if (!isDay(from) || !isDay(to) || to < from)
      return {
        problems: [
          inputProblem("from, to", `${from}, ${to}`, "Two days in their order.", "Give them as 2027-05-31."),
        ],
      };
    const station = {
      id: "station",
      ground_m: input["ground_m"] as number,
      way_m: input["way_m"] as number,
    };
    return withSeries(input, (series) => ({
      days: dryDays(series, [station], from, to)[0]!.days.map((d) => ({
        ...d,
        windows: d.windows.map((w) => ({ ...w })),
      })),
    }));
  },
);

const predictedFields = seriesFields.map((f) => ({
  ...f,
  key: `predicted_${f.key}`,
  title: `Predicted: ${f.title}`,
}));

const residualsMethod = defineMethod<CalcContext>(
  {
    id: "water.residuals",
    title: "Recorded less predicted level",
    inputs: [...seriesFields, ...predictedFields],
    outputs: [{ key: "residuals", title: "Mean, spread, 95 % span, highest; null for too few", type: "any" }],
    validity:
      "At the times of the record; 24 common times at least. The weather of the record alone: a storm goes beyond it.",
    sources: [project],
  },
  (input) => {
    const predicted = Object.fromEntries(seriesFields.map((f) => [f.key, input[`predicted_${f.key}`]!]));
    return withSeries(input, (recorded) =>
      withSeries(predicted, (other) => {
        const residuals = residualsOf(recorded, other);
        return { residuals: residuals && { ...residuals } };
      }),
    );
  },
);

/** Registered calculations of water. */
export const waterCalculations: readonly Calculation<CalcContext>[] = [
  ...[...tideRelations, halfCosine, deckBelow].map((formula) => formulaCalculation(formula)),
  picksMethod,
  wetMethod,
  formulaCalculation(backBefore),
  dryDaysMethod,
  residualsMethod,
  meansMethod,
];
