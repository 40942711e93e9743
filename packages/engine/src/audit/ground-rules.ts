import { inForce } from "./calendar.ts";
import { holdAgainst, metresText } from "./fault.ts";
import { lowestUnder } from "./ground.ts";
import { area, distanceToRing, drawnIn, edgesApart, middle, touches } from "./shapes.ts";
import { FALL_M, FIT_M, GROUND_M } from "./tolerance.ts";
import type {
  AuditInput,
  AuditSupportKind,
  AuditZone,
  LaidFoot,
  LaidOut,
  Outline,
  RuleReport,
} from "./types.ts";

const kindOf = (input: AuditInput, laid: LaidOut, joint: string): AuditSupportKind | undefined =>
  input.kit.supports.find((s) => s.id === laid.joints.get(joint)?.support);
const placeOf = (foot: LaidFoot): string => `foot ${foot.index} of ${foot.joint}`;

/** Each joint has the feet of its support kind, each of the kind's size and at the kind's distance from the joint. */
export const feetOfTheirKind = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("feet", (fault, tested) => {
    for (const joint of laid.joints.values()) {
      tested();
      const wanted = kindOf(input, laid, joint.id)?.feet ?? [];
      const own = laid.feet.filter((f) => f.joint === joint.id);
      const numbers = new Set(own.map((f) => f.index));
      if (own.length !== wanted.length || numbers.size !== own.length || own.length === 0)
        fault(
          joint.id,
          String(own.length),
          `the support "${joint.support}" has ${wanted.length} feet`,
          "Write each foot once.",
        );
      for (const foot of own) {
        const size = wanted[foot.index];
        if (!size) continue;
        const [x, y] = middle(foot.outline);
        const off = Math.hypot(x - joint.x, y - joint.y) - Math.abs(size.offset_across_mm) / 1000;
        const square = (size.along_mm * size.across_mm) / 1e6;
        if (Math.abs(off) > FIT_M || Math.abs(area(foot.outline) / square - 1) > 0.01)
          fault(
            placeOf(foot),
            `${area(foot.outline).toFixed(4)} m2`,
            "is not the patch that its kind has there",
            `Its kind has ${square.toFixed(4)} m2 at ${Math.abs(size.offset_across_mm)} mm from the middle.`,
          );
      }
    }
  });

/** Every foot stands on known ground above the level its kind needs. */
export const feetOnGround = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("foot-ground", (fault, tested) => {
    for (const foot of laid.feet) {
      const kind = kindOf(input, laid, foot.joint);
      if (!kind) continue;
      tested();
      const { z, at } = lowestUnder(input.terrain, foot.outline);
      const where = `${placeOf(foot)} at ${at[0].toFixed(2)}, ${at[1].toFixed(2)}`;
      const limit = kind.stands.ground_above_m;
      if (Number.isNaN(z))
        fault(where, "no data", "stands where the ground is not known", "Survey there, or move the joint.");
      else if (limit !== null && z < limit - GROUND_M)
        fault(
          where,
          metresText(z),
          `"${kind.id}" needs ground above ${metresText(limit)}`,
          "Move the joint, or use a support that may stand lower.",
        );
    }
  });

/** Ground is near enough to level under every foot that no part of it hangs in the air. */
export const feetOnLevelGround = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("foot-level", (fault, tested) => {
    for (const foot of laid.feet) {
      tested();
      const { z, high, at } = lowestUnder(input.terrain, foot.outline);
      if (high - z > FALL_M + GROUND_M)
        fault(
          `${placeOf(foot)} at ${at[0].toFixed(2)}, ${at[1].toFixed(2)}`,
          metresText(high - z),
          `ground falls by more than ${metresText(FALL_M)} across the foot`,
          "Move the joint back from the edge.",
        );
    }
  });

/** No foot stands in a zone of a use its kind must keep out of. A shared edge is not inside. */
export const feetOutsideUses = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("foot-zone", (fault, tested) => {
    for (const foot of laid.feet) {
      const kind = kindOf(input, laid, foot.joint);
      const inner = drawnIn(foot.outline, FIT_M);
      for (const zone of input.zones) {
        if (!kind?.stands.not_in.includes(zone.use)) continue;
        tested();
        if (comesNear(inner, zone))
          fault(
            placeOf(foot),
            zone.id,
            `"${kind.id}" must not stand in ${zone.use} "${zone.id}"`,
            "Move the joint, or use another support.",
          );
      }
    }
  });

/** Whether an outline touches a zone or the buffer around it. */
function comesNear(outline: Outline, zone: AuditZone): boolean {
  if (touches(outline, zone.polygons)) return true;
  const clear = (zone.buffer_m ?? 0) - FIT_M;
  if (clear <= 0) return false;
  return zone.polygons.some((rings) => rings.some((ring) => edgesApart(outline, ring) < clear));
}

/** No part and no foot touches a zone that is shut on any day of laying, or the buffer around it. */
export const outsideShutZones = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("shut-zone", (fault, tested) => {
    const shut = input.zones.filter((zone) => inForce(zone, input.laying));
    for (const [place, outline] of everyOutline(laid))
      for (const zone of shut) {
        tested();
        if (comesNear(outline, zone))
          fault(
            place,
            zone.id,
            `touches ${zone.use} "${zone.id}", shut while laying`,
            "Lead the walkway around it, or lay at another time.",
          );
      }
  });

/** No part and no foot enters the circle around a plot that must stay untouched. */
export const outsideKeepOff = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("keep-off", (fault, tested) => {
    for (const [place, outline] of everyOutline(laid))
      for (const plot of input.plots) {
        tested();
        const distance = distanceToRing([plot.x, plot.y], outline);
        if (distance < plot.keep_off_m - FIT_M)
          fault(
            place,
            metresText(distance),
            `nearer to plot "${plot.id}" than ${metresText(plot.keep_off_m)}`,
            "End the branch earlier or pass the plot farther off.",
          );
      }
  });

const everyOutline = (laid: LaidOut): (readonly [string, Outline])[] => [
  ...[...laid.modules, ...laid.platforms].map((part) => [part.id, part.outline] as const),
  ...laid.feet.map((foot) => [placeOf(foot), foot.outline] as const),
];
