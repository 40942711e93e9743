import type { Combination, Member } from "../codes/index.ts";
import type { Trace } from "../formula/index.ts";
import { metres, qty, showQuantity } from "../units/index.ts";
import { forceDemand, strengthCombinations } from "./combination.ts";
import { bearingCapacity } from "./formulas.ts";
import type { CheckContext, GradedLumber } from "./input.ts";
import { cannotCheck, missingOf, resultOf } from "./result.ts";
import { recordEffect } from "./support-beam.ts";
import type { PatternEffect } from "./support-member.ts";
import type { CheckBase, CheckResult } from "./types.ts";

/** A place where a piece of a support is pressed across its grain. */
export interface PressedPiece {
  /** "sill under a stringer", "runner under a leg". */
  readonly name: string;
  readonly size: string;
  readonly lay: "flat" | "edge";
  readonly lumber: GradedLumber;
  /** Contact along the grain of the pressed piece, and across it [m]. */
  readonly length_m: number;
  readonly breadth_m: number;
  /** From the contact to the nearer end of the piece, and clear to the next contact [m]. */
  readonly to_end_m: number;
  readonly to_next_m: number;
  /** Pressed all along from below. */
  readonly is_continuous: boolean;
}

function capacityOf(
  piece: PressedPiece,
  member: Member,
  { duration }: Combination,
  { code }: CheckContext,
  trace?: Trace,
): number {
  const { strength, length } = code.bearing(
    member,
    { use: piece.lay, wet: true, incised: piece.lumber.incised, repetitive: false, duration },
    {
      length_m: piece.length_m,
      to_end_m: piece.to_end_m,
      to_next_m: piece.to_next_m,
      support: piece.is_continuous ? "continuous" : "discrete",
    },
    trace,
  );
  return bearingCapacity({ F: strength, b: metres(piece.breadth_m), l: length }, trace);
}

/** Pressure across the grain at one contact of a support, under every combination of the code. */
export function checkPressed(
  piece: PressedPiece,
  forces: readonly PatternEffect[],
  base: CheckBase,
  context: CheckContext,
): CheckResult {
  const { species, grade } = piece.lumber;
  const found = context.code.member(context.tables, species, grade, piece.size);
  if (!found.ok) return cannotCheck(base, missingOf(found.problems));
  const all = strengthCombinations(context.code).flatMap((combination) => {
    const capacity = capacityOf(piece, found.value, combination, context);
    return forces.map(({ pattern, effect }) => {
      const demand = forceDemand(combination, qty(effect.dead, "N"), qty(effect.live, "N"));
      return { pattern, effect, combination, use: capacity > 0 ? demand / capacity : Infinity };
    });
  });
  const { pattern, effect, combination, use } = all.reduce((a, b) => (b.use > a.use ? b : a));
  const working: Trace = [];
  pattern.explain(working);
  recordEffect(working, "V_d", "Own weight on the contact", effect.dead, "N", effect.where, pattern.name);
  recordEffect(working, "V_l", "Live load on the contact", effect.live, "N", effect.where, pattern.name);
  const demand = forceDemand(
    combination,
    qty(effect.dead, "N"),
    qty(effect.live, "N"),
    working,
    pattern.name,
  );
  const capacity = qty(capacityOf(piece, found.value, combination, context, working), "N");
  const say = (v: number, unit: "m" | "N"): string => showQuantity(v, unit, context.units);
  const wide = piece.breadth_m * use;
  return resultOf(
    base,
    { unit: "N", demand, capacity, governs: `${pattern.name}; ${effect.where}`, working },
    {
      carries: `The ${piece.name} carries ${say(capacity, "N")} on ${say(piece.length_m, "m")} by ${say(piece.breadth_m, "m")}.`,
      change:
        demand <= capacity
          ? null
          : use === Infinity
            ? "Needs a contact: nothing of it bears."
            : `Would pass with the contact ${say(wide, "m")} instead of ${say(piece.breadth_m, "m")} across its grain, as by a wider piece or a bearing block.`,
    },
  );
}
