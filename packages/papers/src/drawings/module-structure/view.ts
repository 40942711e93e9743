import type { DrawnPeak, FrameDrawing } from "@causey/engine/checks";
import type { Results } from "@causey/engine/plan";
import { M_PER_IN, showQuantity, type UnitSystem } from "@causey/engine/units";
import type { PaperContext } from "../../set/context.ts";

export const EFFECTS = ["moment", "shear", "sag"] as const;
export type Effect = (typeof EFFECTS)[number];

export const effectTitles: Readonly<Record<Effect, string>> = {
  moment: "Bending moment",
  shear: "Shear",
  sag: "Sag",
};
export const effectUnits = { moment: "N*m", shear: "N", sag: "m" } as const;

/** The check of one length that holds an effect against its limit. */
export interface EffectLimit {
  readonly check: string;
  readonly value: number;
  readonly utilisation: number;
}

/** One length of module with what is drawn beside it. */
export interface StructureView {
  readonly frame: FrameDrawing;
  readonly units: UnitSystem;
  readonly deck_width_m: number;
  /** Null where no check of this length gives a limit. */
  readonly limits: Readonly<Record<Effect, EffectLimit | null>>;
  /** Length that fills the width: every length of a plan is drawn to one scale [m]. */
  readonly widest_m: number;
}

const CHECKS = { moment: "stringer-bending", shear: "stringer-shear", sag: "stringer-deflection" } as const;

/** Limit of an effect on a length of module; the checks carry its millimetres in their id, as the drawing does. */
function limitOf(checks: Results["checks"], frame: FrameDrawing, effect: Effect): EffectLimit | null {
  const id = frame.id.replace(/^module/, CHECKS[effect]);
  const check = checks.find((c) => c.id === id);
  if (check?.status !== "pass" && check?.status !== "fail") return null;
  return { check: id, value: check.capacity, utilisation: check.utilisation };
}

/**
 * A length of module of the results, ready to be drawn: limits from its checks, deck from the kit. The deck's outline is
 * that of the kit's geometry, read off the recipe: a recipe that is being edited may name sizes no table holds.
 */
export function structureView(
  { plan, results }: Pick<PaperContext, "plan" | "results">,
  frame: FrameDrawing,
): StructureView {
  const limit = (effect: Effect): EffectLimit | null => limitOf(results.checks, frame, effect);
  return {
    frame,
    units: plan.units,
    deck_width_m: Math.max(plan.kit.deck.width_mm, plan.kit.stringers.overall_mm) / 1000,
    limits: { moment: limit("moment"), shear: limit("shear"), sag: limit("sag") },
    widest_m: Math.max(...results.proof.frames.map((f) => f.length_m)),
  };
}

/** The effect nearest to its limit, or over it; bending where no limit is known. */
export function governingEffect({ limits }: Pick<StructureView, "limits">): Effect {
  const used = (effect: Effect): number => limits[effect]?.utilisation ?? -1;
  return EFFECTS.reduce((most, effect) => (used(effect) > used(most) ? effect : most));
}

/** A stringer by its side, seen in the direction of travel; they are listed from right to left. */
export function stringerName(index: number, count: number): string {
  if (index === 0) return "right stringer";
  if (index === count - 1) return "left stringer";
  return count === 3 ? "middle stringer" : `stringer ${index + 1} from the right`;
}

/** What a peak says, in words of the plan's units. */
export interface PeakWords {
  readonly title: string;
  readonly value: string;
  readonly place: string;
  readonly load: string;
  readonly ends: string;
  /** "Limit 1.465 kN m"; null where no check gives a limit. */
  readonly limit: string | null;
}

export function peakWords({ frame, units, limits }: StructureView, effect: Effect): PeakWords {
  const peak = frame.peaks[effect];
  const limit = limits[effect];
  const unit = effectUnits[effect];
  return {
    title: effectTitles[effect],
    value: showSmall(peak.value, unit, units),
    place: `${showQuantity(peak.at_m, "m", units)} from the start, ${stringerName(peak.stringer, frame.stringers_y_m.length)}`,
    load: peak.load,
    ends: `cross pieces taken as ${peak.ends}`,
    limit: limit === null ? null : `Limit ${showSmall(limit.value, unit, units)}`,
  };
}

/** A value of an effect; a sag in hundredths of an inch or tenths of a millimetre, for coarser ones would hide it. */
export function showSmall(value: number, unit: "N*m" | "N" | "m", units: UnitSystem): string {
  if (unit !== "m") return showQuantity(value, unit, units);
  const text = units === "us" ? (value / M_PER_IN).toFixed(2) : (value * 1000).toFixed(1);
  return `${Number(text) === 0 ? text.replace("-", "") : text} ${units === "us" ? "in" : "mm"}`;
}

/** Sign of a peak on its strip: a shear is drawn to the side on which the envelope is larger there. */
export function signedPeak(frame: FrameDrawing, effect: Effect): number {
  const peak: DrawnPeak = frame.peaks[effect];
  if (effect !== "shear") return peak.value;
  const near = frame.stations_m.reduce(
    (best, x, i) => (Math.abs(x - peak.at_m) < Math.abs(frame.stations_m[best]! - peak.at_m) ? i : best),
    0,
  );
  const most = frame.shear.most[peak.stringer]?.[near] ?? 0;
  const least = frame.shear.least[peak.stringer]?.[near] ?? 0;
  return -least > most ? -peak.value : peak.value;
}
