import { supportKind, underPlatformEdge, type SupportKind } from "../kit/index.ts";
import { stringerEdgeJoints, type Joint, type Part } from "../layout/index.ts";
import { massOf } from "./lifting.ts";
import { strengthAt, type GroundStrength } from "./ground-strength.ts";
import type { BearingJoint } from "./bearing.ts";
import type { Setting } from "./setting.ts";

/** Joints that a part lies on: two of a module, four of a platform. */
export const jointsOf = (part: Part): string[] =>
  part.kind === "module"
    ? [part.from, part.to]
    : [...new Set([part.from, part.exits.ahead, part.exits.left, part.exits.right])];

/** Joint to joint across a part [m]. */
export const spanOf = (part: Part): number => (part.kind === "module" ? part.length_m : part.side_m);

/** One joint with the parts that meet over it and the ground under it. */
export interface MetJoint {
  readonly joint: Joint;
  readonly parts: readonly Part[];
  /** The kind that stands there, with the longer sill where a platform's stringers end on it. */
  readonly support: SupportKind;
  readonly strength: GroundStrength | null;
}

/** Every joint of the layout, in its order, with its parts and its strength. */
export function metJoints(setting: Setting): MetJoint[] {
  const { layout, site, plan } = setting.input;
  const parts = new Map<string, Part[]>();
  for (const part of layout.parts)
    for (const id of jointsOf(part)) {
      const here = parts.get(id);
      if (here) here.push(part);
      else parts.set(id, [part]);
    }
  const edges = stringerEdgeJoints(layout.parts);
  const kindOf = (joint: Joint): SupportKind => {
    const kind = supportKind(plan.kit, joint.support);
    return edges.has(joint.id) ? underPlatformEdge(plan.kit, kind) : kind;
  };
  const readings = [...site.readings, ...plan.ground.readings];
  return layout.joints.map((joint) => ({
    joint,
    parts: parts.get(joint.id) ?? [],
    support: kindOf(joint),
    strength: strengthAt(joint.x, joint.y, readings, plan.ground),
  }));
}

/** Soaked mass of a part [kg], remembered by its length. */
export function soakedMasses(setting: Setting): (part: Part) => number {
  const known = new Map<string, number>();
  const { masses } = setting.input;
  return (part) => {
    const key = part.kind === "module" ? String(part.length_m) : "platform";
    let kg = known.get(key);
    if (kg === undefined) {
      const mass = part.kind === "module" ? masses.module(part.length_m) : masses.platform;
      known.set(key, (kg = massOf(mass, setting.gravity, "soaked")));
    }
    return kg;
  };
}

/** Deck of a part that people stand on [m2]; a platform is taken to the edge of its square. */
const deckOf = ({ geometry }: Setting, part: Part): number =>
  part.kind === "module" ? part.length_m * geometry.clear_width_m : part.side_m ** 2;

/** The joint as the ground feels it: its two longest spans, half of the parts on it, and its support. */
export function bearingJoint(
  setting: Setting,
  met: MetJoint,
  partMass: (part: Part) => number,
): BearingJoint {
  const { joint, parts, support: kind } = met;
  const spans = parts.map(spanOf).sort((a, b) => b - a);
  const support = setting.input.masses.support(kind, joint.support_height_m);
  const dead = parts.reduce((sum, part) => sum + partMass(part) / 2, 0);
  return {
    left_m: spans[0] ?? 0,
    right_m: spans[1] ?? 0,
    dead_kg: dead + massOf(support, setting.gravity, "soaked"),
    support: kind,
    clear_width_m: setting.geometry.clear_width_m,
    deck_m2: parts.reduce((sum, part) => sum + deckOf(setting, part) / 2, 0),
  };
}
