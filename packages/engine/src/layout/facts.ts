import type { Foot, SupportKind } from "../kit/index.ts";

/** What the layout needs to know of a kit, in metres; made by `kitGeometry` from the recipe. */
export interface LayoutFacts {
  readonly lattice_m: number;
  /** Underside of the module to the top of the deck. */
  readonly depth_m: number;
  /** Widest outline across. */
  readonly width_m: number;
  readonly gap_m: number;
  readonly lengths_m: readonly number[];
  readonly platform_side_m: number;
  readonly supports: readonly SupportKind[];
}

/**
 * Money the search reckons with, per part; the true cost comes from the order list.
 * Null = the price list does not say: the search then goes by length and harm alone and the result says so.
 */
export interface SearchCosts {
  readonly module: readonly (number | null)[];
  readonly platform: number | null;
  /** Per support kind: at its least height, and per metre above it. */
  readonly support: readonly { readonly least: number | null; readonly per_m: number }[];
  /** Laying and taking out, per metre of walkway. */
  readonly labour_per_m: number;
}

/** Ground patches of a support kind, at least one. */
export const footArea = (feet: readonly Foot[]): number =>
  feet.reduce((sum, f) => sum + (f.along_mm * f.across_mm) / 1e6, 0);

/** Farthest point of any foot from the joint [m]. */
export const footReach = (feet: readonly Foot[]): number =>
  Math.max(
    ...feet.map((f) => Math.hypot(f.along_mm / 2, Math.abs(f.offset_across_mm) + f.across_mm / 2) / 1000),
  );
