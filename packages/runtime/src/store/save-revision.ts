import { describeEdit, revertEdit, type Edit, type Plan } from "@causey/engine/plan";
import { DomainError } from "@causey/engine/units";
import type { Selectable } from "kysely";
import type { SaveOutcome, StepOutcome } from "./port.ts";
import type { StoreParts } from "./parts.ts";
import { conflictOf, planRowOf, revisionRow } from "./read-plan.ts";
import { readDocument, readEdit } from "./rows.ts";
import type { PlanTable, RevisionTable, StackColumns } from "./tables.ts";
import { afterEdit, afterRedo, afterUndo } from "./undo-stack.ts";

type Change = Pick<RevisionTable, "kind" | "summary" | "edit" | "inverse" | "of_revision"> & StackColumns;

export async function saveEdit(
  parts: StoreParts,
  planId: string,
  base: number,
  edit: Edit,
  inverse: Edit,
  next: Plan,
): Promise<SaveOutcome> {
  if (next.id !== planId) throw new DomainError("save-of-another-plan", { planId, given: next.id });
  const change: Change = {
    kind: "edit",
    summary: describeEdit(edit, revertEdit(next, inverse)),
    edit: JSON.stringify(edit),
    inverse: JSON.stringify(inverse),
    of_revision: null,
    ...afterEdit(base + 1),
  };
  if (await swap(parts, planId, base, next, change)) return { ok: true, revision: base + 1 };
  return { ok: false, conflict: await conflictOf(parts.db, planId) };
}

/**
 * Compare and swap in one transaction: the plan moves from `base` to the next revision, or nothing happens. The
 * update comes first, so that the transaction holds the write lock from its first statement and never has to give up
 * half way. Whatever `change` was computed from belongs to `base`, and a revision never changes.
 */
async function swap(
  { db, clock }: StoreParts,
  planId: string,
  base: number,
  plan: Plan,
  change: Change,
): Promise<boolean> {
  const saved_at = clock.now();
  const { undo_top, redo_top } = change;
  return db.transaction().execute(async (trx) => {
    const { numUpdatedRows } = await trx
      .updateTable("plan")
      .set({ name: plan.name, site_name: plan.site_name, document: JSON.stringify(plan) })
      .set({ revision: base + 1, undo_top, redo_top, saved_at })
      .where("id", "=", planId)
      .where("revision", "=", base)
      .executeTakeFirst();
    if (numUpdatedRows !== 1n) return false;
    await trx
      .insertInto("revision")
      .values({ plan_id: planId, number: base + 1, saved_at, ...change })
      .execute();
    return true;
  });
}

/** Takes back the newest edit that stands, or does again what was taken back last. */
export async function saveStep(
  parts: StoreParts,
  planId: string,
  base: number,
  kind: "undo" | "redo",
): Promise<StepOutcome> {
  const row = await planRowOf(parts.db, planId);
  const top = kind === "undo" ? row.undo_top : row.redo_top;
  if (row.revision === base && top === null) return { ok: false, why: "nothing" };
  if (row.revision === base && top !== null) {
    const { plan, change } = await stepFrom(parts, row, top, kind);
    if (await swap(parts, planId, base, plan, change)) return { ok: true, revision: base + 1, plan };
  }
  return { ok: false, why: "conflict", conflict: await conflictOf(parts.db, planId) };
}

/** The revision `top` turned round: its inverse is applied, and its edit leads back again. */
async function stepFrom(
  { db }: StoreParts,
  row: Selectable<PlanTable>,
  top: number,
  kind: "undo" | "redo",
): Promise<{ readonly plan: Plan; readonly change: Change }> {
  const target = await revisionRow(db, row.id, top);
  const below = await revisionRow(db, row.id, top - 1);
  if (target.inverse === null) throw new DomainError("step-without-inverse", { plan: row.id, top });
  const plan = revertEdit(readDocument(row.document), readEdit(target.inverse)!);
  const stacks = kind === "undo" ? afterUndo(row.revision + 1, below) : afterRedo(target, below);
  const of_revision = kind === "undo" ? target.number : target.of_revision;
  const { summary } = target;
  return {
    plan,
    change: { kind, summary, edit: target.inverse, inverse: target.edit, of_revision, ...stacks },
  };
}
