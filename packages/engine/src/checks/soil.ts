import { hasBase } from "../kit/index.ts";
import type { BearingJoint } from "./bearing.ts";
import { liveMemory, type LiveMemory } from "./bearing-check.ts";
import { bearingJoint, soakedMasses, type MetJoint } from "./plan-joints.ts";
import type { Setting } from "./setting.ts";
import { jointBands, kindGround, type JointBand, type KindGround } from "./soil-field.ts";
import { jointLoad, loadWord, type JointLoad } from "./soil-load.ts";

/** A joint with what it presses on the ground. */
export interface LoadedJoint {
  readonly met: MetJoint;
  readonly joint: BearingJoint;
}

/** A joint that stands on the ground, with what is known of the ground under it. */
export interface SoilJoint extends LoadedJoint {
  /** Joints of the same word have the same load. */
  readonly word: string;
  readonly load: JointLoad;
  /** The load that governs as on even ground: the same without a root mat. */
  readonly plain: JointLoad;
  readonly ground: KindGround;
  /** Null where nothing is known of the strength. */
  readonly band: JointBand | null;
}

/** The ground under a whole plan: worked out once for all checks that ask. */
export interface PlanSoil {
  readonly loaded: readonly LoadedJoint[];
  /** Joints with feet on the ground: those on piles and floats are not among them. */
  readonly joints: readonly SoilJoint[];
  readonly kinds: readonly KindGround[];
  readonly memory: LiveMemory;
}

/** A joint as the strength field sees it. */
export const bandJoint = ({ met, load }: Pick<SoilJoint, "met" | "load">) => ({
  id: met.joint.id,
  at_m: met.joint.x,
  off_m: met.joint.y,
  factor: load.factor,
  pressure_pa: load.pressure_pa,
});

/** Loads and strength at every joint of the plan. */
export function planSoil(setting: Setting, joints: readonly MetJoint[]): PlanSoil {
  const { plan, site } = setting.input;
  const mass = soakedMasses(setting);
  const memory = liveMemory();
  const loaded = joints.map((met) => ({ met, joint: bearingJoint(setting, met, mass) }));
  const loads = new Map<string, Pick<SoilJoint, "load" | "plain">>();
  const mat_m = plan.proof.ground.root_mat_m;
  const standing = loaded
    .filter(({ joint }) => !hasBase(joint.support) && joint.support.feet.length > 0)
    .map((one) => {
      const word = loadWord(one.joint);
      let both = loads.get(word);
      if (!both) {
        const plain = jointLoad(one.joint, setting.cases, null, memory);
        const load = mat_m === null ? plain : jointLoad(one.joint, setting.cases, mat_m, memory);
        loads.set(word, (both = { load, plain }));
      }
      return { ...one, word, ...both };
    });
  const readings = [...site.readings, ...plan.ground.readings];
  const kinds: KindGround[] = [];
  const found = new Map<string, SoilJoint>();
  for (const support of new Set(standing.map((s) => s.joint.support))) {
    const mine = standing.filter((s) => s.joint.support === support);
    const ground = kindGround(plan, readings, support);
    kinds.push(ground);
    const bands = jointBands(ground, mine.map(bandJoint));
    mine.forEach((one, i) => found.set(one.met.joint.id, { ...one, ground, band: bands?.[i] ?? null }));
  }
  return { loaded, joints: standing.map((s) => found.get(s.met.joint.id)!), kinds, memory };
}

/** Those of the joints that could be worked out: with a band. */
export type BandedJoint = SoilJoint & { readonly band: JointBand };
export const isBanded = (joint: SoilJoint): joint is BandedJoint => joint.band !== null;
