import type { Kysely, Selectable } from "kysely";
import { StoreError, type Conflict, type LoadedPlan, type RevisionRecord, type Step } from "./port.ts";
import { fileOf, readDocument, recordOf } from "./rows.ts";
import type { PlanTable, RevisionTable, Tables } from "./tables.ts";

type Db = Kysely<Tables>;

const planRow = (db: Db, id: string): Promise<Selectable<PlanTable> | undefined> =>
  db.selectFrom("plan").selectAll().where("id", "=", id).executeTakeFirst();

/** The row of a plan that must be there. */
export async function planRowOf(db: Db, id: string): Promise<Selectable<PlanTable>> {
  const row = await planRow(db, id);
  if (row) return row;
  throw new StoreError("no-such-plan", `There is no plan "${id}" in the store.`);
}

export async function revisionRow(
  db: Db,
  planId: string,
  number: number,
): Promise<Selectable<RevisionTable>> {
  return db
    .selectFrom("revision")
    .selectAll()
    .where("plan_id", "=", planId)
    .where("number", "=", number)
    .executeTakeFirstOrThrow();
}

/**
 * A plan as it stands. Only the first query reads what may change; the rest it names never does, so a save in
 * between cannot mix two revisions.
 */
export async function loadPlan(db: Db, id: string): Promise<LoadedPlan | null> {
  const row = await planRow(db, id);
  if (!row) return null;
  const files = await db
    .selectFrom("plan_file")
    .selectAll()
    .where("plan_id", "=", id)
    .orderBy("name")
    .execute();
  return {
    plan: readDocument(row.document),
    revision: row.revision,
    files: files.map(fileOf),
    undo: await step(db, id, row.undo_top),
    redo: await step(db, id, row.redo_top),
  };
}

async function step(db: Db, planId: string, top: number | null): Promise<Step | null> {
  if (top === null) return null;
  const { number, summary } = await revisionRow(db, planId, top);
  return { revision: number, summary };
}

export async function history(db: Db, planId: string): Promise<readonly RevisionRecord[]> {
  await planRowOf(db, planId);
  const rows = await db
    .selectFrom("revision")
    .selectAll()
    .where("plan_id", "=", planId)
    .orderBy("number")
    .execute();
  return rows.map(recordOf);
}

export async function conflictOf(db: Db, planId: string): Promise<Conflict> {
  const row = await planRowOf(db, planId);
  return { revision: row.revision, plan: readDocument(row.document) };
}
