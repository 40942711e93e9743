import type { CheckKind, CheckResult, FrameDrawing } from "@causey/engine/checks";
import type { Effect } from "@causey/papers/drawings";

/** Kinds of check that are about a module as a structure. */
const KINDS: ReadonlySet<CheckKind> = new Set([
  "stringer-bending",
  "stringer-shear",
  "stringer-deflection",
  "damage",
  "cross-piece",
  "deck",
  "feel",
  "handling",
]);

/**
 * The length of module that a check is about: the one whose millimetres it names, else the longest of those that hold
 * a part of it. Null for a check of other things.
 */
export function frameOf(check: CheckResult | null, frames: readonly FrameDrawing[]): FrameDrawing | null {
  if (!check || !KINDS.has(check.kind)) return null;
  const named = frames.find((f) => check.id.split(".").includes(f.id.replace(/^module\./, "")));
  return named ?? longest(frames.filter((f) => f.parts.some((p) => check.parts.includes(p))));
}

/** The length of module that a part is. */
export const frameOfPart = (part: string | null, frames: readonly FrameDrawing[]): FrameDrawing | null =>
  frames.find((f) => part !== null && f.parts.includes(part)) ?? null;

export const longest = (frames: readonly FrameDrawing[]): FrameDrawing | null =>
  frames.reduce<FrameDrawing | null>((best, f) => (best && best.length_m >= f.length_m ? best : f), null);

/** The effect that a check is about; null where it names none. */
export function effectOf(check: CheckResult | null): Effect | null {
  if (check?.kind === "stringer-bending" || check?.kind === "damage") return "moment";
  if (check?.kind === "stringer-shear") return "shear";
  if (check?.kind === "stringer-deflection" || check?.kind === "feel") return "sag";
  return null;
}
