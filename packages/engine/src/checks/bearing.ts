import { recordValue, type Source, type Trace } from "../formula/index.ts";
import {
  allowedOf,
  allowedPressure,
  bearingLength,
  bearingModes,
  footLoad,
  footPressure,
  netBearingCapacity,
} from "../ground/index.ts";
import type { SupportKind } from "../kit/index.ts";
import { largestJointReaction, weightOf, type Train } from "../structure/index.ts";
import { kilograms, metres, qty, type Qty } from "../units/index.ts";
import { reachOf } from "./frame.ts";
import { recordStrength, type GroundStrength } from "./ground-strength.ts";
import type { Verdict } from "./result.ts";
import type { LoadCase } from "./walk-demand.ts";

/** A joint as the ground feels it. */
export interface BearingJoint {
  /** Spans on either side, 0 for none [m]. */
  readonly left_m: number;
  readonly right_m: number;
  /** Half of the parts on either side and the support itself, soaked [kg]. */
  readonly dead_kg: number;
  readonly support: SupportKind;
  readonly clear_width_m: number;
  /** Deck that bears on the joint while both spans are full [m2]; half of both spans when left out. */
  readonly deck_m2?: number;
}

export interface Patch {
  readonly along_m: number;
  readonly across_m: number;
}

/** The most loaded foot, or the part of a single foot that bears. */
export interface FootDemand {
  readonly load: number;
  readonly patch: Patch;
}

/** How a support stands: its feet that differ, their number, and the sum of their offsets squared. */
export interface Stance {
  readonly joint: BearingJoint;
  readonly feet: readonly (Patch & { readonly offset_m: number })[];
  readonly count: number;
  readonly spread_m2: number;
}

/** Works out what does not depend on the load. Mirrored feet are kept once. */
export function stanceOf(joint: BearingJoint): Stance {
  const all = joint.support.feet.map((f) => ({
    along_m: f.along_mm / 1000,
    across_m: f.across_mm / 1000,
    offset_m: Math.abs(f.offset_across_mm) / 1000,
  }));
  const feet = all.filter(
    (f, i) =>
      all.findIndex(
        (g) => g.along_m === f.along_m && g.across_m === f.across_m && g.offset_m === f.offset_m,
      ) === i,
  );
  const spread_m2 = all.reduce((sum, f) => sum + f.offset_m ** 2, 0);
  return { joint, feet, count: all.length, spread_m2 };
}

/** Live load on the joint, and its moment about the walkway's middle. */
export interface LiveLoad {
  readonly N: number;
  readonly m: number;
}

/** Deck that a joint carries when its spans are full of people from edge to edge [m2]. */
export const deckOn = ({ deck_m2, left_m, right_m, clear_width_m }: BearingJoint): number =>
  deck_m2 ?? ((left_m + right_m) / 2) * clear_width_m;

/** Largest live load and moment on a joint, each load as far out as it can stand. */
export function liveOnJoint(joint: BearingJoint, load: LoadCase): LiveLoad {
  if (load.area_pa !== undefined) return { N: load.area_pa * deckOn(joint), m: 0 };
  const train: Train = load.loads;
  const N = largestJointReaction(train, joint.left_m, joint.right_m).value;
  const moments = load.loads.map(({ at, weight, cart }) => ({
    at,
    weight: weight * Math.max(0, reachOf(joint.clear_width_m, cart)),
  }));
  return { N, m: largestJointReaction(moments, joint.left_m, joint.right_m).value };
}

/** Load on the worst foot and the patch it presses; a single foot bears on Meyerhof's effective length. */
export function footDemand(stance: Stance, live: LiveLoad, trace?: Trace): FootDemand {
  const dead = weightOf(
    { m: kilograms(stance.joint.dead_kg) },
    trace,
    "parts on the joint and the support, soaked",
  );
  const N = qty(dead + live.N, "N");
  const m = qty(live.m, "N*m");
  if (stance.spread_m2 < 1e-9) return singleFoot(stance, N, m, trace);
  const n = qty(stance.count, "1");
  const Q = qty(stance.spread_m2, "m2");
  let worst: FootDemand | undefined;
  let offset = 0;
  for (const patch of stance.feet) {
    const load = footLoad({ N, m, n, o: metres(patch.offset_m), Q });
    if (worst && load / area(patch) <= worst.load / area(worst.patch)) continue;
    worst = { load, patch };
    offset = patch.offset_m;
  }
  if (trace) footLoad({ N, m, n, o: metres(offset), Q }, trace);
  return worst!;
}

const area = (p: Patch): number => p.along_m * p.across_m;

function singleFoot(stance: Stance, N: Qty<"N">, m: Qty<"N*m">, trace?: Trace): FootDemand {
  const foot = stance.feet[0]!;
  const c = metres(foot.across_m);
  const e = metres(Math.min(m / N, c / 2));
  const across_m = bearingLength({ c, e }, trace);
  return { load: N / stance.count, patch: { along_m: foot.along_m, across_m } };
}

/** A stiff mat of roots under the feet, and the weaker mud below it. */
export interface RootMat {
  readonly thickness_m: number;
  readonly mud: GroundStrength;
}

/**
 * Pressure that this patch may put on the ground [Pa]; 0 when nothing of the foot bears. Over a root mat the weaker of
 * two: bearing as on even ground of strength su, and pressing the mat into the mud.
 */
export function patchCapacity(
  patch: Patch,
  su: Qty<"Pa">,
  safety: number,
  mat: RootMat | null = null,
  trace?: Trace,
): Qty<"Pa"> {
  if (patch.across_m <= 1e-6) return qty(0, "Pa");
  const B = metres(Math.min(patch.along_m, patch.across_m));
  const L = metres(Math.max(patch.along_m, patch.across_m));
  if (mat) {
    const below = { su, mat: { thickness_m: mat.thickness_m, mud_su: mat.mud.su } };
    const part = { shape: "rectangle", B, L, area: qty(B * L, "m2") } as const;
    return allowedOf(bearingModes(part, below, 0, trace), safety, trace);
  }
  const q = netBearingCapacity({ su, B, L, D: metres(0) }, trace);
  return allowedPressure({ q, F: qty(safety, "1") }, trace);
}

/** Pressure over capacity of one case. */
export function bearingUtilisation(
  stance: Stance,
  live: LiveLoad,
  su: Qty<"Pa">,
  safety: number,
  mat: RootMat | null = null,
): number {
  const { load, patch } = footDemand(stance, live);
  const capacity = patchCapacity(patch, su, safety, mat);
  return capacity > 0 ? load / area(patch) / capacity : Infinity;
}

/** The verdict of one joint under its governing case, with its whole working. */
export function bearingVerdict(
  stance: Stance,
  load: LoadCase,
  live: LiveLoad,
  strength: GroundStrength,
  safety: number,
  mat: RootMat | null = null,
): Verdict<"Pa"> {
  const working: Trace = [];
  load.explain(working);
  recordValue(working, {
    id: "structure.joint-reaction",
    title: "Largest live load on the joint",
    symbol: "N_l",
    value: live.N,
    unit: "N",
    source: JOINT_SOURCE,
    how: "largest over all places of the train",
    note: load.name,
  });
  recordValue(working, {
    id: "check.joint-moment",
    title: "Its moment about the middle of the walkway",
    symbol: "m",
    value: live.m,
    unit: "N*m",
    source: JOINT_SOURCE,
    how: "every load as far out as it can stand",
  });
  const { load: F, patch } = footDemand(stance, live, working);
  const [a, b] = [metres(patch.along_m), metres(Math.max(patch.across_m, 1e-6))];
  const demand = footPressure({ F: qty(F, "N"), a, b }, working);
  recordStrength(strength, working);
  if (mat) recordStrength(mat.mud, working, "of the mud under the root mat");
  const capacity = patchCapacity(patch, strength.su, safety, mat, working);
  return { unit: "Pa", demand, capacity, governs: load.name, working };
}

const JOINT_SOURCE: Source = {
  id: "statics",
  title: "Statics",
  at: "influence line of a joint; load by its distance from the middle",
  status: "computed",
};
