import type { Trace } from "../formula/index.ts";
import type { Counted, OpenShare, SizeId, SupportKind } from "../kit/index.ts";
import type { Unit } from "../units/index.ts";

/** One figure with its working; without a value it says what is missing. */
export interface KitFigure {
  readonly title: string;
  readonly value: number | null;
  readonly unit: Unit;
  readonly working: Trace;
  readonly missing: readonly string[];
}

/** Pieces of one size and saw length in a part. */
export interface PieceLine {
  readonly role: string;
  /** Null for mesh, panels, piles and floats. */
  readonly size: SizeId | null;
  readonly length_mm: number;
  readonly count: number;
}

/** A module, a platform, half of one, or a ramp. */
export interface PartFigures {
  readonly id: string;
  readonly kind: "module" | "platform" | "platform-half" | "ramp";
  readonly name: string;
  /** Along the walk [mm]. */
  readonly length_mm: number;
  readonly pieces: readonly PieceLine[];
  /** Screws, clips, sheets and panels; a half shares the whole platform's. */
  readonly counted: readonly Counted[];
  readonly screws: number;
  readonly mass_new: KitFigure;
  readonly mass_soaked: KitFigure;
  readonly carrier_new: KitFigure;
  readonly carrier_soaked: KitFigure;
  /** Null for a half and a ramp. */
  readonly open: { readonly deck: KitFigure; readonly whole: KitFigure; readonly share: OpenShare } | null;
  /** Null for a half: it is bought with the whole. */
  readonly cost: {
    readonly material: KitFigure;
    readonly per_m: KitFigure;
    readonly per_ft: KitFigure;
  } | null;
}

export interface SupportFigures {
  readonly id: string;
  readonly name: string;
  readonly form: SupportKind["form"];
  readonly height_min_mm: number;
  readonly height_max_mm: number;
  readonly height_step_mm: number;
  readonly contact: KitFigure;
  /** At the least and at the greatest height. */
  readonly lowest: SupportAtHeight;
  readonly highest: SupportAtHeight;
  /** Why an engineer must look at it; null when nothing asks for one. */
  readonly engineer: string | null;
}

export interface SupportAtHeight {
  readonly height_mm: number;
  readonly pieces: readonly PieceLine[];
  readonly counted: readonly Counted[];
  readonly mass_new: KitFigure;
  readonly mass_soaked: KitFigure;
  readonly cost: KitFigure;
}

/** What the Kit page shows: every part of the recipe in figures. */
export interface KitFigures {
  readonly kit: string;
  readonly carriers: number;
  /** What one carrier may lift in the posture of carrying a module. */
  readonly carrier_limit: KitFigure;
  readonly modules: readonly PartFigures[];
  readonly platform: PartFigures;
  /** Two for a platform in two pieces, else none. */
  readonly halves: readonly PartFigures[];
  readonly ramps: readonly (PartFigures & { readonly rise: KitFigure })[];
  readonly supports: readonly SupportFigures[];
  /** Items that the price list lacks. */
  readonly unpriced: readonly string[];
}
