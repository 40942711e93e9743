import type { Edit } from "../plan/index.ts";

/** One step of the catalogue that might make a check pass. */
export interface Step {
  /** "2x10 stringers", "a third stringer". */
  readonly words: string;
  readonly edit: Edit;
  /** False when the walkway must be laid out anew before anything can be said. */
  readonly keepsLayout: boolean;
}

/** Steps of one kind, the smallest first: the first that passes is proposed. */
export interface Family {
  readonly id: string;
  readonly steps: readonly Step[];
}

/** A change that makes a failing check pass, worked out on the whole plan. */
export interface Proposal {
  readonly check: string;
  readonly family: string;
  readonly words: string;
  /** One press applies it; the plan's undo takes it back. */
  readonly edit: Edit;
  /** Of the check, once the edit is applied. */
  readonly utilisation: number;
  /** Cost of the whole walkway with it less without it, in the plan's currency; null while prices are missing. */
  readonly added_cost: number | null;
  /** Mass of all modules and platforms, dry, with it less without it [kg]. */
  readonly added_kg: number;
  /** Heaviest module with it, dry [kg]. */
  readonly heaviest_kg: number;
  /** Checks that pass now and would not with it. */
  readonly worsens: readonly { readonly id: string; readonly title: string }[];
}
