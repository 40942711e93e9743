import { recordValue, type Trace } from "../formula/index.ts";
import { bandCapacity, bandFreedom, bandLow, bandMethod, chanceOver } from "../ground/index.ts";
import { studentQuantile } from "../statistics/index.ts";
import { pascals, qty, showQuantity } from "../units/index.ts";
import { footDemand } from "./bearing.ts";
import { MISSING_STRENGTH } from "./ground-strength.ts";
import { shared } from "./ground-bearing.ts";
import { cannotCheck, resultOf } from "./result.ts";
import { groupBy, type Setting } from "./setting.ts";
import { settlingBase } from "./settling-base.ts";
import { isBanded, type BandedJoint, type PlanSoil } from "./soil.ts";
import type { CheckResult } from "./types.ts";

export const percent = (share: number): string =>
  share < 0.001 ? "under 0.1 %" : `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`;

/**
 * Chance that a joint's load exceeds what the ground carries, without any safety, against the chance that the owner
 * accepts. Joints of one load share a result; where only some exceed it these stand apart. Each result shows its
 * weakest joint.
 */
export function chanceChecks(setting: Setting, soil: PlanSoil): CheckResult[] {
  const accepted = setting.input.plan.proof.ground.chance;
  const banded = soil.joints.filter(isBanded);
  const unknown = soil.joints.filter((j) => !isBanded(j));
  const groups = groupBy(banded, (j) => `${j.word}|${j.band.chance > accepted}`);
  const results = [...groups.values()].map((group) => oneChance(setting, group, accepted));
  if (unknown.length === 0) return results;
  const parts = unknown.map((j) => j.met.joint.id);
  const base = settlingBase("chance", "Chance that the ground gives way", parts, bandMethod);
  return [...results, cannotCheck(base, [MISSING_STRENGTH])];
}

function oneChance(setting: Setting, group: readonly BandedJoint[], accepted: number): CheckResult {
  const weakest = group.reduce((a, b) => (b.band.chance > a.band.chance ? b : a));
  const { load, band } = weakest;
  const { id, name, parts } = shared(group.map((g) => g.met.joint.id));
  const base = settlingBase(`chance.${id}`, `Chance that the ground gives way, ${name}`, parts, bandMethod);
  const working: Trace = [];
  load.load.explain(working);
  footDemand(load.stance, load.live, working);
  recordBand(weakest, working);
  recordValue(working, {
    id: "check.soil.chance",
    title: "Chance that the pressure exceeds the capacity",
    symbol: "P",
    value: band.chance,
    unit: "1",
    source: bandMethod,
    how: "Student's share of the strength, averaged over the formula's own error",
    note: `at ${weakest.met.joint.id}, the weakest of these`,
  });
  const kPa = (pa: number): string => showQuantity(pa, "Pa", setting.context.units);
  const carries = `At ${weakest.met.joint.id} ${kPa(load.pressure_pa)} press on ground that gives way at ${kPa(band.capacity_pa.median)}, at 5 % at ${kPa(band.capacity_pa.low)}: ${percent(band.chance)}.`;
  const change = band.chance <= accepted ? null : changeOf(setting, weakest, accepted);
  return resultOf(
    base,
    {
      unit: "1",
      demand: qty(band.chance, "1"),
      capacity: qty(accepted, "1"),
      governs: load.load.name,
      working,
    },
    { carries, change },
  );
}

/** How the band was found, step by step. */
function recordBand({ load, band, ground, met }: BandedJoint, trace: Trace): void {
  const { spread, sigma, shape } = band;
  const count = ground.readings.length;
  const note =
    count > 0 ? `at ${met.joint.id}, from ${count} readings` : `at ${met.joint.id}, the plan's own value`;
  recordValue(trace, {
    id: "check.soil.pressure",
    title: "Pressure under the worst foot",
    symbol: "p",
    value: load.pressure_pa,
    unit: "Pa",
    source: { id: "statics", title: "Statics of a stiff support on its feet", status: "computed" },
    how: "load on the foot over the part of it that bears",
  });
  if (count > 0) bandFreedom({ nu_0: qty(ground.settings.prior_df, "1"), n: qty(count, "1") }, trace);
  const t = qty(studentQuantile(0.95, spread.df), "1");
  bandLow({ m: qty(spread.mean, "1"), t, s_n: qty(sigma, "1"), v: qty(shape, "1") }, trace, note);
  bandCapacity({ N_c: qty(load.factor, "1"), su: pascals(band.su_pa.median) }, trace, note);
}

/** The pressure at which the accepted chance is just kept. */
function acceptedPressure({ load, band }: BandedJoint, accepted: number): number {
  let [low, high] = [0, load.pressure_pa];
  for (let i = 0; i < 40; i++) {
    const p = (low + high) / 2;
    if (chanceOver(p, load.factor, band.spread) > accepted) high = p;
    else low = p;
  }
  return low;
}

function changeOf(setting: Setting, weakest: BandedJoint, accepted: number): string {
  const p = acceptedPressure(weakest, accepted);
  const { units } = setting.context;
  const share = percent(p / weakest.load.pressure_pa);
  const id = weakest.met.joint.id;
  const more =
    weakest.ground.readings.length === 0
      ? `Measure first, at ${id}: without readings the band is wide.`
      : `More readings at ${id} may clear it, or show that it must be mended.`;
  return `Would pass with at most ${showQuantity(p, "Pa", units)} under its feet, ${share} of now: larger feet, shorter modules or a lighter load. ${more}`;
}
