/** The one model of the strip along the foot of every page: long section and one cell per part. Plain data. */
export interface StripModel {
  readonly length_m: number;
  readonly datum: string;
  readonly z_min_m: number;
  readonly z_max_m: number;
  readonly branches: readonly {
    readonly id: string;
    readonly from_m: number;
    readonly to_m: number;
    readonly plot: string;
  }[];
  /** Ground under the middle line; null where the terrain has no data. */
  readonly ground: readonly { readonly at_m: number; readonly z_m: number | null }[];
  readonly joints: readonly {
    readonly id: string;
    readonly at_m: number;
    readonly ground_m: number;
    readonly deck_m: number;
  }[];
  readonly levels: readonly { readonly id: string; readonly name: string; readonly z_m: number }[];
  readonly cells: readonly StripCell[];
}

export interface StripCell {
  readonly part: string;
  readonly kind: "module" | "platform";
  readonly from_m: number;
  readonly to_m: number;
  readonly length_m: number;
  readonly branch: string;
  /** Highest utilisation of the part's checks; null when nothing could be checked. */
  readonly utilisation: number | null;
  /** "over": a share of what carries is above one; "broken": a rule of width, edge, gap or place is not met there. */
  readonly state: "within" | "near" | "over" | "broken" | "not-checked";
  /** Title of the check that decides the state. */
  readonly governs: string;
}
