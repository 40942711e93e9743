import type { Plan } from "@causey/engine/plan";
import type { Transaction } from "kysely";
import type { StoredFile } from "./port.ts";
import type { StoreParts } from "./parts.ts";
import type { Tables } from "./tables.ts";

const FIRST_REVISION = 1;

/** Takes in a plan: its files first, so that the rows never name a blob that is not there. */
export async function createPlan(
  parts: StoreParts,
  plan: Plan,
  files: ReadonlyMap<string, Uint8Array>,
): Promise<{ readonly id: string; readonly revision: number }> {
  const stored: StoredFile[] = [];
  for (const [name, bytes] of files) stored.push({ name, ...(await parts.blobs.put(bytes)) });
  const now = parts.clock.now();
  const id = await parts.db.transaction().execute(async (trx) => {
    const id = (await insertPlan(trx, plan, now)) ? plan.id : await insertCopy(trx, plan, parts.newId(), now);
    await insertFirstRevision(trx, id, now);
    if (stored.length > 0)
      await trx
        .insertInto("plan_file")
        .values(stored.map((file) => ({ plan_id: id, ...file })))
        .execute();
    return id;
  });
  return { id, revision: FIRST_REVISION };
}

/** False when the id is taken. */
async function insertPlan(trx: Transaction<Tables>, plan: Plan, now: number): Promise<boolean> {
  const result = await trx
    .insertInto("plan")
    .values({
      id: plan.id,
      name: plan.name,
      site_name: plan.site_name,
      document: JSON.stringify(plan),
      revision: FIRST_REVISION,
      undo_top: null,
      redo_top: null,
      created_at: now,
      saved_at: now,
    })
    .onConflict((conflict) => conflict.column("id").doNothing())
    .executeTakeFirst();
  return result.numInsertedOrUpdatedRows === 1n;
}

async function insertCopy(trx: Transaction<Tables>, plan: Plan, id: string, now: number): Promise<string> {
  if (await insertPlan(trx, { ...plan, id }, now)) return id;
  throw new Error(`the id ${id}, made for a new plan, is taken too`);
}

const insertFirstRevision = (trx: Transaction<Tables>, id: string, now: number): Promise<unknown> =>
  trx
    .insertInto("revision")
    .values({
      plan_id: id,
      number: FIRST_REVISION,
      kind: "create",
      summary: "Created the plan",
      edit: null,
      inverse: null,
      of_revision: null,
      undo_top: null,
      redo_top: null,
      saved_at: now,
    })
    .execute();
