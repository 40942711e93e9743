import type { Edit, Plan } from "@causey/engine/plan";

/** The time of day, handed in: milliseconds since 1970-01-01T00:00Z. */
export interface Clock {
  readonly now: () => number;
}

export interface StoredFile {
  readonly name: string;
  readonly sha256: string;
  /** Bytes. */
  readonly size: number;
}

export interface PlanSummary {
  readonly id: string;
  readonly name: string;
  readonly site_name: string;
  readonly revision: number;
  readonly created_at: number;
  readonly saved_at: number;
}

/** An edit that can be taken back or done again, in plain words. */
export interface Step {
  readonly revision: number;
  readonly summary: string;
}

export interface LoadedPlan {
  readonly plan: Plan;
  /** 1 for the plan as it was created; each save, undo and redo adds one. */
  readonly revision: number;
  readonly files: readonly StoredFile[];
  readonly undo: Step | null;
  readonly redo: Step | null;
}

export interface RevisionRecord {
  readonly number: number;
  readonly kind: "create" | "edit" | "undo" | "redo";
  /** The edit in plain words; an undo or a redo carries the words of the edit it takes back or does again. */
  readonly summary: string;
  /** What was applied to the revision before; null for the creation. */
  readonly edit: Edit | null;
  /** What leads back to the revision before. */
  readonly inverse: Edit | null;
  /** For an undo or a redo: the revision whose edit it takes back or does again. */
  readonly of: number | null;
  readonly saved_at: number;
}

/** Somebody else saved first. Nothing was changed; this is what stands in the store now. */
export interface Conflict {
  readonly revision: number;
  readonly plan: Plan;
}

export type SaveOutcome =
  { readonly ok: true; readonly revision: number } | { readonly ok: false; readonly conflict: Conflict };

export type StepOutcome =
  | { readonly ok: true; readonly revision: number; readonly plan: Plan }
  | { readonly ok: false; readonly why: "conflict"; readonly conflict: Conflict }
  | { readonly ok: false; readonly why: "nothing" };

export interface BackupReport {
  readonly file: string;
  readonly plans: number;
  readonly files: number;
  /** Of the database file and the blobs beside it. */
  readonly bytes: number;
}

/**
 * Where plans are kept when they are served. Every promise of a write settles only when the write is on the disk; a
 * write that fails leaves nothing behind. A method that is given the id of a plan that is not there throws
 * `StoreError` "no-such-plan", where it does not answer null.
 */
export interface Store {
  /** All plans, last saved first. */
  listPlans(): Promise<readonly PlanSummary[]>;
  /**
   * Takes in a plan and its files (name in the plan folder -> bytes). Keeps the plan's id when it is free; otherwise
   * the plan is stored under a new id, which the answer carries.
   */
  createPlan(
    plan: Plan,
    files: ReadonlyMap<string, Uint8Array>,
  ): Promise<{ readonly id: string; readonly revision: number }>;
  loadPlan(id: string): Promise<LoadedPlan | null>;
  /** Null when the plan or the file is not there. Throws `StoreError` "damaged-file" when the bytes have changed. */
  readFile(planId: string, name: string): Promise<Uint8Array | null>;
  /**
   * Lays a file beside a plan. A name that is taken by other bytes gets a number ("terrain-2.tif"), so that no
   * earlier revision loses its file; the answer says under which name the file lies.
   */
  addFile(planId: string, name: string, bytes: Uint8Array): Promise<StoredFile>;
  /**
   * Saves an edit by compare-and-swap: only when `base` is still the newest revision.
   *
   * next  the document after `edit`; `inverse` leads from it back to the document at `base`
   */
  saveEdit(planId: string, base: number, edit: Edit, inverse: Edit, next: Plan): Promise<SaveOutcome>;
  /** Takes back the newest edit that stands, as a new revision. */
  undo(planId: string, base: number): Promise<StepOutcome>;
  /** Does again what the last undo took back; a new edit ends that possibility. */
  redo(planId: string, base: number): Promise<StepOutcome>;
  /** Every revision, oldest first. */
  history(planId: string): Promise<readonly RevisionRecord[]>;
  /** Writes a complete copy that opens as a store of its own, while this one stays in use. */
  backup(target: string): Promise<BackupReport>;
  close(): Promise<void>;
}

export type StoreFault =
  "no-such-plan" | "damaged-file" | "not-a-store" | "newer-store" | "cannot-open" | "cannot-back-up" | "busy";

/** The store cannot do what it was asked; the message says why and how to mend it, in words for the user. */
export class StoreError extends Error {
  readonly code: StoreFault;
  constructor(code: StoreFault, message: string, cause?: unknown) {
    super(message, cause === undefined ? undefined : { cause });
    this.name = "StoreError";
    this.code = code;
  }
}
