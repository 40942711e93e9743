import type { Qty } from "./quantity.ts";

/** A height never travels without its vertical datum. Two levels may be compared only on one datum. */
export interface Level {
  readonly z: Qty<"m">;
  readonly datum: string;
}
