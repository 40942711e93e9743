import type { Plan, Results } from "@causey/engine/plan";
import type { Problem } from "@causey/engine/formula";

export interface PaperFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Page to worker: draw some sheets, as pictures for the screen or as one PDF. */
export interface PaperRequest {
  readonly id: number;
  readonly plan: Plan;
  readonly results: Results;
  readonly files: readonly PaperFile[];
  readonly which: readonly string[];
  readonly as: "pictures" | "pdf";
}

export interface DrawnSheets {
  readonly sheets: readonly {
    readonly id: string;
    readonly title: string;
    readonly pages: readonly number[];
  }[];
  readonly pages: readonly { readonly title: string; readonly svg: string }[];
}

export type PaperAnswer =
  | { readonly id: number; readonly kind: "pictures"; readonly drawn: DrawnSheets }
  | { readonly id: number; readonly kind: "pdf"; readonly bytes: Uint8Array }
  | { readonly id: number; readonly kind: "refused"; readonly problems: readonly Problem[] }
  | { readonly id: number; readonly kind: "broken"; readonly message: string };
