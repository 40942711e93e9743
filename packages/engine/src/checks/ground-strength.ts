import { recordValue, type Source, type Trace } from "../formula/index.ts";
import type { GroundChoice } from "../plan/document.ts";
import type { StrengthReading } from "../site/index.ts";
import { pascals, type Qty } from "../units/index.ts";
import { readingReach } from "./rules.ts";

/** Undrained strength at a joint and where it comes from. */
export interface GroundStrength {
  readonly su: Qty<"Pa">;
  readonly source: Source;
  readonly how: string;
}

/**
 * Undrained strength at a place: the lowest reading within 15 m, at any depth, so that weak mud under a stiff root
 * mat is not missed; without one, the plan's own value; null when neither is known.
 */
export function strengthAt(
  x: number,
  y: number,
  readings: readonly StrengthReading[],
  ground: GroundChoice,
): GroundStrength | null {
  const reach = readingReach({});
  const near = readings.filter((r) => Math.hypot(r.x - x, r.y - y) <= reach);
  if (near.length > 0) {
    const low = near.reduce((a, b) => (b.su_kpa < a.su_kpa ? b : a));
    const title = `Reading: ${low.source}`;
    return {
      su: pascals(low.su_kpa * 1000),
      source: { id: "strength-reading", title, at: `${low.depth_m} m below ground`, status: "project" },
      how: `lowest of ${near.length} within ${reach} m`,
    };
  }
  if (ground.su_kpa === null) return null;
  return {
    su: pascals(ground.su_kpa * 1000),
    source: { id: "plan-ground", title: `Plan: ${ground.source}`, status: "project" },
    how: `no reading within ${reach} m: the plan's own value`,
  };
}

/** Puts the strength into the working. */
export function recordStrength(strength: GroundStrength, trace: Trace, note?: string): void {
  recordValue(trace, {
    id: "ground.strength",
    title: "Undrained strength of the ground",
    symbol: "su",
    value: strength.su,
    unit: "Pa",
    source: strength.source,
    how: strength.how,
    ...(note === undefined ? {} : { note }),
  });
}

/** What to give when the strength is not known. */
export const MISSING_STRENGTH = `the undrained strength of the ground: a reading within ${readingReach({})} m of the joint, or a value for the plan`;
