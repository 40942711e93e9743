import type { ColumnType } from "kysely";

/** A 64-bit integer: SQLite's driver gives a number, PostgreSQL's a string of digits. Read through `Number()`. */
type Long = ColumnType<number | string, number, number>;

/**
 * Plain columns that SQLite and PostgreSQL share: text ids, whole milliseconds, JSON as text. A row of `revision` or
 * `plan_file` never changes once it is there; only the row of `plan` does, and always together with a new revision.
 */
export interface Tables {
  readonly plan: PlanTable;
  readonly revision: RevisionTable;
  readonly plan_file: PlanFileTable;
}

/** The two stacks of undo and redo, each by its top; what lies below is found from the revisions (`undo-stack.ts`). */
export interface StackColumns {
  undo_top: number | null;
  redo_top: number | null;
}

export interface PlanTable extends StackColumns {
  id: string;
  name: string;
  site_name: string;
  /** The whole document as JSON. */
  document: string;
  revision: number;
  created_at: Long;
  saved_at: Long;
}

export interface RevisionTable extends StackColumns {
  plan_id: string;
  number: number;
  kind: "create" | "edit" | "undo" | "redo";
  summary: string;
  edit: string | null;
  inverse: string | null;
  of_revision: number | null;
  saved_at: Long;
}

export interface PlanFileTable {
  plan_id: string;
  name: string;
  sha256: string;
  size: Long;
}
