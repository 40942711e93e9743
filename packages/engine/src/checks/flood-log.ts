import { lateral, leastEmbedment, facingOf, modulusOf, woodMoment } from "../anchors/index.ts";
import { breaksFirst, impactForce, impactTime, tether, type Link } from "../flood/index.ts";
import type { Trace } from "../formula/index.ts";
import { rectangleSectionModulus } from "../structure/index.ts";
import { inches, metres, millimetres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { kindAt, stakeBending, stakeChoice } from "./anchor-joint.ts";
import { pileDepthAt } from "./base-joints.ts";
import type { FloodCase } from "./flood-cases.ts";
import { floodBase, partIds } from "./flood-side.ts";
import { partDepth, zeroOf } from "./flood-demand.ts";
import { midspanForce, tetherFactor } from "./flood-formulas.ts";
import { dragOnShape, type WetJoint, type WetLine, type WetPart } from "./flood-loads.ts";
import { MISSING_STRENGTH } from "./ground-strength.ts";
import { cannotCheck, notApplicable, resultOf } from "./result.ts";
import { sizeOf, type Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";

/** What gives way at one joint, and the stringer of the longest part: strengths as they are, no ratio taken. */
function linksOf(
  setting: Setting,
  joint: WetJoint,
  longest: WetPart,
  e: Qty<"m">,
  trace?: Trace,
): Link[] | null {
  const kind = kindAt(setting, joint);
  const { anchor, piles } = kind;
  const { strength } = joint.met;
  if ((anchor || piles) && !strength) return null;
  const links: Link[] = [stringerLink(setting, longest, trace)];
  if (!anchor && !piles)
    return [{ name: "the module slides off: nothing ties it sideways", capacity_n: 0 }, ...links];
  const su = strength!.su;
  if (piles) {
    const L = metres(pileDepthAt(setting, joint.met.joint, kind));
    const side = lateral({ b: millimetres(piles.shaft_mm), L, e, su, head: "free", wood: null }, trace);
    return [{ name: "the screw piles are pushed over", capacity_n: piles.count * side.ground_n }, ...links];
  }
  const choice = stakeChoice(setting, anchor!.size, []);
  const L = metres(anchor!.embedment_mm / 1000);
  if (!choice || L <= leastEmbedment(choice.section))
    return [{ name: "the stakes are pushed over: they are too short to hold", capacity_n: 0 }, ...links];
  const wood = woodMoment({ S: modulusOf(choice.section, trace), f_b: choice.bending_pa }, trace);
  const side = lateral({ b: facingOf(choice.section), L, e, su, head: "free", wood }, trace);
  return [
    { name: "the stakes of a joint are pushed over", capacity_n: anchor!.count * side.ground_n },
    { name: "the stakes of a joint break", capacity_n: anchor!.count * (side.wood_n ?? Infinity) },
    ...links,
  ];
}

function stringerLink(setting: Setting, { length_m }: WetPart, trace?: Trace): Link {
  const { size } = setting.input.plan.kit.stringers;
  const row = sizeOf(setting, size);
  const S = rectangleSectionModulus({ b: inches(row.width_in), d: inches(row.thickness_in) }, trace);
  const M_w = woodMoment({ S, f_b: stakeBending(setting, size) ?? qty(0, "Pa") }, trace);
  return {
    name: "the outer stringer breaks sideways",
    capacity_n: midspanForce({ M_w, l: metres(length_m) }, trace),
  };
}

/** A drifting log at the weakest joint: what it breaks first, and the rope that keeps a module that has broken off. */
export function logCheck(
  setting: Setting,
  line: WetLine,
  cases: readonly FloodCase[],
  speed: Qty<"m/s">,
): CheckResult {
  const base = {
    ...floodBase("log", "A drifting log", partIds(line)),
    rule: impactForce.spec.source,
    caution:
      "One hit on one joint; wood by the stress it may carry, so it breaks later than said; the screws between module and support are not in it. Choose what may go first: a screw is cheaper than a stringer.",
  };
  const { log_kg } = setting.input.plan.proof.flood;
  if (log_kg === null) return notApplicable(base, "not told; drifting logs and boards are not looked at");
  const highest = cases.reduce((a, b) => (b.z_m > a.z_m ? b : a));
  const wet = line.parts.filter((p) => partDepth(highest, p) > 0);
  if (wet.length === 0) return notApplicable(base, "no level reaches the ground under it");
  const longest = wet.reduce((a, b) => (b.length_m > a.length_m ? b : a));
  const joints = line.joints.filter((j) => highest.z_m > j.met.joint.ground_m);
  const e = (j: WetJoint): Qty<"m"> =>
    metres(Math.min(j.met.joint.support_height_m, highest.z_m - j.met.joint.ground_m));
  const working: Trace = [];
  const F = impactForce({ m: qty(log_kg, "kg"), V: speed, t_i: impactTime({}, working) }, working);
  let worst: { joint: WetJoint; first: Link } | null = null;
  for (const joint of weakestOfEach(joints)) {
    const links = linksOf(setting, joint, longest, e(joint));
    if (!links) return cannotCheck(base, [MISSING_STRENGTH]);
    const found = breaksFirst(F, links)!.weakest;
    if (!worst || found.capacity_n < worst.first.capacity_n) worst = { joint, first: found };
  }
  if (!worst) return notApplicable(base, "no joint stands in the water");
  linksOf(setting, worst.joint, longest, e(worst.joint), working);
  const capacity = newtons(worst.first.capacity_n);
  const rope = ropeWords(setting, highest, worst.joint, longest, speed, working);
  const say = (n: number): string => showQuantity(n, "N", setting.context.units);
  return resultOf(
    base,
    {
      unit: "N",
      demand: F,
      capacity,
      governs: `joint ${worst.joint.met.joint.id}, ${highest.name}`,
      working,
    },
    {
      carries: `A log of ${showQuantity(log_kg, "kg", setting.context.units)} hits with ${say(F)}. First goes: ${worst.first.name}, at ${say(capacity)}. ${rope}`,
      change:
        F <= capacity
          ? null
          : "Needs a rope on every module, or more or stouter stakes; or accept that it goes, and fetch it.",
    },
  );
}

/** One joint of each kind, ground and height to a centimetre. */
function weakestOfEach(joints: readonly WetJoint[]): WetJoint[] {
  const seen = new Map<string, WetJoint>();
  for (const j of joints) {
    const { support, support_height_m } = j.met.joint;
    const key = `${support}|${j.met.strength?.su}|${support_height_m.toFixed(2)}`;
    if (!seen.has(key)) seen.set(key, j);
  }
  return [...seen.values()];
}

function ropeWords(
  setting: Setting,
  highest: FloodCase,
  { met }: WetJoint,
  part: WetPart,
  speed: Qty<"m/s">,
  trace: Trace,
): string {
  const rise = metres(Math.max(0.1, highest.z_m - met.joint.ground_m));
  const place = {
    zero_m: zeroOf(part),
    depth_m: Math.max(partDepth(highest, part), zeroOf(part) + 1),
    angle: part.angle,
  };
  const drag = newtons(dragOnShape(setting, part.shape, place, speed).force_n);
  const rope = tether({ rise, rope: null, drag, factor: tetherFactor({}, trace) }, trace);
  const { units } = setting.context;
  return `A module that has broken off stays on a rope of ${showQuantity(rope.rope_m, "m", units)}, fixed at the foot of a stake, that holds ${showQuantity(rope.strength_n, "N", units)}; it drifts ${showQuantity(rope.radius_m, "m", units)} about it.`;
}
