import { bandMethod } from "../ground/index.ts";
import { hasBase } from "../kit/index.ts";
import { pascals } from "../units/index.ts";
import { bearingUtilisation, type RootMat } from "./bearing.ts";
import { checkBearing, type BearingDemand } from "./bearing-check.ts";
import type { GroundStrength } from "./ground-strength.ts";
import { cannotCheck } from "./result.ts";
import { groupBy, type Setting } from "./setting.ts";
import type { LoadedJoint, PlanSoil, SoilJoint } from "./soil.ts";
import { loadWord } from "./soil-load.ts";
import type { CheckResult } from "./types.ts";

/** Readings from which the band says more than the lowest of them. */
const BAND_READINGS = 2;

/** The strength at 5 % of a joint's band; null where fewer than two readings make it. */
function bandLow(one: SoilJoint): GroundStrength | null {
  const count = one.ground.readings.length;
  if (!one.band || count < BAND_READINGS) return null;
  return {
    su: pascals(one.band.su_pa.low),
    source: bandMethod,
    how: `5 % of the strength band at ${one.met.joint.id}, from ${count} readings`,
  };
}

/**
 * Strength that bearing is held against with the plan's safety: the lowest reading near, or the plan's own value. How
 * strengths scatter is judged apart, by the chance of giving way: taken here as well it would be counted twice.
 */
export const bearingStrength = ({ met }: SoilJoint): GroundStrength | null => met.strength;

/** Strength of the mud under a root mat: 5 % of its band, its only reading, or the plan's own value. */
export function mudStrength(one: SoilJoint): GroundStrength | null {
  const low = bandLow(one);
  if (low || !one.band) return low;
  const { readings } = one.ground;
  const how =
    readings.length === 1
      ? `the only reading below the root mat, ${one.band.nearest_m!.toFixed(0)} m away`
      : "no reading below the root mat: the plan's own value";
  return {
    su: pascals(readings[0]?.su_pa ?? one.ground.plan_su_pa ?? 0),
    source: { id: "plan-ground", title: "Plan: readings and strength of the ground", status: "project" },
    how,
  };
}

interface Held {
  readonly one: SoilJoint;
  readonly strength: GroundStrength | null;
  readonly mat: RootMat | null;
  /** Pressure over what is allowed; null where the strength is not known. */
  readonly use: number | null;
}

function held(one: SoilJoint, mat_m: number | null, safety: number): Held {
  const strength = bearingStrength(one);
  const mud = mat_m === null ? null : mudStrength(one);
  const mat = mat_m !== null && mud ? { thickness_m: mat_m, mud } : null;
  if (!strength || (mat_m !== null && !mat)) return { one, strength: null, mat, use: null };
  const worst = Math.max(
    ...[one.load, one.plain].map(({ stance, live }) =>
      bearingUtilisation(stance, live, strength.su, safety, mat),
    ),
  );
  return { one, strength, mat, use: worst };
}

/** Name of joints that share a result. */
export const shared = (ids: readonly string[]) => ({
  id: ids[0]!,
  name: ids.length === 1 ? `joint ${ids[0]}` : `joint ${ids[0]} and ${ids.length - 1} alike`,
  parts: ids,
});

/**
 * Bearing under every joint with feet on the ground. Joints of one load and one reading share a result; where only some
 * of them fail these stand apart, and each result shows the weakest of its joints.
 */
export function groundBearing(setting: Setting, soil: PlanSoil, demand: BearingDemand): CheckResult[] {
  const byId = new Map(soil.joints.map((j) => [j.met.joint.id, j]));
  const onGround = soil.loaded.filter(({ joint }) => !hasBase(joint.support));
  const groups = groupBy(onGround, ({ met, joint }) =>
    [loadWord(joint), met.strength?.su, met.strength?.how].join("|"),
  );
  const { root_mat_m } = setting.input.plan.proof.ground;
  const results = [...groups.values()].flatMap((group) => {
    const all = group.flatMap(({ met }) => byId.get(met.joint.id) ?? []);
    if (all.length < group.length) return [footless(setting, group, demand, soil)];
    const judged = all.map((one) => held(one, root_mat_m, demand.safety));
    return [...groupBy(judged, ({ use }) => String(use === null ? null : use <= 1)).values()].map((some) =>
      oneResult(setting, some, demand, soil),
    );
  });
  return results;
}

function footless(
  setting: Setting,
  group: readonly LoadedJoint[],
  demand: BearingDemand,
  { memory }: PlanSoil,
): CheckResult {
  const { met, joint } = group[0]!;
  const label = shared(group.map((g) => g.met.joint.id));
  return checkBearing(joint, met.strength, demand, label, setting.context, memory);
}

function oneResult(
  setting: Setting,
  some: readonly Held[],
  demand: BearingDemand,
  { memory }: PlanSoil,
): CheckResult {
  const label = shared(some.map((h) => h.one.met.joint.id));
  const weakest = some.reduce((a, b) => ((b.use ?? 0) > (a.use ?? 0) ? b : a));
  const { one, strength, mat } = weakest;
  const result = checkBearing(one.joint, strength, demand, label, setting.context, memory, mat);
  if (result.status !== "cannot-check" || !one.met.strength) return result;
  return cannotCheck(result, [
    "the strength of the mud under the root mat: a reading below it, or a value for the plan",
  ]);
}
