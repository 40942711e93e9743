import { holdAgainst, metresText } from "./fault.ts";
import { heightAt } from "./ground.ts";
import { FIT_M, LEVEL_M } from "./tolerance.ts";
import type { AuditInput, LaidOut, RuleReport } from "./types.ts";

/** Each joint has a support of the kit, within the heights it is made in. */
export const supportsInRange = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("support-height", (fault, tested) => {
    for (const joint of laid.joints.values()) {
      tested();
      const kind = input.kit.supports.find((s) => s.id === joint.support);
      const height = joint.support_height_m * 1000;
      if (!kind)
        fault(
          joint.id,
          joint.support,
          "is not a support of the kit",
          `Use ${input.kit.supports.map((s) => s.id).join(", ")}.`,
        );
      else if (height < kind.height_min_mm - 1 || height > kind.height_max_mm + 1)
        fault(
          joint.id,
          metresText(joint.support_height_m),
          `"${kind.id}" is made from ${kind.height_min_mm} to ${kind.height_max_mm} mm high`,
          "Change the deck level or the kind of support.",
        );
    }
  });

/** Deck level = ground under the joint + height of the support + depth of the module, and the ground is the terrain's. */
export const decksAddUp = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("deck-sum", (fault, tested) => {
    for (const joint of laid.joints.values()) {
      tested();
      const ground = heightAt(input.terrain, joint.x, joint.y);
      if (!(Math.abs(ground - joint.ground_m) <= FIT_M))
        fault(
          joint.id,
          metresText(joint.ground_m),
          `the terrain gives ${metresText(ground)}`,
          "Read the ground there.",
        );
      const deck = joint.ground_m + joint.support_height_m + input.module_depth_m;
      if (Math.abs(deck - joint.deck_m) > LEVEL_M)
        fault(
          joint.id,
          metresText(joint.deck_m),
          `ground, support and module add up to ${metresText(deck)}`,
          "Correct the height of the support or the deck level.",
        );
    }
  });

/** The module's underside keeps the asked height above the ground at each joint. */
export const undersidesClear = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("clear-height", (fault, tested) => {
    for (const joint of laid.joints.values()) {
      tested();
      const clear = joint.deck_m - input.module_depth_m - heightAt(input.terrain, joint.x, joint.y);
      if (!(clear >= input.min_clear_mm / 1000 - FIT_M))
        fault(
          joint.id,
          metresText(clear),
          `the underside must be ${input.min_clear_mm} mm above the ground`,
          "Use a higher support.",
        );
    }
  });

/** Rise over run between the two joints of a module, its pitch, stays within the chosen grade. */
export const gradesWithin = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("grade", (fault, tested) => {
    for (const m of laid.modules) {
      const [from, to] = [laid.joints.get(m.from), laid.joints.get(m.to)];
      if (!from || !to) continue;
      tested();
      const run = m.length_m + input.kit.joint_gap_mm / 1000;
      const grade = Math.abs(to.deck_m - from.deck_m) / run;
      if (!(grade <= input.max_grade + 1e-9))
        fault(
          m.id,
          grade.toFixed(4),
          `steeper than ${input.max_grade}`,
          "Raise the lower support or lower the higher one.",
        );
    }
  });

/** A platform lies level: its four joints have one deck level. */
export const platformsLevel = (_input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("platform-level", (fault, tested) => {
    for (const p of laid.platforms) {
      tested();
      const decks = [p.from, p.ahead, p.left, p.right].map((id) => laid.joints.get(id)?.deck_m ?? NaN);
      const spread = Math.max(...decks) - Math.min(...decks);
      if (!(spread <= LEVEL_M))
        fault(
          p.id,
          metresText(spread),
          "its joints have different deck levels",
          "Give its four supports one level.",
        );
    }
  });
