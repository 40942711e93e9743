import {
  dragForce,
  dragOnAll,
  froudeNumber,
  isTabled,
  orbitalSpeed,
  surfaceReach,
  waveLength,
  waveOnPiece,
  wrackCoefficient,
  highestWave,
  breakingShare,
  type Flow,
  type Wave,
} from "../flood/index.ts";
import type { Trace } from "../formula/index.ts";
import { supportKind } from "../kit/index.ts";
import type { Part } from "../layout/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import { wrackArea } from "./flood-formulas.ts";
import { shapesOf, solidSide, type AfloatShape, type Shapes, type WetShape } from "./flood-shapes.ts";
import { jointsOf, spanOf, type MetJoint } from "./plan-joints.ts";
import type { Setting } from "./setting.ts";

/** A part that lies on supports which stay, with what of it stands in the water. */
export interface WetPart {
  readonly part: Part;
  readonly joints: readonly MetJoint[];
  readonly shape: AfloatShape;
  readonly length_m: number;
  /** Where its underside is lowest: levels on the site's datum. */
  readonly underside_m: number;
  readonly ground_m: number;
  readonly angle: Qty<"rad">;
}

/** A joint whose support stays on the ground. */
export interface WetJoint {
  readonly met: MetJoint;
  readonly shape: WetShape;
  readonly parts: readonly WetPart[];
}

export interface WetLine {
  readonly shapes: Shapes;
  readonly parts: readonly WetPart[];
  readonly joints: readonly WetJoint[];
}

const isFloat = (setting: Setting, { joint }: MetJoint): boolean =>
  supportKind(setting.input.plan.kit, joint.support).form === "float";

function angleOf(setting: Setting, heading_deg: number): Qty<"rad"> {
  const { flow_deg } = setting.input.plan.proof.flood;
  if (flow_deg === null) return qty(Math.PI / 2, "rad");
  return qty(((flow_deg - heading_deg) * Math.PI) / 180, "rad");
}

/** All parts and joints that do not rise on floats. */
export function wetLine(setting: Setting, met: readonly MetJoint[]): WetLine {
  const shapes = shapesOf(setting);
  const at = new Map(met.map((m) => [m.joint.id, m]));
  const parts = setting.input.layout.parts.flatMap((part): WetPart[] => {
    const joints = jointsOf(part).flatMap((id) => at.get(id) ?? []);
    if (joints.length === 0 || joints.some((j) => isFloat(setting, j))) return [];
    const under = ({ joint }: MetJoint): number => joint.ground_m + joint.support_height_m;
    const low = joints.reduce((a, b) => (under(b) < under(a) ? b : a));
    return [
      {
        part,
        joints,
        shape: part.kind === "module" ? shapes.module(part.length_m) : shapes.platform(),
        length_m: spanOf(part),
        underside_m: under(low),
        ground_m: low.joint.ground_m,
        angle: angleOf(setting, part.heading_deg),
      },
    ];
  });
  const byId = new Map(parts.map((p) => [p.part.id, p]));
  const joints = met
    .filter((m) => !isFloat(setting, m))
    .map((m) => ({
      met: m,
      shape: shapes.support(m.joint.support, m.joint.support_height_m),
      parts: m.parts.flatMap((p) => byId.get(p.id) ?? []),
    }));
  return { shapes, parts, joints };
}

export interface Push {
  readonly force_n: number;
  /** Over the ground [m]. */
  readonly acts_at_m: number;
}
const NONE: Push = { force_n: 0, acts_at_m: 0 };
/** Speed of the flow for what scales with its square. */
const UNIT_SPEED = qty(1, "m/s");

/** Flow at a place: depth over its ground. */
const flowAt = (setting: Setting, depth_m: number, angle: Qty<"rad">, speed: Qty<"m/s">): Flow => ({
  depth: metres(depth_m),
  speed,
  angle,
  rho_w: qty(setting.input.plan.water_kg_m3, "kg/m3"),
});

/** Drag on a shape that stands `zero_m` over the ground in water of this depth. */
export function dragOnShape(
  setting: Setting,
  shape: WetShape,
  place: { readonly zero_m: number; readonly depth_m: number; readonly angle: Qty<"rad"> },
  speed: Qty<"m/s"> = UNIT_SPEED,
  trace?: Trace,
): Push {
  const over = place.depth_m - place.zero_m;
  if (!(over > 0)) return NONE;
  const bodies = (trace ? shape.bodies : shape.quick).filter((b) => b.bottom_m < over);
  const all = dragOnAll(bodies, flowAt(setting, over, place.angle, speed), setting.context.tables, trace);
  if (!all || all.force_n <= 0) return NONE;
  return { force_n: all.force_n, acts_at_m: all.acts_at_m + place.zero_m };
}

/** Wrack against one part: a mat along it, its top at the water or at the top of what it lies against. */
export function wrackOnPart(
  setting: Setting,
  { shape, length_m, underside_m, ground_m }: WetPart,
  depth_m: number,
  speed: Qty<"m/s">,
  trace?: Trace,
): Push | null {
  const { wrack } = setting.input.plan.proof.flood;
  const zero = underside_m - ground_m;
  if (!wrack || depth_m <= zero || !(speed > 0)) return NONE;
  const Fr = froudeNumber({ V: speed, d: metres(depth_m) }, trace);
  if (!isTabled(Fr)) return null;
  const t = metres(Math.min(wrack.thickness_m, depth_m));
  const A = wrackArea({ t, l: metres(length_m) }, trace);
  const edge = solidSide(shape, depth_m - zero) / length_m;
  const B = qty(Math.min(1, Math.max(edge, t) / depth_m), "1");
  const C_d = wrackCoefficient(Fr, B, trace);
  const rho_w = qty(setting.input.plan.water_kg_m3, "kg/m3");
  const force_n = dragForce({ rho_w, C_d, A, V: speed }, trace, "wrack");
  const top = Math.min(depth_m, zero + Math.max(...shape.bodies.map((b) => b.top_m)));
  return { force_n, acts_at_m: top - t / 2 };
}

/** The resultant of several pushes. */
export function together(pushes: readonly Push[]): Push {
  const force_n = pushes.reduce((sum, p) => sum + p.force_n, 0);
  if (force_n <= 0) return NONE;
  return { force_n, acts_at_m: pushes.reduce((sum, p) => sum + p.force_n * p.acts_at_m, 0) / force_n };
}

export const times = ({ force_n, acts_at_m }: Push, by: number): Push => ({
  force_n: force_n * by,
  acts_at_m,
});

/** The told wave in water of this depth, no higher than the depth carries; null without one or without water. */
export function waveAt(setting: Setting, depth_m: number, trace?: Trace): Wave | null {
  const { wave } = setting.input.plan.proof.flood;
  if (!wave || depth_m < 0.02) return null;
  const d = metres(depth_m);
  const H_b = highestWave({ k_b: breakingShare({}, trace), d }, trace);
  return { H: metres(Math.min(wave.height_m, H_b)), T: qty(wave.period_s, "s"), d };
}

/** Speed of the wave at the surface [m/s]. */
export function surfaceSpeed({ H, T, d }: Wave, trace?: Trace): Qty<"m/s"> {
  const L = waveLength({ H, T, d }, trace);
  return orbitalSpeed({ A: surfaceReach({ H, d, L }, trace), T }, trace, "at the surface");
}

export interface WavePush extends Push {
  readonly inertia_n: number;
  readonly drag_n: number;
}

/** Push of the wave on a shape: all its pieces at their worst at once, the safer reading. */
export function waveOnShape(
  setting: Setting,
  shape: WetShape,
  wave: Wave,
  zero_m: number,
  trace?: Trace,
): WavePush {
  const rho_w = qty(setting.input.plan.water_kg_m3, "kg/m3");
  const top = wave.d + wave.H / 2;
  const each = shape.quick.flatMap((b, i) => {
    if (b.bottom_m + zero_m >= top) return [];
    const { plan_m2, inertia, cd } = shape.plans[i]!;
    const piece = {
      bottom_m: b.bottom_m + zero_m,
      top_m: b.top_m + zero_m,
      facing: metres(b.along_m),
      plan: qty(plan_m2, "m2"),
      C_d: qty(cd, "1"),
      C_m: qty(inertia, "1"),
    };
    const one = waveOnPiece(wave, piece, rho_w, trace);
    return [{ count: b.count, one }];
  });
  const sum = (of: (e: (typeof each)[number]["one"]) => number): number =>
    each.reduce((total, { count, one }) => total + count * of(one), 0);
  const force_n = sum((o) => o.force_n);
  return {
    force_n,
    drag_n: sum((o) => o.drag_n),
    inertia_n: sum((o) => o.inertia_n),
    acts_at_m: force_n > 0 ? sum((o) => o.force_n * o.acts_at_m) / force_n : 0,
  };
}
