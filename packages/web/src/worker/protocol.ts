import type { Problem, Progress } from "@causey/engine/formula";
import type { Plan, Results } from "@causey/engine/plan";

/** What a derivation comes to. */
export type DeriveOutcome =
  | { readonly ok: true; readonly results: Results; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly cancelled: true };

export interface DeriveHooks {
  readonly report: (progress: Progress) => void;
  readonly cancelled: () => boolean;
}

/** The pipeline: pauses between its slices, so that a cancel can be heard. */
export type Derive = (
  request: { readonly plan: Plan; readonly files: Map<string, Uint8Array> },
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
    }
  | { readonly type: "cancel"; readonly id: number };

/** Worker to page. Every request ends in one `outcome` or one `broken`. */
export type FromWorker =
  | { readonly type: "progress"; readonly id: number; readonly progress: Progress }
  | { readonly type: "outcome"; readonly id: number; readonly outcome: DeriveOutcome }
  | { readonly type: "broken"; readonly id: number; readonly message: string };
