import { capacityFactor } from "../ground/index.ts";
import { metres, qty } from "../units/index.ts";
import {
  footDemand,
  stanceOf,
  type BearingJoint,
  type LiveLoad,
  type Patch,
  type Stance,
} from "./bearing.ts";
import type { LiveMemory } from "./bearing-check.ts";
import type { LoadCase } from "./walk-demand.ts";

/** The load of a joint that presses the ground most, as pressure and as net capacity over strength under it. */
export interface JointLoad {
  readonly load: LoadCase;
  readonly live: LiveLoad;
  readonly stance: Stance;
  readonly patch: Patch;
  /** Under the worst foot [Pa]. */
  readonly pressure_pa: number;
  /** Net ultimate capacity over strength, without unit. */
  readonly factor: number;
}

/** Nothing of the foot bears: kept as a sliver, so that the pressure stays a number. */
const SLIVER_M = 1e-6;

/** Net capacity over strength of a patch; through a root mat where one is told. */
export function patchFactor(patch: Patch, mat_m: number | null): number {
  const [a, b] = [Math.max(patch.along_m, SLIVER_M), Math.max(patch.across_m, SLIVER_M)];
  const part = {
    shape: "rectangle",
    B: metres(Math.min(a, b)),
    L: metres(Math.max(a, b)),
    area: qty(a * b, "m2"),
  } as const;
  return capacityFactor(part, 0, mat_m);
}

/** The governing case of a joint: the largest pressure over capacity, whatever the strength. Needs feet and a case. */
export function jointLoad(
  joint: BearingJoint,
  cases: readonly LoadCase[],
  mat_m: number | null,
  memory: LiveMemory,
): JointLoad {
  const stance = stanceOf(joint);
  const all = cases.map((load): JointLoad => {
    const live = memory.of(joint, load);
    const { load: F, patch } = footDemand(stance, live);
    const area = Math.max(patch.along_m, SLIVER_M) * Math.max(patch.across_m, SLIVER_M);
    return { load, live, stance, patch, pressure_pa: F / area, factor: patchFactor(patch, mat_m) };
  });
  return all.reduce((a, b) => (b.pressure_pa / b.factor > a.pressure_pa / a.factor ? b : a));
}

/** What the ground feels of a joint, as one word: joints of the same word have the same load. */
export const loadWord = (joint: BearingJoint): string =>
  [joint.left_m, joint.right_m, joint.dead_kg, joint.support.id].join("|");
