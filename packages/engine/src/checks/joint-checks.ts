import { supportKind } from "../kit/index.ts";
import type { Part } from "../layout/index.ts";
import { M_PER_IN } from "../units/index.ts";
import { baseJointChecks } from "./base-joints.ts";
import type { LiveMemory } from "./bearing-check.ts";
import type { Frame } from "./frame.ts";
import { groundBearing } from "./ground-bearing.ts";
import { spanOf, type MetJoint } from "./plan-joints.ts";
import { checkRating } from "./rating.ts";
import { checkSeatBearing, checkSeatLength, type SeatKind, type SeatPlace } from "./seat.ts";
import { groupBy, sizeOf, type Setting } from "./setting.ts";
import type { LoadedJoint, PlanSoil } from "./soil.ts";
import type { CheckResult } from "./types.ts";

const idsOf = (met: readonly MetJoint[]): string[] => met.map((m) => m.joint.id);

/** Width of a support's sill along the walkway [m]. */
export function sillWidth(setting: Setting, support: string): number {
  const { sill } = supportKind(setting.input.plan.kit, support);
  const size = sizeOf(setting, sill.size);
  return (sill.lay === "flat" ? size.width_in : size.thickness_in) * M_PER_IN;
}

/** Rise over run of a part, either way. */
function gradeOf({ input }: Setting, part: Part): number {
  if (part.kind === "platform") return 0;
  const deck = (id: string): number => input.layout.joints.find((j) => j.id === id)!.deck_m;
  return Math.abs(deck(part.to) - deck(part.from)) / part.length_m;
}

/** The longest and the steepest of the parts that end at these joints: the seat is held for both at once. */
function endsAt(setting: Setting, joints: readonly MetJoint[]): Pick<SeatKind, "length_m" | "grade"> {
  const parts = joints.flatMap((met) => met.parts);
  return {
    length_m: Math.max(0, ...parts.map(spanOf)),
    grade: Math.max(0, ...parts.map((part) => gradeOf(setting, part))),
  };
}

/** A catch board carries the next part where a module arrives at the joint and a part leaves it. */
export function seatAt(setting: Setting, { joint, parts }: MetJoint): SeatPlace {
  const { end, joint_gap_mm } = setting.input.plan.kit;
  const gap_m = joint_gap_mm / 1000;
  const arrives = parts.some((p) => p.kind === "module" && p.to === joint.id);
  const leaves = parts.some((p) => p.from === joint.id);
  if (end.kind === "catch-board" && arrives && leaves)
    return { on: "catch-board", projection_m: end.projection_mm / 1000, gap_m };
  return { on: "sill", width_m: sillWidth(setting, joint.support), gap_m };
}

/** Seat lengths: once per kind of seat and support. */
export function seatLengthChecks(setting: Setting, joints: readonly MetJoint[]): CheckResult[] {
  const groups = groupBy(joints, (met) => {
    const seat = seatAt(setting, met);
    return seat.on === "catch-board" ? seat.on : `${seat.on}|${met.joint.support}`;
  });
  return [...groups.values()].map((met) => {
    const seat = { ...seatAt(setting, met[0]!), ...endsAt(setting, met) };
    const { name, id } = supportKind(setting.input.plan.kit, met[0]!.joint.support);
    const where = seat.on === "sill" ? `on the sill of "${name}"` : "on the catch board of its neighbour";
    const label = { id: seat.on === "sill" ? `sill.${id}` : "catch-board", where, parts: idsOf(met) };
    return checkSeatLength(seat, label, setting.context);
  });
}

/** Bearing of stringer ends on sills: once per support and frame that ends on it. */
export function seatBearingChecks(
  setting: Setting,
  joints: readonly MetJoint[],
  frameOf: (part: Part) => Frame,
): CheckResult[] {
  const ends = joints.flatMap((met) =>
    met.parts.map((part) => ({ met, frame: frameOf(part), support: met.joint.support })),
  );
  const groups = groupBy(ends, (end) => `${end.support}|${end.frame.name}`);
  return [...groups.values()].flatMap((group) => {
    const { frame, support } = group[0]!;
    const model = setting.modelOf(frame);
    if (!model.ok) return [];
    const gap_m = setting.input.plan.kit.joint_gap_mm / 1000;
    const ends = endsAt(
      setting,
      group.map((g) => g.met),
    );
    const seat: SeatKind = { on: "sill", width_m: sillWidth(setting, support), gap_m, ...ends };
    const { name } = supportKind(setting.input.plan.kit, support);
    const label = {
      id: `${support}.${Math.round(frame.span_m * 1000)}mm`,
      where: `on the sill of "${name}", ${frame.name}`,
      parts: [...new Set(group.map((g) => g.met.joint.id))],
    };
    return [checkSeatBearing(seat, model.value, setting.cases, label, setting.context)];
  });
}

/** Ground under every joint; joints with the very same inputs share a result. */
export function bearingChecks(setting: Setting, soil: PlanSoil): CheckResult[] {
  const { loaded, memory } = soil;
  const demand = { cases: setting.cases, rungs: setting.rungs, safety: setting.input.plan.ground.safety };
  return [
    ...groundBearing(setting, soil, demand),
    ...baseJointChecks(setting, loaded, demand, memory),
    ...ratingChecks(setting, loaded, memory),
  ];
}

/** Supports with a rating: the heaviest joint of each kind against it. */
function ratingChecks(setting: Setting, loaded: readonly LoadedJoint[], memory: LiveMemory): CheckResult[] {
  const rated = loaded.filter(({ joint }) => joint.support.rating_n !== null);
  return [...groupBy(rated, ({ joint }) => joint.support.id).values()].map((group) =>
    checkRating(
      group.map((g) => g.joint),
      setting.cases,
      { parts: idsOf(group.map((g) => g.met)) },
      setting.context,
      memory,
    ),
  );
}
