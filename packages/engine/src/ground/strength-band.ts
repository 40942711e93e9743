import type { Trace } from "../formula/index.ts";
import { effectiveNumber, studentQuantile, weightedSpread } from "../statistics/index.ts";
import { pascals, qty } from "../units/index.ts";
import { chanceBelow, halfWidth, type LogSpread } from "./strength-chance.ts";
import type { LineReading } from "./strength-depth.ts";
import { strengthField, type StrengthField } from "./strength-field.ts";
import { bandCapacity, bandFreedom, bandLow } from "./strength-formulas.ts";
import { logLikeness, type StrengthSettings } from "./strength-settings.ts";

/** A joint as its strength is asked for. */
export interface BandJoint {
  readonly id: string;
  readonly at_m: number;
  readonly off_m: number;
  /** Net capacity over strength of its foot, without unit (`capacityFactor`). */
  readonly factor: number;
  /** Pressure under its worst foot [Pa]; null where the load is not known. */
  readonly pressure_pa: number | null;
}

/** 5, 50 and 95 % of a quantity. */
export interface Band {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** What the readings around a joint say by themselves: weighted by distance alone. */
export interface ReadingsAround {
  /** (sum w)^2 / sum w^2. */
  readonly effective: number;
  readonly mean_ln: number;
  /** Null where they amount to a single reading. */
  readonly sd_ln: number | null;
  readonly nearest_m: number;
}

export interface JointStrength {
  readonly id: string;
  readonly at_m: number;
  readonly su_pa: Band;
  readonly capacity_pa: Band;
  /** Chance that the pressure exceeds the capacity; null where no pressure is given. */
  readonly chance: number | null;
  /** Null where the band rests on the plan's value alone. */
  readonly around: ReadingsAround | null;
}

export interface LineStrength {
  readonly field: StrengthField;
  readonly joints: readonly JointStrength[];
  readonly words: readonly string[];
}

/** What a strength band needs and does not have. */
export const MISSING_LINE_STRENGTH =
  "a strength reading within the depth that the feet feel, or a strength for the plan";

/** ln(capacity / factor) at one joint: the strength with the error of the formula. */
export const logSpreadAt = (field: StrengthField, i: number, settings: StrengthSettings): LogSpread => ({
  mean: field.mean[i]!,
  scale: field.sigma * Math.sqrt(field.shape.values[i * field.shape.size + i]!),
  df: field.df,
  model_sd: settings.model_sd,
});

/**
 * Strength and bearing capacity at every joint as distributions, and the chance that each joint's load exceeds it.
 *
 * readings    corrected, in the depth that the feet feel (`readingsBelow`)
 * plan_su_pa  the plan's own value, used only where there is no reading at all; null = not known
 *
 * Null where neither is known: say `MISSING_LINE_STRENGTH`. The capacity is net ultimate: no safety in it. The working
 * shows the weakest joint.
 */
export function lineStrength(
  readings: readonly LineReading[],
  joints: readonly BandJoint[],
  plan_su_pa: number | null,
  settings: StrengthSettings,
  trace?: Trace,
): LineStrength | null {
  const field = strengthField(readings, joints, plan_su_pa, settings);
  if (!field) return null;
  const found = joints.map((joint, i) =>
    jointStrength(joint, logSpreadAt(field, i, settings), readings, settings),
  );
  if (trace && joints.length > 0) showWeakest(field, found, joints, readings.length, settings, trace);
  return { field, joints: found, words: wordsOf(field, readings.length) };
}

/** Puts the joint with the lowest strength at 5 % into the working. */
function showWeakest(
  field: StrengthField,
  found: readonly JointStrength[],
  joints: readonly BandJoint[],
  count: number,
  settings: StrengthSettings,
  trace: Trace,
): void {
  const i = found.reduce((low, j, k) => (j.su_pa.low < found[low]!.su_pa.low ? k : low), 0);
  const note = `joint at ${found[i]!.at_m} m, the weakest`;
  if (count > 0) bandFreedom({ nu_0: qty(settings.prior_df, "1"), n: qty(count, "1") }, trace);
  const [m, s_n] = [qty(field.mean[i]!, "1"), qty(field.sigma, "1")];
  const v = qty(field.shape.values[i * field.shape.size + i]!, "1");
  bandLow({ m, t: qty(studentQuantile(0.95, field.df), "1"), s_n, v }, trace, note);
  bandCapacity({ N_c: qty(joints[i]!.factor, "1"), su: pascals(found[i]!.su_pa.median) }, trace, note);
}

function jointStrength(
  joint: BandJoint,
  spread: LogSpread,
  readings: readonly LineReading[],
  settings: StrengthSettings,
): JointStrength {
  const { mean, scale, df } = spread;
  const { id, at_m, factor, pressure_pa } = joint;
  const of = (half: number, by: number): Band => ({
    low: by * Math.exp(mean - half),
    median: by * Math.exp(mean),
    high: by * Math.exp(mean + half),
  });
  return {
    id,
    at_m,
    su_pa: of(scale * studentQuantile(0.95, df), 1),
    capacity_pa: of(halfWidth(0.95, spread), factor),
    chance: pressure_pa === null ? null : chanceOver(pressure_pa, factor, spread),
    around: readingsAround(joint, readings, settings),
  };
}

/** Chance that a pressure exceeds the capacity of a joint. */
export const chanceOver = (pressure_pa: number, factor: number, spread: LogSpread): number =>
  pressure_pa <= 0 ? 0 : chanceBelow(Math.log(pressure_pa / factor), spread);

/** Readings weighted by their distance from a place; null where there are none. */
export function readingsAround(
  place: { readonly at_m: number; readonly off_m: number },
  readings: readonly LineReading[],
  settings: StrengthSettings,
): ReadingsAround | null {
  if (readings.length === 0) return null;
  const away = readings.map((r) => Math.hypot(r.at_m - place.at_m, r.off_m - place.off_m));
  const nearest_m = Math.min(...away);
  // Measured from the nearest one: the same ratios, and never all 0 on a long walkway with few readings.
  const log = away.map((d) => logLikeness(settings, d));
  const most = Math.max(...log);
  const weights = log.map((v) => Math.exp(v - most));
  if (effectiveNumber(weights) < 1 + 1e-9) {
    const only = readings[weights.indexOf(1)]!;
    return { effective: 1, mean_ln: Math.log(only.su_pa), sd_ln: null, nearest_m };
  }
  const { mean, sd, effective } = weightedSpread(
    readings.map((r) => Math.log(r.su_pa)),
    weights,
  );
  return { effective, mean_ln: mean, sd_ln: sd, nearest_m };
}

function wordsOf(field: StrengthField, count: number): string[] {
  if (field.basis === "plan value")
    return [
      "No reading counts: the band is the plan's own value with the usual spread of soft ground (from memory). Measure before relying on it.",
    ];
  const few =
    count < 5 ? " Few readings: much of the band is the usual spread of soft ground (from memory)." : "";
  return [`The band rests on ${count} reading${count === 1 ? "" : "s"}.${few}`];
}
