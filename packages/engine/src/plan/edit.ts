import type { Kit } from "../kit/index.ts";
import type { Zone } from "../site/index.ts";
import type { UnitSystem } from "../units/index.ts";
import type { LayoutChoice, Weights } from "../layout/index.ts";
import type { Plan, Visit } from "./document.ts";

/** Sections of a plan that are replaced whole, each by an edit of its own. */
export const SECTIONS = [
  "site_name",
  "request",
  "survey",
  "water",
  "rules",
  "papers",
  "photo",
  "terrain",
  "prices",
  "laying",
  "removal",
  "starts",
  "plots",
  "zones",
  "levels",
  "flood_level",
  "water_kg_m3",
  "ground",
  "proof",
  "code",
  "visits",
  "saw",
  "money",
] as const;
export type Section = (typeof SECTIONS)[number];

export type SectionEdit = {
  [S in Section]: { readonly type: "set-section"; readonly section: S; readonly value: Plan[S] };
}[Section];

/** Every change of a plan is one of these. They drive undo, hand tools, proposals and revisions. */
export type Edit =
  | { readonly type: "move-plot"; readonly plot: string; readonly x: number; readonly y: number }
  | { readonly type: "move-start"; readonly start: string; readonly x: number; readonly y: number }
  | {
      readonly type: "set-plot-reach";
      readonly plot: string;
      readonly keep_off_m: number;
      readonly reach_m: number;
    }
  | { readonly type: "add-zone"; readonly zone: Zone; readonly at?: number }
  | { readonly type: "remove-zone"; readonly zone: string }
  | { readonly type: "set-weights"; readonly weights: Weights }
  | { readonly type: "set-layout"; readonly layout: LayoutChoice }
  | { readonly type: "set-visit"; readonly visit: Visit }
  | { readonly type: "set-kit"; readonly kit: Kit }
  | { readonly type: "set-units"; readonly units: UnitSystem }
  | { readonly type: "rename"; readonly name: string }
  /** Another price list and the currency that it is in: the two only hold together. */
  | { readonly type: "set-price-list"; readonly file: string; readonly currency: string }
  | SectionEdit;
