import { crestLevel, crestUplift, waveForceMax } from "../flood/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import { metres, newtons, qty, type Qty } from "../units/index.ts";
import type { FloodCase } from "./flood-cases.ts";
import { dragTogether } from "./flood-formulas.ts";
import type { WetShape } from "./flood-shapes.ts";
import {
  dragOnShape,
  surfaceSpeed,
  times,
  together,
  waveAt,
  waveOnShape,
  wrackOnPart,
  type Push,
  type WavePush,
  type WetJoint,
  type WetLine,
  type WetPart,
} from "./flood-loads.ts";
import type { Setting } from "./setting.ts";

/** What the water of one case does to every part and joint, each worked out once. */
export interface FloodLoads {
  readonly flood: FloodCase;
  /** Drag on the part alone at 1 m/s, over the ground under its lowest end. */
  readonly onPart: (part: WetPart) => Push;
  /** Drag on the support alone at 1 m/s. */
  readonly onSupport: (joint: WetJoint) => Push;
  readonly wave: (shape: WetShape, zero_m: number, depth_m: number) => WavePush | null;
}

export const partDepth = (flood: FloodCase, part: WetPart): number => flood.z_m - part.ground_m;
export const jointDepth = (flood: FloodCase, { met }: WetJoint): number => flood.z_m - met.joint.ground_m;
export const zeroOf = (part: WetPart): number => part.underside_m - part.ground_m;
const square: Qty<"rad"> = qty(Math.PI / 2, "rad");

function memo<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, make(key));
    return known.get(key)!;
  };
}

/** Waves are worked out for depths and heights to this [m]: parts alike within it share one. */
const WAVE_STEP_M = 0.02;

export function floodLoads(setting: Setting, flood: FloodCase): FloodLoads {
  const waves = new Map<WetShape, Map<string, WavePush>>();
  return {
    flood,
    onPart: memo((part: WetPart) =>
      dragOnShape(setting, part.shape, {
        zero_m: zeroOf(part),
        depth_m: partDepth(flood, part),
        angle: part.angle,
      }),
    ),
    onSupport: memo((joint: WetJoint) =>
      dragOnShape(setting, joint.shape, {
        zero_m: 0,
        depth_m: jointDepth(flood, joint),
        angle: joint.parts[0]?.angle ?? square,
      }),
    ),
    wave: (shape, zero_m, depth_m) => {
      const depth = Math.ceil(depth_m / WAVE_STEP_M - 1e-9) * WAVE_STEP_M;
      const zero = Math.floor(zero_m / WAVE_STEP_M + 1e-9) * WAVE_STEP_M;
      const wave = waveAt(setting, depth);
      if (!wave) return null;
      const own = waves.get(shape) ?? new Map<string, WavePush>();
      waves.set(shape, own);
      const key = `${depth.toFixed(2)}|${zero.toFixed(2)}`;
      const push = own.get(key) ?? waveOnShape(setting, shape, wave, zero);
      own.set(key, push);
      return push;
    },
  };
}

/** Push of the current on a part and half of each support under it, with wrack; null outside the tables of wrack. */
export function currentOnPart(
  setting: Setting,
  loads: FloodLoads,
  part: WetPart,
  joints: ReadonlyMap<string, WetJoint>,
  speed: Qty<"m/s">,
): Push | null {
  const wrack = wrackOnPart(setting, part, partDepth(loads.flood, part), speed);
  if (!wrack) return null;
  const under = part.joints.flatMap((j) => joints.get(j.joint.id) ?? []);
  return together([
    times(loads.onPart(part), speed ** 2),
    ...under.map((j) => times(loads.onSupport(j), speed ** 2 / 2)),
    wrack,
  ]);
}

/** What pushes a joint sideways: its share of the parts on it and its support. */
export interface JointPush {
  readonly push: Push;
  readonly record: (trace: Trace) => Qty<"N">;
}

/**
 * Push of current, wrack and wave on one joint; null outside the tables of wrack.
 *
 * own  drag and wave on its support, where another than the kit's is asked about
 */
export function pushOnJoint(
  setting: Setting,
  loads: FloodLoads,
  joint: WetJoint,
  speed: Qty<"m/s">,
  own: WetShape = joint.shape,
): JointPush | null {
  const depth = jointDepth(loads.flood, joint);
  const share = (p: WetPart): number => 1 / p.joints.length;
  const wrack = joint.parts.map((p) => {
    const w = wrackOnPart(setting, p, partDepth(loads.flood, p), speed);
    return w && times(w, share(p));
  });
  if (!wrack.every((w) => w !== null)) return null;
  const support =
    own === joint.shape
      ? loads.onSupport(joint)
      : dragOnShape(setting, own, { zero_m: 0, depth_m: depth, angle: joint.parts[0]?.angle ?? square });
  const unit = together([...joint.parts.map((p) => times(loads.onPart(p), share(p))), support]);
  const wave = waveAt(setting, depth);
  const u_s = wave ? surfaceSpeed(wave) : qty(0, "m/s");
  const each = wave
    ? [
        ...joint.parts.map((p) => {
          const w = loads.wave(p.shape, zeroOf(p), partDepth(loads.flood, p));
          return { inertia: (w?.inertia_n ?? 0) * share(p), at: w?.acts_at_m ?? 0 };
        }),
        { ...inertiaOf(loads.wave(own, 0, depth)) },
      ]
    : [];
  const F_I = newtons(each.reduce((sum, e) => sum + e.inertia, 0));
  const mat = together(wrack);
  const sum = (trace?: Trace): Qty<"N"> => {
    const drag = dragTogether(
      { F_1: newtons(unit.force_n), V: speed, u_s },
      trace,
      "parts and support of the joint",
    );
    const F_D = newtons(drag + mat.force_n);
    if (mat.force_n > 0) recordForce(trace, "flood.joint.wrack", "Drag of the wrack, its share", mat.force_n);
    if (F_I <= 0 || F_D <= 1e-9) return F_D;
    recordForce(trace, "flood.joint.inertia", "Inertia force of the wave on parts and support", F_I);
    return waveForceMax({ F_D, F_I }, trace, "current, wrack and wave together");
  };
  const force_n = sum();
  const e = Math.max(together([unit, mat]).acts_at_m, ...each.filter((x) => x.inertia > 0).map((x) => x.at));
  return { push: { force_n, acts_at_m: e }, record: sum };
}

const inertiaOf = (w: WavePush | null): { inertia: number; at: number } => ({
  inertia: w?.inertia_n ?? 0,
  at: w?.acts_at_m ?? 0,
});

function recordForce(trace: Trace | undefined, id: string, title: string, value: number): void {
  recordValue(trace, {
    id,
    title,
    symbol: "F",
    value,
    unit: "N",
    source: { id: "statics", title: "Statics", at: "sum over the pieces", status: "computed" },
    how: "sum over the pieces",
  });
}

/**
 * Uplift of the crest under a part, with slamming where it strikes from below [N]; 0 without a wave, and where even the
 * trough stays over the deck, since the wave then presses on both its faces.
 */
export function crestOnPart(setting: Setting, flood: FloodCase, part: WetPart, trace?: Trace): Qty<"N"> {
  const depth = partDepth(flood, part);
  const wave = waveAt(setting, depth);
  if (!wave) return newtons(0);
  waveAt(setting, depth, trace);
  const z_c = crestLevel({ d: wave.d, H: wave.H }, trace);
  const z_u = zeroOf(part);
  const top = z_u + Math.max(...part.shape.bodies.map((b) => b.top_m));
  if (depth - wave.H / 2 >= top) return newtons(0);
  const strikes = depth <= z_u;
  return crestUplift(
    {
      k_s: qty(strikes ? 2 : 1, "1"),
      rho_w: qty(setting.input.plan.water_kg_m3, "kg/m3"),
      H: wave.H,
      z_c,
      z_u: metres(z_u),
      A_s: qty(part.shape.solid_m2, "m2"),
    },
    trace,
    strikes ? "the crest strikes from below: twice" : "under water already: once",
  );
}

/** Joints of a line by id. */
export const jointsById = (line: WetLine): ReadonlyMap<string, WetJoint> =>
  new Map(line.joints.map((j) => [j.met.joint.id, j]));
