import { fieldOf } from "./soil-field.ts";
import { jointsTogether, readingWorth, type ReadingWorth } from "../ground/index.ts";
import type { ChecksInput } from "./input.ts";
import { metJoints } from "./plan-joints.ts";
import { settingOf, type Setting } from "./setting.ts";
import { bandJoint, isBanded, planSoil, type BandedJoint, type PlanSoil } from "./soil.ts";
import { TOGETHER, WORTH_JOINTS } from "./soil-rules.ts";

/** One joint's ground as a distribution: 5, 50 and 95 % of its strength, its capacity, and what presses on it. */
export interface SoilJointFigures {
  readonly id: string;
  /** On its branch, from the branch's beginning [m]. */
  readonly along_m: number;
  readonly su_low_pa: number;
  readonly su_median_pa: number;
  readonly su_high_pa: number;
  /** Net ultimate capacity with the formula's own error, no safety in it. */
  readonly capacity_low_pa: number;
  readonly capacity_median_pa: number;
  /** Pressure under the worst foot of the governing load. */
  readonly demand_pa: number;
  readonly chance: number;
}

/** What one or two more readings at a joint would be worth. */
export interface SoilWorth {
  readonly joint: string;
  /** Strength at 95 % over that at 5 %: now, and as expected after one and after two more readings there. */
  readonly ratio_now: number;
  readonly ratio_one: number;
  readonly ratio_two: number;
  /** Chance of trouble left when the joint is mended wherever that is the better choice. */
  readonly risk_now: number;
  readonly risk_one: number;
  readonly risk_two: number;
  /** Chance that the joint then stands on the other side of the accepted chance. */
  readonly turns_one: number;
  readonly turns_two: number;
  readonly words: string;
}

/** The ground along the walkway as the plan's checks took it. */
export interface SoilLine {
  readonly joints: readonly SoilJointFigures[];
  /** Chance that at least one joint gives way under its governing load, and how far the simulation may be off. */
  readonly any_fails_chance: number;
  readonly any_fails_error: number;
  /** Readings that count under the kind of support that feels the most of them; the rest lie too deep or in the mat. */
  readonly readings_used: number;
  readonly readings_left_out: number;
  /** What the bands rest on beside the readings. */
  readonly settings: readonly string[];
}

export interface SoilProof extends SoilLine {
  /** The weakest joints, the one where a reading is worth most first. */
  readonly worth: readonly SoilWorth[];
}

/** The ground of a plan in figures; null when nothing is known of its strength, or nothing stands on it. */
export function soilLine(setting: Setting, soil: PlanSoil): SoilLine | null {
  const joints = soil.joints.filter(isBanded);
  if (joints.length === 0) return null;
  const { plan, site } = setting.input;
  const used = Math.max(...soil.kinds.map((k) => k.readings.length));
  return {
    joints: joints.map(({ met, band, load }) => ({
      id: met.joint.id,
      along_m: met.joint.along_m,
      su_low_pa: band.su_pa.low,
      su_median_pa: band.su_pa.median,
      su_high_pa: band.su_pa.high,
      capacity_low_pa: band.capacity_pa.low,
      capacity_median_pa: band.capacity_pa.median,
      demand_pa: load.pressure_pa,
      chance: band.chance,
    })),
    ...anyFails(soil, joints),
    readings_used: used,
    readings_left_out: site.readings.length + plan.ground.readings.length - used,
    settings: settingWords(setting, soil, used),
  };
}

const byChance = (joints: readonly BandedJoint[]): BandedJoint[] =>
  joints.toSorted((a, b) => b.band.chance - a.band.chance);

/**
 * Chance that any joint gives way: the weakest are simulated together, one kind of support at a time; the rest and
 * other kinds are added as if they never failed at once. Never less than the weakest joint alone, nor more than all
 * chances added up.
 */
function anyFails(
  soil: PlanSoil,
  joints: readonly BandedJoint[],
): Pick<SoilLine, "any_fails_chance" | "any_fails_error"> {
  const sum = (some: readonly BandedJoint[]): number => some.reduce((s, j) => s + j.band.chance, 0);
  let any = 0;
  let error = 0;
  for (const kind of soil.kinds) {
    const mine = byChance(joints.filter((j) => j.ground === kind));
    const weakest = mine.slice(0, TOGETHER.joints);
    const asked = weakest.map(bandJoint);
    const field = fieldOf(kind, asked);
    const together = field && jointsTogether(field, asked, kind.settings, TOGETHER.draws, TOGETHER.seed);
    any += (together?.any ?? 0) + sum(mine.slice(TOGETHER.joints));
    // No draw that fails leaves the answer open by one draw, not by nothing.
    if (together) error = Math.hypot(error, Math.max(together.any_error, 1 / TOGETHER.draws));
  }
  const least = Math.max(...joints.map((j) => j.band.chance));
  const most = Math.min(1, sum(joints));
  return {
    any_fails_chance: Math.min(most, Math.max(least, any)),
    any_fails_error: Math.min(error, most - least),
  };
}

function settingWords({ input }: Setting, soil: PlanSoil, used: number): string[] {
  const { prior_spread, alike_m, chance, root_mat_m } = input.plan.proof.ground;
  const basis =
    used > 0
      ? `Readings down to 1.5 times the smaller side of a support's outline count, ${used} of them (depth from memory).`
      : "No reading counts at the depth that the supports feel: the plan's own strength stands for all joints. Measure before relying on it.";
  const mat =
    root_mat_m === null
      ? "No root mat is told: the ground is taken as even."
      : `Root mat ${root_mat_m} m thick: readings below it count, and the mat may be pressed into the mud.`;
  const { prior_df, model_sd, scatter_share } = soil.kinds[0]!.settings;
  return [
    basis,
    mat,
    `Spread before any reading ${prior_spread} in ln su, worth ${prior_df} degrees of freedom; alike by exp(-d / ${alike_m} m) of the straight distance on the plan; ${scatter_share * 100} % of the variance is scatter within one place; error of the bearing formula ${model_sd} in its logarithm (from memory).`,
    `The owner accepts a chance of ${chance} at a joint. At least one joint: ${TOGETHER.draws} draws of the ${TOGETHER.joints} weakest joints of each kind of support, the others added.`,
  ];
}

/**
 * What one or two more readings would be worth at the weakest joints, the most useful first. Dear: every outcome is
 * followed through. Empty where nothing is known, or the tables lack the plan's timber.
 */
export function soilWorth(input: ChecksInput): readonly SoilWorth[] {
  const setting = settingOf(input);
  if (!setting.ok) return [];
  const soil = planSoil(setting.value, metJoints(setting.value));
  const weakest = byChance(soil.joints.filter(isBanded)).slice(0, WORTH_JOINTS);
  const all = soil.kinds.flatMap((kind) => {
    const asked = weakest.filter((j) => j.ground === kind).map(bandJoint);
    const field = asked.length > 0 ? fieldOf(kind, asked) : null;
    return field ? readingWorth(field, asked, kind.settings, input.plan.proof.ground.chance) : [];
  });
  const gain = (w: SoilWorth): number => w.risk_now - w.risk_one;
  const rows = all.map(worthRow);
  // Within one kind the order is that of the method; kinds are merged by what a reading takes off the risk.
  return soil.kinds.length < 2 ? rows : rows.toSorted((a, b) => gain(b) - gain(a));
}

const worthRow = ({ id, ratio, risk, turns, words }: ReadingWorth): SoilWorth => ({
  joint: id,
  ratio_now: ratio.now,
  ratio_one: ratio.one,
  ratio_two: ratio.two,
  risk_now: risk?.now ?? 0,
  risk_one: risk?.one ?? 0,
  risk_two: risk?.two ?? 0,
  turns_one: turns?.one ?? 0,
  turns_two: turns?.two ?? 0,
  words,
});
