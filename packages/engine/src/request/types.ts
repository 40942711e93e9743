/** Kinds of walkway that a steward weighs, "no structure" among them; the table of facts stands in `options`. */
export type WalkwayKind =
  | "no-structure"
  | "another-season"
  | "by-boat"
  | "ground-laid"
  | "sleepers"
  | "open-crates"
  | "post-pairs"
  | "screw-piles"
  | "floats"
  | "mats";

/** What was decided about one kind, and why. A kind without an entry has not been looked at. */
export interface OptionChoice {
  readonly kind: WalkwayKind;
  readonly status: "chosen" | "rejected" | "open";
  readonly reason: string;
}

/** Who asked for access and for what. Empty text = not told yet; dates are ISO days. */
export interface AccessRequest {
  readonly requester: string;
  readonly organisation: string;
  readonly contact: string;
  readonly purpose: string;
  readonly received: string | null;
  /** Whether the visitors accept wet feet at high water; null = not asked. */
  readonly wet_feet_ok: boolean | null;
  readonly options: readonly OptionChoice[];
}
