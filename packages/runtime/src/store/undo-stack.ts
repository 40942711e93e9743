import type { RevisionTable, StackColumns } from "./tables.ts";

/**
 * Undo and redo as two stacks that live in the revisions themselves. Every revision stores the top of both stacks
 * as they are after it, and what lies below a top is the top as it was one revision earlier, when it was pushed. So
 * a step costs the same in a long history as in a short one, and a reload changes nothing.
 *
 * undo stack: revisions of kind "edit"; redo stack: revisions of kind "undo".
 */
type Row = Pick<RevisionTable, "number" | "kind" | "of_revision">;

/** After an edit saved as revision `number`: it can be taken back, and nothing can be done again. */
export const afterEdit = (number: number): StackColumns => ({ undo_top: number, redo_top: null });

/**
 * After revision `number` took back the edit `taken`.
 *
 * below  the stacks as they were just before `taken` was saved
 */
export const afterUndo = (number: number, below: StackColumns): StackColumns => ({
  undo_top: below.undo_top,
  redo_top: number,
});

/**
 * After a revision that did again what the revision `undone` (of kind "undo") had taken back.
 *
 * below  the stacks as they were just before `undone` was saved
 */
export const afterRedo = (undone: Row, below: StackColumns): StackColumns => ({
  undo_top: undone.of_revision,
  redo_top: below.redo_top,
});
