import {
  leastEmbedment,
  stakeSet,
  type StakeChoice,
  type StakeDemand,
  type StakeSet,
} from "../anchors/index.ts";
import { displacedWeight, flotationSafety, requiredHoldDown, selfWeightFactor } from "../flood/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import { supportKind, type SupportKind } from "../kit/index.ts";
import { densityAtMoisture, weightOf } from "../structure/index.ts";
import { inches, newtons, qty, type Qty } from "../units/index.ts";
import { strengthCombinations } from "./combination.ts";
import type { FloodCase } from "./flood-cases.ts";
import { crestOnPart, pushOnJoint, type FloodLoads, type JointPush } from "./flood-demand.ts";
import { plainPull, pullAsked } from "./flood-formulas.ts";
import type { WetShape } from "./flood-shapes.ts";
import type { WetJoint, WetPart } from "./flood-loads.ts";
import { partMass } from "./formulas.ts";
import type { GroundStrength } from "./ground-strength.ts";
import type { PartMass } from "./input.ts";
import { dryMoisture } from "./rules.ts";
import type { Setting } from "./setting.ts";
import { volumeUnder } from "./uplift.ts";

const bendings = new WeakMap<Setting, Map<string, Qty<"Pa"> | null>>();

/** Bending strength of a stake's timber, wet, for a flood of days, against loads as they are; null when not tabled. */
export function stakeBending(setting: Setting, size: string): Qty<"Pa"> | null {
  const known = bendings.get(setting) ?? new Map<string, Qty<"Pa"> | null>();
  bendings.set(setting, known);
  let found = known.get(size);
  if (found === undefined) known.set(size, (found = bendingOf(setting, size)));
  return found;
}

function bendingOf(setting: Setting, size: string): Qty<"Pa"> | null {
  const { context, lumber } = setting;
  const member = context.code.member(context.tables, lumber.species, lumber.grade, size);
  if (!member.ok) return null;
  const live = Math.max(1, ...strengthCombinations(context.code).map((c) => c.live));
  const situation = {
    use: "flat",
    wet: true,
    incised: lumber.incised,
    repetitive: false,
    duration: "seven-days",
  } as const;
  return qty(context.code.strength(member.value, situation).fb / live, "Pa");
}

/** A stake of this size with its wide face along the walk, pushed square to it; null for a size that is not tabled. */
export function stakeChoice(
  setting: Setting,
  size: string,
  lengths_m: readonly number[],
): StakeChoice | null {
  const row = setting.context.tables.sizes.find((s) => s.id === size);
  const bending_pa = stakeBending(setting, size);
  if (!row || !bending_pa) return null;
  const section = {
    shape: "rectangle",
    facing: inches(row.width_in),
    along: inches(row.thickness_in),
  } as const;
  return { name: size, section, lengths_m, bending_pa };
}

const covers = (setting: Setting, flood: FloodCase, part: WetPart): boolean =>
  flood.z_m > part.underside_m || crestOnPart(setting, flood, part) > 0;

/** Masses of the parts on a joint that are under water, by their shares, and of its support. */
function massOnJoint(
  setting: Setting,
  flood: FloodCase,
  joint: WetJoint,
  support: PartMass,
): PartMass | null {
  const under = joint.parts.filter((p) => covers(setting, flood, p));
  if (under.length === 0) return null;
  const each = under.map((p) => ({ m: p.shape.mass, by: 1 / p.joints.length }));
  const all = [...each, { m: support, by: 1 }];
  const sum = (of: (m: PartMass) => number): number => all.reduce((s, { m, by }) => s + by * of(m), 0);
  return {
    timber_m3: sum((m) => m.timber_m3),
    other_kg: sum((m) => m.other_kg),
    bulk_kg: sum((m) => m.bulk_kg ?? 0),
    bulk_m3: sum((m) => m.bulk_m3 ?? 0),
  };
}

/** Pull that the anchors of a joint must hold, the ratio asked for in it [N]: covered parts count as wholly under. */
function pullOnJoint(
  setting: Setting,
  flood: FloodCase,
  joint: WetJoint,
  own: PartMass,
  trace?: Trace,
): Qty<"N"> {
  const mass = massOnJoint(setting, flood, joint, own);
  if (!mass) return newtons(0);
  const rho = densityAtMoisture({ G: setting.gravity, M: dryMoisture({}, trace) }, trace);
  const V = qty(mass.timber_m3, "m3");
  const W = weightOf(
    { m: partMass({ V, rho, m_o: qty(mass.other_kg, "kg") }, trace) },
    trace,
    "parts and support of the joint",
  );
  const rho_w = qty(setting.input.plan.water_kg_m3, "kg/m3");
  const still = joint.parts.some((p) => flood.z_m > p.underside_m)
    ? displacedWeight({ rho_w, V: volumeUnder(mass, trace) }, trace)
    : 0;
  const crest = joint.parts.reduce((s, p) => s + crestOnPart(setting, flood, p) / p.joints.length, 0);
  if (crest > 0) recordCrest(setting, flood, joint, crest, trace);
  const H_n = requiredHoldDown({ n_f: flotationSafety({}, trace), B: newtons(still + crest) }, trace);
  return pullAsked({ H_n, k_w: selfWeightFactor({}, trace), W }, trace);
}

/** The crest under the first part of the joint step by step, and the shares of all of them. */
function recordCrest(
  setting: Setting,
  flood: FloodCase,
  { parts }: WetJoint,
  crest: number,
  trace?: Trace,
): void {
  for (const part of parts.slice(0, 1)) crestOnPart(setting, flood, part, trace);
  recordValue(trace, {
    id: "flood.joint.crest",
    title: "Lift of the crest on the joint",
    symbol: "U_c",
    value: crest,
    unit: "N",
    source: { id: "statics", title: "Statics", at: "shares of the parts on the joint", status: "computed" },
    how: "sum over the parts, each by its share",
  });
}

/** What one joint's anchors must hold in one case. */
export interface JointDemand {
  readonly flood: FloodCase;
  readonly joint: WetJoint;
  /** With the ratio asked for [N]. */
  readonly pull_n: number;
  readonly push: JointPush;
}

/** Null outside the tables of wrack. `own` is a support other than the kit's, to ask what would hold. */
export function jointDemand(
  setting: Setting,
  loads: FloodLoads,
  joint: WetJoint,
  speed: Qty<"m/s">,
  own: WetShape = joint.shape,
): JointDemand | null {
  const push = pushOnJoint(setting, loads, joint, speed, own);
  if (!push) return null;
  return { flood: loads.flood, joint, pull_n: pullOnJoint(setting, loads.flood, joint, own.mass), push };
}

/** Puts the way to a joint's demand into the working. */
export function recordDemand(setting: Setting, demand: JointDemand, trace: Trace): void {
  const U_r = pullOnJoint(setting, demand.flood, demand.joint, demand.joint.shape.mass, trace);
  plainPull({ U_r, n_f: flotationSafety({}) }, trace);
  demand.push.record(trace);
}

/** What stakes of one kind at one joint are asked for. */
export const stakeDemand = (
  setting: Setting,
  demand: JointDemand,
  above_m: number,
  { su }: GroundStrength,
): StakeDemand => ({
  uplift_n: demand.pull_n / flotationSafety({}),
  horizontal_n: demand.push.push.force_n,
  e_m: demand.push.push.acts_at_m,
  above_m,
  su,
  state: setting.input.plan.proof.flood.stakes,
  sway: true,
  safety_pull: flotationSafety({}),
  safety_lateral: setting.input.plan.ground.safety,
});

export const kindAt = (setting: Setting, { met }: WetJoint): SupportKind =>
  supportKind(setting.input.plan.kit, met.joint.support);

/** The stakes of the kit at one joint against what is asked of them; null when they do not reach under the loose top. */
export function kitStakes(
  setting: Setting,
  demand: JointDemand,
  anchor: NonNullable<SupportKind["anchor"]>,
  choice: StakeChoice,
  strength: GroundStrength,
  trace?: Trace,
): StakeSet | null {
  const above = (anchor.length_mm - anchor.embedment_mm) / 1000;
  if (anchor.embedment_mm / 1000 <= leastEmbedment(choice.section)) return null;
  return stakeSet(
    choice,
    anchor.length_mm / 1000,
    anchor.count,
    stakeDemand(setting, demand, above, strength),
    trace,
  );
}
