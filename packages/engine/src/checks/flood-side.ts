import { facingOf, lateral, leastEmbedment, modulusOf, swayStrength, woodMoment } from "../anchors/index.ts";
import { dragForce } from "../flood/index.ts";
import type { Trace } from "../formula/index.ts";
import { metres, millimetres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { kindAt, stakeChoice } from "./anchor-joint.ts";
import { pileDepthAt } from "./base-joints.ts";
import type { FloodCase } from "./flood-cases.ts";
import { sideAllowed } from "./flood-formulas.ts";
import type { Push, WetJoint, WetLine, WetPart } from "./flood-loads.ts";
import { PARTED } from "./flood-words.ts";
import { recordStrength } from "./ground-strength.ts";
import { resultOf } from "./result.ts";
import type { Setting } from "./setting.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import { stakeShare } from "./uplift.ts";

export type Ids = ReadonlyMap<string, WetJoint>;

export const floodBase = (id: string, title: string, parts: readonly string[]): CheckBase => ({
  id: `flood.${id}`,
  kind: "flood",
  title,
  parts,
  rule: dragForce.spec.source,
  caution: PARTED,
});

export const partIds = (line: WetLine): string[] => line.parts.map((p) => p.part.id);

/** Side force that the stakes or piles of one joint may hold at a height [N]; null without strength; 0 without any. */
export function sideOfJoint(setting: Setting, joint: WetJoint, e_m: number, trace?: Trace): number | null {
  const kind = kindAt(setting, joint);
  const { anchor, piles } = kind;
  if (!anchor && !piles) return 0;
  const { strength } = joint.met;
  if (!strength) return null;
  const F = qty(setting.input.plan.ground.safety, "1");
  const su = swayStrength({ su: strength.su }, trace);
  const e = metres(e_m);
  if (piles) {
    const L = metres(pileDepthAt(setting, joint.met.joint, kind));
    const side = lateral({ b: millimetres(piles.shaft_mm), L, e, su, head: "free", wood: null }, trace);
    return sideAllowed({ n: qty(piles.count, "1"), H_u: newtons(side.ground_n), F }, trace);
  }
  const choice = stakeChoice(setting, anchor!.size, []);
  const L = metres(anchor!.embedment_mm / 1000);
  if (!choice || L <= leastEmbedment(choice.section)) return 0;
  const wood = woodMoment({ S: modulusOf(choice.section, trace), f_b: choice.bending_pa }, trace);
  const side = lateral({ b: facingOf(choice.section), L, e, su, head: "free", wood }, trace);
  const ground = side.ground_n / F;
  const breaks = side.wood_n ?? Infinity;
  const [H_u, by] = breaks < ground ? [breaks, qty(1, "1")] : [side.ground_n, F];
  return sideAllowed({ n: qty(anchor!.count, "1"), H_u: newtons(H_u), F: by }, trace);
}

export const jointsUnder = (part: WetPart, ids: Ids): WetJoint[] =>
  part.joints.flatMap((j) => ids.get(j.joint.id) ?? []);

/** Half of what the supports under a part hold sideways [N]; remembered by what it follows from. */
export function sideMemory(setting: Setting, ids: Ids): (part: WetPart, e_m: number) => number | null {
  const known = new Map<string, number | null>();
  return (part, e_m) => {
    let sum = 0;
    for (const joint of jointsUnder(part, ids)) {
      const { support, support_height_m } = joint.met.joint;
      const at = Math.ceil(e_m * 100) / 100;
      const key = `${support}|${support_height_m.toFixed(3)}|${joint.met.strength?.su}|${at.toFixed(2)}`;
      if (!known.has(key)) known.set(key, sideOfJoint(setting, joint, at));
      const side = known.get(key)!;
      if (side === null) return null;
      sum += side * stakeShare({});
    }
    return sum;
  };
}

export interface Judged {
  readonly part: WetPart;
  readonly push: Push;
  readonly side: number;
}

/** The part with the largest push over what its stakes hold; `strength` when the ground's is not known. */
export function worstPart(
  parts: readonly WetPart[],
  pushOf: (p: WetPart) => Push | null,
  sideOf: (part: WetPart, e_m: number) => number | null,
): Judged | "strength" | "tables" | null {
  let worst: Judged | null = null;
  const use = ({ push, side }: Judged): number => (side > 0 ? push.force_n / side : push.force_n * 1e9);
  for (const part of parts) {
    const push = pushOf(part);
    if (!push) return "tables";
    if (push.force_n <= 0) continue;
    const side = sideOf(part, push.acts_at_m);
    if (side === null) return "strength";
    const judged = { part, push, side };
    if (!worst || use(judged) > use(worst)) worst = judged;
  }
  return worst;
}

export function sideResult(
  setting: Setting,
  base: CheckBase,
  { part, push, side }: Judged,
  demand: Qty<"N">,
  flood: FloodCase,
  ids: Ids,
  working: Trace,
): CheckResult {
  const first = jointsUnder(part, ids)[0];
  if (first?.met.strength) recordStrength(first.met.strength, working);
  if (first) sideOfJoint(setting, first, Math.ceil(push.acts_at_m * 100) / 100, working);
  const say = (n: number): string => showQuantity(n, "N", setting.context.units);
  const capacity = newtons(side);
  return resultOf(
    base,
    { unit: "N", demand, capacity, governs: `${flood.name}, ${part.part.id}`, working },
    {
      carries:
        side > 0
          ? `The stakes under ${part.part.id} may hold ${say(side)} sideways; the water pushes with ${say(demand)}, ${showQuantity(push.acts_at_m, "m", setting.context.units)} over the ground.`
          : `Nothing holds ${part.part.id} sideways once it is under water; the water pushes with ${say(demand)}.`,
      change:
        demand <= capacity
          ? null
          : `Needs stakes that hold ${say(demand - side)} more sideways: see the anchors, which name how many of which length.`,
    },
  );
}
