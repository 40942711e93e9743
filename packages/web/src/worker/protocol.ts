import type { Problem, Progress } from "@causey/engine/formula";
import type { Plan, Results } from "@causey/engine/plan";
import type { Proposal } from "@causey/engine/proposals";

/** What a derivation comes to. */
export type DeriveOutcome =
  | {
      readonly ok: true;
      readonly results: Results;
      readonly warnings: readonly Problem[];
      readonly proposals?: readonly Proposal[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly cancelled: true };

export interface DeriveHooks {
  readonly report: (progress: Progress) => void;
  readonly cancelled: () => boolean;
}

/** The pipeline: pauses between its slices, so that a cancel can be heard. */
export type Derive = (
  request: { readonly plan: Plan; readonly files: Map<string, Uint8Array>; readonly check?: string },
  hooks: DeriveHooks,
) => Promise<DeriveOutcome>;

export interface NamedContent {
  readonly name: string;
  readonly sha256: string;
}

/** Page to worker. Contents travel once per hash; the worker keeps them. */
export type ToWorker =
  | { readonly type: "keep"; readonly sha256: string; readonly bytes: Uint8Array }
  | {
      readonly type: "derive";
      readonly id: number;
      readonly plan: Plan;
      readonly files: readonly NamedContent[];
      /** A failing check: what would make it pass is asked for as well. */
      readonly check?: string;
    }
  | { readonly type: "cancel"; readonly id: number };

/** Worker to page. Every request ends in one `outcome` or one `broken`. */
export type FromWorker =
  | { readonly type: "progress"; readonly id: number; readonly progress: Progress }
  | { readonly type: "outcome"; readonly id: number; readonly outcome: DeriveOutcome }
  | { readonly type: "broken"; readonly id: number; readonly message: string };
