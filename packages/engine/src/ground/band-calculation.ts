import {
  inputProblem,
  recordValue,
  type Json,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import type { Unit } from "../units/index.ts";
import { capacityFactor } from "./bearing-modes.ts";
import { bearingPart } from "./contact.ts";
import {
  groundMethod,
  isRefusal,
  metresOf,
  number,
  numberOf,
  optional,
  output,
  rowsOf,
  side,
  strength,
  type Answer,
} from "./method-fields.ts";
import { readingWorth } from "./reading-worth.ts";
import { alongLine, bandMethod, influence, modelFactor, strengthScatter } from "./sources.ts";
import { lineStrength, MISSING_LINE_STRENGTH, type BandJoint, type JointStrength } from "./strength-band.ts";
import { readingsBelow, type LineReading } from "./strength-depth.ts";
import { kernels, usualSettings, type Kernel, type StrengthSettings } from "./strength-settings.ts";
import { jointsTogether } from "./strength-together.ts";

const MOST_READINGS = 600;
const MOST_JOINTS = 300;

const readingFields = [
  number("at_m", "Distance along the walkway", -1e5, 1e5),
  optional(number("off_m", "Distance beside the walkway", -1e4, 1e4)),
  number("depth_m", "Depth below ground", 0, 100),
  strength("su_pa", "Corrected strength"),
] as const;
const jointFields = [
  number("at_m", "Distance along the walkway", -1e5, 1e5),
  optional(number("off_m", "Distance beside the walkway", -1e4, 1e4)),
  optional(number("pressure_pa", "Pressure under the worst foot", 0, 1e7)),
] as const;

const settingFields = [
  {
    key: "kernel",
    title: "How likeness falls with distance",
    type: "string",
    choices: kernels,
    optional: true,
  },
  optional(number("correlation_m", "Distance over which strengths stay alike", 0.1, 1e4)),
  optional(number("scatter_share", "Share of the variance within one place", 0.01, 0.95)),
  optional(number("prior_sd", "Standard deviation of ln su before any reading", 0.01, 2)),
  optional(number("prior_df", "Degrees of freedom that it is worth", 2, 1000)),
  optional(number("model_sd", "Standard deviation of ln of the formula's error", 0, 1)),
] as const;

function settingsFrom(input: JsonObject, trace: Trace): StrengthSettings {
  const of = (
    key: keyof Omit<StrengthSettings, "kernel">,
    symbol: string,
    unit: Unit,
    source: typeof alongLine,
  ): number => {
    const own = numberOf(input, key);
    const title = settingFields.find((f) => f.key === key)!.title;
    const value = own ?? usualSettings[key];
    const asked = { id: "asked", title: "Value as given", status: "project" } as const;
    recordValue(trace, {
      id: `ground.strength.${key.replaceAll("_", "-")}-used`,
      title,
      symbol,
      value,
      unit,
      source: own === null ? source : asked,
      how: own === null ? "usual" : "as given",
    });
    return value;
  };
  return {
    kernel: (input["kernel"] as Kernel | undefined) ?? usualSettings.kernel,
    correlation_m: of("correlation_m", "theta", "m", alongLine),
    scatter_share: of("scatter_share", "g", "1", alongLine),
    prior_sd: of("prior_sd", "s_0", "1", strengthScatter),
    prior_df: of("prior_df", "nu_0", "1", strengthScatter),
    model_sd: of("model_sd", "s_m", "1", modelFactor),
  };
}

interface Asked {
  readonly readings: readonly LineReading[];
  readonly joints: readonly BandJoint[];
  readonly mat: readonly LineReading[];
  readonly outside: number;
}

/** Readings in the depth that counts, and the joints with what their foot makes of a strength. */
function askedFrom(input: JsonObject): Asked | { readonly problems: readonly Problem[] } {
  const readings = rowsOf("readings", input["readings"] as readonly Json[], readingFields, MOST_READINGS);
  const joints = rowsOf("joints", input["joints"] as readonly Json[], jointFields, MOST_JOINTS);
  const faults = [readings, joints].flatMap((r) => (isRefusal(r) ? r.problems : []));
  if (isRefusal(readings) || isRefusal(joints)) return { problems: faults };
  if (joints.length === 0)
    return { problems: [inputProblem("joints", 0, "no joint is given", "Give one at least, with at_m.")] };
  const [width_m, length_m, depth_m] = ["width_mm", "length_mm", "depth_mm"].map((k) => metresOf(input, k));
  const mat = numberOf(input, "mat_mm");
  const mat_m = mat === null || mat / 1000 <= depth_m! ? null : mat / 1000;
  const below = readingsBelow(
    readings.map(readingFrom),
    { width_m: Math.min(width_m!, length_m!), depth_m: depth_m! },
    mat_m,
  );
  const part = bearingPart({ shape: "rectangle", width_m: width_m!, length_m: length_m! }, 0, 0);
  const factor = capacityFactor(part, depth_m!, mat_m === null ? null : mat_m - depth_m!);
  return {
    readings: below.ground,
    mat: below.mat,
    outside: below.outside,
    joints: joints.map((j, i) => ({
      id: String(i),
      at_m: j["at_m"] as number,
      off_m: numberOf(j, "off_m") ?? 0,
      factor,
      pressure_pa: numberOf(j, "pressure_pa"),
    })),
  };
}

const readingFrom = (r: JsonObject): LineReading => ({
  at_m: r["at_m"] as number,
  off_m: numberOf(r, "off_m") ?? 0,
  depth_m: r["depth_m"] as number,
  su_pa: r["su_pa"] as number,
});

const jointShown = (j: JointStrength): JsonObject => ({
  at_m: j.at_m,
  su_pa: { ...j.su_pa },
  capacity_pa: { ...j.capacity_pa },
  chance: j.chance,
  around: j.around && { ...j.around },
});

function bandOf(input: JsonObject, trace: Trace): Answer {
  const asked = askedFrom(input);
  if ("problems" in asked) return asked;
  const settings = settingsFrom(input, trace);
  const plan = numberOf(input, "plan_su_pa");
  const found = lineStrength(asked.readings, asked.joints, plan, settings, trace);
  const counted = { counted: asked.readings.length, in_mat: asked.mat.length, outside: asked.outside };
  const empty = { joints: null, mat: null, together: null, worth: null };
  if (!found)
    return {
      ...empty,
      ...counted,
      missing: [MISSING_LINE_STRENGTH],
      words: [`Cannot be checked: missing ${MISSING_LINE_STRENGTH}.`],
    };
  const accepted = numberOf(input, "accepted_chance") ?? 0.05;
  const [trials, seed] = [numberOf(input, "trials") ?? 2000, numberOf(input, "seed") ?? 1];
  const together = jointsTogether(found.field, asked.joints, settings, trials, seed);
  const mat = asked.mat.length > 0 ? lineStrength(asked.mat, asked.joints, null, settings) : null;
  return {
    ...counted,
    joints: found.joints.map(jointShown),
    mat: mat && mat.joints.map((j) => ({ at_m: j.at_m, su_pa: { ...j.su_pa } })),
    together: together && { ...together },
    worth: readingWorth(found.field, asked.joints, settings, accepted).map(
      ({ ratio, ratio_all, risk, turns, ...w }) => ({
        ...w,
        ratio: { ...ratio },
        ratio_all: { ...ratio_all },
        risk: risk && { ...risk },
        turns: turns && { ...turns },
      }),
    ),
    missing: [],
    words: [
      ...found.words,
      ...(asked.outside > 0
        ? [`${asked.outside} of the readings lie outside the depth that the feet feel and do not count.`]
        : []),
    ],
  };
}

export const bandCalculation = groundMethod(
  {
    id: "ground.strength-band",
    title: "Strength and bearing along a walkway as distributions, and where to read next",
    inputs: [
      { key: "readings", title: "Corrected readings: { at_m, off_m, depth_m, su_pa }", type: "array" },
      { key: "joints", title: "Joints: { at_m, off_m, pressure_pa }", type: "array" },
      side("width_mm", "Side of the feet"),
      side("length_mm", "Other side of the feet"),
      number("depth_mm", "Depth of the feet below ground", 0, 10_000),
      optional(number("mat_mm", "Depth of a root mat's underside below ground", 1, 5000)),
      optional(strength("plan_su_pa", "The plan's own strength, used where there is no reading")),
      optional(number("accepted_chance", "Chance of trouble at a joint that the plan accepts", 0.0001, 0.5)),
      { key: "trials", title: "Simulated walkways", type: "integer", min: 100, max: 20_000, optional: true },
      {
        key: "seed",
        title: "Seed of the simulation",
        type: "integer",
        min: 0,
        max: 4_294_967_295,
        optional: true,
      },
      ...settingFields,
    ],
    outputs: [
      output(
        "joints",
        "Each joint: su_pa and capacity_pa at 5, 50 and 95 %, chance, readings around; null when nothing is known",
      ),
      output("mat", "Strength of the root mat at each joint; null without readings in it"),
      output(
        "together",
        "Chance that at least one joint's load exceeds its capacity, and the expected number; null without loads",
      ),
      output("worth", "Joints by what one or two more readings there are worth; null when nothing is known"),
      output("counted", "Readings that count", "integer"),
      output("in_mat", "Readings in the root mat, kept apart", "integer"),
      output("outside", "Readings too shallow or too deep to count", "integer"),
      output("missing", "What is missing", "array"),
      output("words", "What to know", "array"),
    ],
    validity:
      "One deposit along the walkway without trend; ln su normal; the stated correlation length. Capacity is net ultimate, no safety in it.",
    sources: [bandMethod, strengthScatter, alongLine, modelFactor, influence],
  },
  (input, _context, trace) => bandOf(input, trace),
);
