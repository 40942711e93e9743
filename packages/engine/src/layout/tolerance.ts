import { defineFormula } from "../formula/index.ts";
import { groundAt, rectangle, signedDistance, type Plot, type Ring, type Site } from "../site/index.ts";
import { DomainError } from "../units/index.ts";
import { isArrival } from "./arrival.ts";
import { footReach, type LayoutFacts } from "./facts.ts";
import { shutAreas } from "./fields.ts";
import { PreparedArea } from "./prepared-area.ts";
import { entersKeepOff, mayStand, noFootAreas } from "./standing.ts";
import type { Joint, Layout, LayoutChoice, Part } from "./types.ts";

/** Shifts are tried in steps of this much, up to so much [m]. */
export const SHIFT_STEP_M = 0.01;
export const MOST_SHIFT_M = 0.3;

/** What is left of a seat, along or across, before the least that a module end must keep. */
export const seatSlack = defineFormula(
  {
    id: "layout.seat-slack",
    title: "How far a support may shift before its seat is too short",
    symbol: "s_0",
    unit: "m",
    text: "max(s - s_min, 0)",
    inputs: { s: "m", s_min: "m" },
    validity:
      "s seat of a module end as drawn, s_min the least it must keep; the module stays where it lies.",
    source: { id: "causey-setting-out", title: "Plane geometry, by hand", status: "computed" },
  },
  ({ s, s_min }) => Math.max(s - s_min, 0),
);

export type ShiftRule =
  "seat" | "ground-known" | "support-stands" | "support-height" | "closed-area" | "keep-off" | "plot-reach";

/** How far the support of a joint may shift from its place, on each of four sides. */
export interface JointTolerance {
  readonly joint: string;
  /** Whole steps of 10 mm, `MOST_SHIFT_M` at most; negative sides are back along the way and to its left [m]. */
  readonly ahead_m: number;
  readonly back_m: number;
  readonly right_m: number;
  readonly left_m: number;
  /** The rule that one step more would break on each side; null = none within the farthest shift tried. */
  readonly broken_by: {
    readonly ahead: ShiftRule | null;
    readonly back: ShiftRule | null;
    readonly right: ShiftRule | null;
    readonly left: ShiftRule | null;
  };
  /** Every rule holds with the support off by the slop on any side, and on any two at once. */
  readonly holds_slop: boolean;
}

export interface ToleranceInput {
  readonly layout: Layout;
  readonly site: Site;
  readonly facts: LayoutFacts;
  readonly laying: { readonly from: string; readonly to: string };
  readonly choice: Pick<LayoutChoice, "min_clear_mm" | "slop_mm">;
  /** What the seat allows at a joint, along and across the way, from `seatSlack` [m]. */
  readonly slack: (joint: Joint) => { readonly along_m: number; readonly across_m: number };
}

/**
 * How far each support may shift while laying before a rule breaks: found by trying the rules at places 10 mm apart,
 * up to 300 mm, along and across the way. The support and the near ends of the parts on it shift; the far ends stay.
 *
 * Tried: seat length, known ground, the ground's fall under each foot and its least level, the support's height range
 * and clearance, closed areas and their buffers, keep-off circles, reach of a plot. Not tried: overlaps with
 * neighbours, grade, and strength, which the slop of laying covers in the checks.
 */
export function layingTolerance(input: ToleranceInput): JointTolerance[] {
  const probe = shiftProbe(input);
  return input.layout.joints.map((joint): JointTolerance => {
    const sides = {
      ahead: farthest((d) => probe(joint, d, 0)),
      back: farthest((d) => probe(joint, -d, 0)),
      right: farthest((d) => probe(joint, 0, d)),
      left: farthest((d) => probe(joint, 0, -d)),
    };
    const slop = input.choice.slop_mm / 1000;
    const off = [-slop, 0, slop];
    return {
      joint: joint.id,
      ahead_m: sides.ahead.shift_m,
      back_m: sides.back.shift_m,
      right_m: sides.right.shift_m,
      left_m: sides.left.shift_m,
      broken_by: {
        ahead: sides.ahead.rule,
        back: sides.back.rule,
        right: sides.right.rule,
        left: sides.left.rule,
      },
      holds_slop: off.every((along) => off.every((across) => probe(joint, along, across) === null)),
    };
  });
}

function farthest(rule: (shift_m: number) => ShiftRule | null): {
  readonly shift_m: number;
  readonly rule: ShiftRule | null;
} {
  const steps = Math.round(MOST_SHIFT_M / SHIFT_STEP_M);
  for (let n = 0; n <= steps; n++) {
    const broken = rule((n * MOST_SHIFT_M) / steps);
    if (broken !== null) return { shift_m: (Math.max(0, n - 1) * MOST_SHIFT_M) / steps, rule: broken };
  }
  return { shift_m: MOST_SHIFT_M, rule: null };
}

/**
 * The first rule that breaks when the support of a joint is shifted along and across the way [m]; null when all hold.
 * Ahead and to the right are positive.
 */
export function shiftProbe(
  input: ToleranceInput,
): (joint: Joint, along: number, across: number) => ShiftRule | null {
  const { layout, site, facts, laying, choice } = input;
  const shut = shutAreas(site, laying.from, laying.to).map((a) => new PreparedArea(a));
  const noFoot = new Map(
    facts.supports.map((k) => [
      k.id,
      noFootAreas(k, site, laying.from, laying.to).map((a) => new PreparedArea(a)),
    ]),
  );
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const partsAt = partsByJoint(layout);
  const reaching = new Map<string, Plot[]>();
  for (const r of layout.reached) {
    const plot = site.plots.find((p) => p.id === r.plot);
    if (plot) reaching.set(r.joint, [...(reaching.get(r.joint) ?? []), plot]);
  }
  return (joint, along, across) => {
    const kind = facts.supports.find((k) => k.id === joint.support);
    if (!kind) throw new DomainError("no-such-support", { support: joint.support });
    const slack = input.slack(joint);
    if (Math.abs(along) > slack.along_m + 1e-9 || Math.abs(across) > slack.across_m + 1e-9) return "seat";
    const h = (joint.heading_deg * Math.PI) / 180;
    const x = joint.x + along * Math.sin(h) + across * Math.cos(h);
    const y = joint.y + along * Math.cos(h) - across * Math.sin(h);
    const ground = groundAt(site.terrain, x, y);
    if (Number.isNaN(ground)) return "ground-known";
    if (!mayStand(kind, site.terrain, noFoot.get(kind.id)!, x, y, joint.heading_deg, false))
      return "support-stands";
    const height = joint.deck_m - facts.depth_m - ground;
    const least = Math.max(kind.height_min_mm, choice.min_clear_mm) / 1000;
    if (height < least - 1e-9 || height > kind.height_max_mm / 1000 + 1e-9) return "support-height";
    if (entersKeepOff(kind, site.plots, footReach(kind.feet), x, y, joint.heading_deg)) return "keep-off";
    for (const part of partsAt.get(joint.id) ?? []) {
      const ring = shifted(part, joint, [x, y], joints, facts);
      if (shut.some((a) => a.touches(ring))) return "closed-area";
      if (site.plots.some((p) => signedDistance([[ring]], p.x, p.y) < p.keep_off_m)) return "keep-off";
    }
    return (reaching.get(joint.id) ?? []).every((p) => isArrival(p, x, y)) ? null : "plot-reach";
  };
}

function partsByJoint(layout: Layout): Map<string, Part[]> {
  const parts = new Map<string, Part[]>();
  for (const part of layout.parts) {
    const ids =
      part.kind === "module"
        ? [part.from, part.to]
        : [part.from, part.exits.ahead, part.exits.left, part.exits.right];
    for (const id of ids) parts.set(id, [...(parts.get(id) ?? []), part]);
  }
  return parts;
}

/** Outline of a part when one of its joints lies elsewhere: a module swings about its other end, a platform shifts whole. */
function shifted(
  part: Part,
  joint: Joint,
  to: readonly [number, number],
  joints: ReadonlyMap<string, Joint>,
  facts: LayoutFacts,
): Ring {
  if (part.kind === "platform")
    return part.outline[0]![0]!.map(([x, y]) => [x + to[0] - joint.x, y + to[1] - joint.y] as const);
  const far = joints.get(part.from === joint.id ? part.to : part.from)!;
  const turn = part.from === joint.id ? 1 : -1;
  const heading = (Math.atan2(turn * (far.x - to[0]), turn * (far.y - to[1])) * 180) / Math.PI;
  return rectangle((far.x + to[0]) / 2, (far.y + to[1]) / 2, heading, part.length_m, facts.width_m);
}
