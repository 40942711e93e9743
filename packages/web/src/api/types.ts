import type { Problem } from "@causey/engine/formula";
import type { Edit, Plan } from "@causey/engine/plan";

export interface FileEntry {
  readonly name: string;
  readonly sha256: string;
  readonly size: number;
}

/** One line of the list of plans. */
export interface PlanEntry {
  readonly id: string;
  readonly name: string;
  readonly revision: number;
}

/** A plan as the store holds it now. `undo` and `redo` say in words what they would take back or do again. */
export interface PlanSnapshot {
  /** The store's id of the plan. */
  readonly id: string;
  readonly plan: Plan;
  readonly revision: number;
  readonly undo: string | null;
  readonly redo: string | null;
  readonly files: readonly FileEntry[];
}

export type SavedPlan = Omit<PlanSnapshot, "id" | "files">;

export type Change =
  { readonly kind: "edit"; readonly edit: Edit } | { readonly kind: "undo" } | { readonly kind: "redo" };

export type ChangeAnswer =
  | { readonly kind: "saved"; readonly saved: SavedPlan }
  | { readonly kind: "older-base"; readonly plan: Plan; readonly revision: number }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] };

export type OpenAnswer =
  | { readonly kind: "opened"; readonly id: string }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] };

export type AddFileAnswer =
  | { readonly kind: "kept"; readonly file: FileEntry }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] };

/** Why the store gave no answer that the page can use. */
export type Trouble = "no-answer" | "signed-out" | "not-found" | "unexpected";

export class StoreError extends Error {
  readonly trouble: Trouble;
  constructor(trouble: Trouble, message: string, cause?: unknown) {
    super(message, cause === undefined ? undefined : { cause });
    this.name = "StoreError";
    this.trouble = trouble;
  }
}

/** The store of plans as the page sees it. Every method throws `StoreError` when there is no usable answer. */
export interface PlanStore {
  readonly list: () => Promise<readonly PlanEntry[]>;
  readonly load: (id: string) => Promise<PlanSnapshot>;
  readonly file: (id: string, name: string) => Promise<Uint8Array>;
  readonly change: (id: string, base: number, change: Change) => Promise<ChangeAnswer>;
  readonly open: (archive: Uint8Array) => Promise<OpenAnswer>;
  /** Lays a file beside the plan; the answer says under which name it lies. */
  readonly addFile: (id: string, name: string, bytes: Uint8Array) => Promise<AddFileAnswer>;
  readonly archiveAddress: (id: string) => string;
}
