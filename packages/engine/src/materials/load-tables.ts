import type { Source } from "../formula/index.ts";

interface LoadRuleBase {
  readonly id: string;
  readonly name: string;
  /** Who asks for it, and for what kind of walkway, in words. */
  readonly asked_by: string;
  /** Deflection that the same rule allows under it: span over this; null where it names none. */
  readonly span_over: number | null;
  readonly source: string;
  readonly status: Source["status"];
}

/** A load that a standard asks a walkway to carry, beside the visits of the plan. */
export type LoadRule = LoadRuleBase &
  (
    | { readonly kind: "area"; readonly pressure_pa: number }
    /** One load anywhere, on a square patch of this side. */
    | { readonly kind: "point"; readonly load_n: number; readonly side_m: number }
  );

/** What is left of timber that has lain out before, and how to tell it. */
export interface UsedTimberGrade {
  readonly id: string;
  readonly name: string;
  /** Gone from every face when it is taken up again for the first time: wear, softened and weathered wood [mm]. */
  readonly face_loss_mm: number;
  /** Gone from every face each time that it is laid again [mm]. */
  readonly face_loss_per_cycle_mm: number;
  /** Share of the strengths of new timber of the same grade, over 0 and at most 1. */
  readonly strength_share: number;
  /** Row of `Tables.holes`: what its screw holes still hold. */
  readonly hole: string;
  /** What to look for when sorting, in words. */
  readonly sort: string;
  readonly source: string;
  readonly status: Source["status"];
}
