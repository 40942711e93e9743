import { engineerBecause, supportKind, type PlacedPiece } from "../kit/index.ts";
import { ENGINEER, GRADE } from "./cautions.ts";
import type { MetJoint } from "./plan-joints.ts";
import type { Setting } from "./setting.ts";
import { carrierForces, type BeamPattern, type Carrier } from "./support-beam.ts";
import type { PatternEffect } from "./support-member.ts";
import type { CheckBase } from "./types.ts";

const CAUTION =
  "Every joint as dry-laid timber: nothing is counted on its screws but that they keep it together.";

/** Makes the bases of the checks of one support: ids end in its kind, and in `.edge` under a platform's edge. */
export function baseFor(
  setting: Setting,
  met: MetJoint,
): (part: string, title: string, rule: CheckBase["rule"]) => CheckBase {
  const { id, name } = met.support;
  const own = supportKind(setting.input.plan.kit, id);
  const isEdge = own.sill.length_mm !== met.support.sill.length_mm;
  const engineer = engineerBecause(own);
  const say = isEdge ? `"${name}" under a platform's edge` : `"${name}"`;
  return (part, title, rule) => ({
    id: `supports.${part}.${id}${isEdge ? ".edge" : ""}`,
    kind: "supports",
    title: `${title} of ${say}`,
    parts: [met.joint.id],
    rule,
    caution: `${CAUTION} ${engineer === null ? "" : `${ENGINEER} ${engineer.charAt(0).toUpperCase()}${engineer.slice(1)}. `}${GRADE}`,
  });
}

/** Force on each carrier of the sill under every pattern, the worst carrier of each. */
export const onCarriers = (carriers: readonly Carrier[], patterns: readonly BeamPattern[]): PatternEffect[] =>
  patterns.flatMap((pattern) =>
    carrierForces(carriers, pattern.loads).map((effect) => ({ pattern, effect })),
  );

/** Longer along the walk than across it. */
export const isAlong = (p: PlacedPiece): boolean => p.x1 - p.x0 > p.y1 - p.y0;
