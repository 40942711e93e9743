import { pullOut, type StakeSection } from "../anchors/index.ts";
import type { Trace } from "../formula/index.ts";
import { hasBase, supportKind, type SupportKind } from "../kit/index.ts";
import { inches, kilograms, metres, qty, showQuantity } from "../units/index.ts";
import { outOfMud, siltDensity, siltDepth, stakeAsMass, suctionShare } from "./cold-formulas.ts";
import { MISSING_STRENGTH, recordStrength, type GroundStrength } from "./ground-strength.ts";
import { carrierLimit, massOf } from "./lifting.ts";
import { teamLimit } from "./niosh.ts";
import type { MetJoint } from "./plan-joints.ts";
import { cannotCheck, notApplicable, resultOf, type Verdict } from "./result.ts";
import { groupBy, type Setting } from "./setting.ts";
import type { Backwards, CheckBase, CheckResult } from "./types.ts";

const base = (id: string, title: string, group: readonly MetJoint[]): CheckBase => ({
  id: `handling.removal.${id}`,
  kind: "handling",
  title,
  parts: group.map((j) => j.joint.id),
  rule: outOfMud.spec.source,
  caution:
    "Suction is from memory: try one support first. Rock it, lift one edge, let water run under it. Standing in mud a back carries less than on firm ground.",
});

/** Taking out at removal: each kind of support out of the mud, and its stakes. */
export function removalChecks(setting: Setting, joints: readonly MetJoint[]): CheckResult[] {
  return [...groupBy(joints, (j) => j.joint.support).values()].flatMap((group) => {
    const kind = supportKind(setting.input.plan.kit, group[0]!.joint.support);
    return [supportOut(setting, kind, group), ...(kind.anchor ? [stakesOut(setting, kind, group)] : [])];
  });
}

function strongest(group: readonly MetJoint[]): GroundStrength | null {
  const known = group.flatMap((j) => j.strength ?? []);
  if (known.length < group.length) return null;
  return known.reduce((a, b) => (b.su > a.su ? b : a));
}

function supportOut(setting: Setting, kind: SupportKind, group: readonly MetJoint[]): CheckResult {
  const own = base(kind.id, `Taking out ${kind.name}`, group);
  if (kind.piles) return notApplicable(own, "screw piles are turned out with what turned them in");
  if (hasBase(kind)) return notApplicable(own, "floats are towed, not pulled out of the ground");
  const strength = strongest(group);
  if (!strength) return cannotCheck(own, [MISSING_STRENGTH]);
  const tallest = group.reduce((a, b) => (b.joint.support_height_m > a.joint.support_height_m ? b : a));
  const working: Trace = [];
  const mass = setting.input.masses.support(kind.id, tallest.joint.support_height_m);
  const m = massOf(mass, setting.gravity, "soaked", working);
  recordStrength(strength, working);
  const A = qty(kind.feet.reduce((sum, f) => sum + f.along_mm * f.across_mm, 0) / 1e6, "m2");
  const demand = outOfMud(
    {
      m,
      A,
      t_s: siltDepth({}, working),
      rho_s: siltDensity({}, working),
      k_v: suctionShare({}, working),
      su: strength.su,
    },
    working,
  );
  return pulled(
    setting,
    own,
    demand,
    working,
    `The support alone weighs ${say(setting, m)} soaked.`,
    kind.name,
  );
}

function stakesOut(setting: Setting, kind: SupportKind, group: readonly MetJoint[]): CheckResult {
  const own = base(`${kind.id}.stakes`, `Drawing a stake of ${kind.name}`, group);
  const strength = strongest(group);
  if (!strength) return cannotCheck(own, [MISSING_STRENGTH]);
  const { size, embedment_mm } = kind.anchor!;
  const row = setting.context.tables.sizes.find((s) => s.id === size);
  if (!row) return cannotCheck(own, [`the actual size of a stake "${size}"`]);
  const section: StakeSection = {
    shape: "rectangle",
    facing: inches(row.width_in),
    along: inches(row.thickness_in),
  };
  const working: Trace = [];
  recordStrength(strength, working);
  const embedment = metres(embedment_mm / 1000);
  const R_s = pullOut({ section, embedment, su: strength.su, state: "set" }, working);
  const demand = stakeAsMass({ R_s }, working);
  return pulled(setting, own, demand, working, "Set for seasons, whatever floods it saw.", kind.name);
}

const say = ({ context }: Setting, kg: number): string => showQuantity(kg, "kg", context.units);

function pulled(
  setting: Setting,
  own: CheckBase,
  demand: Verdict<"kg">["demand"],
  working: Trace,
  first: string,
  name: string,
): CheckResult {
  const { carriers } = setting.input.plan.laying;
  const RWL = carrierLimit(working);
  const capacity = teamLimit({ n: qty(carriers, "1"), RWL }, working);
  const words: Backwards = {
    carries: `${first} It takes ${say(setting, demand)}; ${carriers} carriers lift ${say(setting, kilograms(capacity))}.`,
    change: demand <= capacity ? null : tackle(demand, RWL, capacity),
  };
  return resultOf(
    own,
    { unit: "kg", demand, capacity, governs: `${name}, ${carriers} carriers`, working },
    words,
  );
}

/** A lever that two people press down, or a tackle. */
function tackle(demand: number, each: number, capacity: number): string {
  const two = Math.max(2, Math.ceil(demand / (2 * each)));
  const parts = Math.max(2, Math.ceil(demand / capacity));
  return `Needs a lever with arms 1 to ${two} for two people, or a tackle of ${parts} parts on a tripod with boards under its feet; or wait for water under it, and lift one edge first.`;
}
