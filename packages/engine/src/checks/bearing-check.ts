import { showQuantity } from "../units/index.ts";
import {
  bearingUtilisation,
  bearingVerdict,
  liveOnJoint,
  stanceOf,
  type BearingJoint,
  type LiveLoad,
  type RootMat,
} from "./bearing.ts";
import { SOIL } from "./cautions.ts";
import { MISSING_STRENGTH, type GroundStrength } from "./ground-strength.ts";
import type { CheckContext } from "./input.ts";
import { carriesText, type Rung } from "./ladder.ts";
import { cannotCheck, resultOf } from "./result.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

/** Remembers what a load puts on joints of one geometry: soil differs from joint to joint, the loads do not. */
export interface LiveMemory {
  readonly of: (joint: BearingJoint, load: LoadCase) => LiveLoad;
}

export function liveMemory(): LiveMemory {
  const known = new Map<string, Map<LoadCase, LiveLoad>>();
  return {
    of: (joint, load) => {
      const key = `${joint.left_m}|${joint.right_m}|${joint.clear_width_m}|${joint.deck_m2 ?? ""}`;
      let row = known.get(key);
      if (!row) known.set(key, (row = new Map<LoadCase, LiveLoad>()));
      let live = row.get(load);
      if (!live) row.set(load, (live = liveOnJoint(joint, load)));
      return live;
    },
  };
}

export interface BearingLabel {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly string[];
}

export interface BearingDemand {
  readonly cases: readonly LoadCase[];
  readonly rungs: readonly Rung[];
  /** Ratio of bearing capacity to pressure that the plan asks for. */
  readonly safety: number;
}

const baseOf = (label: BearingLabel): CheckBase => ({
  id: `bearing.${label.id}`,
  kind: "bearing",
  title: `Bearing of the ground, ${label.name}`,
  parts: label.parts,
  rule: {
    id: "skempton-1951",
    title: "Skempton's bearing capacity of clay, with the plan's chosen safety",
    status: "seen",
  },
  caution: SOIL,
});

/**
 * Pressure under the worst foot of a support, soaked parts and people and cart as far to one side as they can
 * stand, against Skempton's net capacity over the plan's safety. Feet on the surface, no depth counted. Over a root mat the
 * weaker of bearing and pressing through it.
 */
export function checkBearing(
  joint: BearingJoint,
  strength: GroundStrength | null,
  demand: BearingDemand,
  label: BearingLabel,
  context: CheckContext,
  memory: LiveMemory = liveMemory(),
  mat: RootMat | null = null,
): CheckResult {
  const base = baseOf(label);
  if (!strength) return cannotCheck(base, [MISSING_STRENGTH]);
  if (joint.support.feet.length === 0)
    return cannotCheck(base, [`the feet of the support "${joint.support.name}"`]);
  const { cases, rungs, safety } = demand;
  const { su } = strength;
  const stance = stanceOf(joint);
  const use = (load: LoadCase): number => bearingUtilisation(stance, memory.of(joint, load), su, safety, mat);
  let worst = cases[0]!;
  let most = -1;
  for (const load of cases) {
    const utilisation = use(load);
    if (utilisation > most) [worst, most] = [load, utilisation];
  }
  const live = memory.of(joint, worst);
  const verdict = bearingVerdict(stance, worst, live, strength, safety, mat);
  const carries = carriesText(rungs, (load) => use(load) <= 1, "less than one person on this ground");
  return resultOf(base, verdict, {
    carries,
    change:
      most <= 1
        ? null
        : largerFoot(joint, (bigger) => bearingUtilisation(stanceOf(bigger), live, su, safety, mat), context),
  });
}

/** A round step of a builder's tape [mm]. */
const STEP_MM = { us: 25.4, metric: 25 } as const;
const MOST_STEPS = 48;

/** The least growth of every foot that passes: along first, then both ways. */
function largerFoot(
  joint: BearingJoint,
  use: (bigger: BearingJoint) => number,
  { units }: CheckContext,
): string {
  const grown = (along: number, across: number): BearingJoint => ({
    ...joint,
    support: {
      ...joint.support,
      feet: joint.support.feet.map((f) => ({
        ...f,
        along_mm: f.along_mm + along,
        across_mm: f.across_mm + across,
      })),
    },
  });
  const ways = [(by: number) => grown(by, 0), (by: number) => grown(by, by)];
  for (const way of ways)
    for (let i = 1; i <= MOST_STEPS; i++) {
      const bigger = way(i * STEP_MM[units]);
      if (use(bigger) <= 1) {
        const foot = bigger.support.feet[0]!;
        const say = (mm: number): string => showQuantity(mm / 1000, "m", units);
        return `Would pass with feet ${say(foot.along_mm)} along by ${say(foot.across_mm)} across, on a sole board as stiff as that.`;
      }
    }
  return "No ordinary foot passes on this ground: keep off it, bridge it, or go by boat.";
}
