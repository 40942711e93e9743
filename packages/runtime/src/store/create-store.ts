import { addFile } from "./add-file.ts";
import { createPlan } from "./create-plan.ts";
import type { StoreParts } from "./parts.ts";
import type { BackupReport, Store } from "./port.ts";
import { history, loadPlan } from "./read-plan.ts";
import { summaryOf } from "./rows.ts";
import { saveEdit, saveStep } from "./save-revision.ts";

/** What only the database at hand can do. */
export interface DatabaseActions {
  readonly backup: (target: string) => Promise<BackupReport>;
  /** Runs one transaction, waiting for its turn. Throws `StoreError` "busy" when that takes too long. */
  readonly whenFree: <T>(work: () => Promise<T>) => Promise<T>;
  readonly close: () => Promise<void>;
}

/** The store over any database that kysely speaks to. */
export function createStore(parts: StoreParts, actions: DatabaseActions): Store {
  const { db, blobs } = parts;
  const { whenFree } = actions;
  return {
    listPlans: async () => {
      const rows = await db
        .selectFrom("plan")
        .select(["id", "name", "site_name", "revision", "undo_top", "redo_top", "created_at", "saved_at"])
        .orderBy("saved_at", "desc")
        .orderBy("id")
        .execute();
      return rows.map(summaryOf);
    },
    createPlan: (plan, files) => whenFree(() => createPlan(parts, plan, files)),
    loadPlan: (id) => loadPlan(db, id),
    readFile: async (planId, name) => {
      const row = await db
        .selectFrom("plan_file")
        .select("sha256")
        .where("plan_id", "=", planId)
        .where("name", "=", name)
        .executeTakeFirst();
      return row ? blobs.get(row.sha256) : null;
    },
    addFile: (id, name, bytes) => whenFree(() => addFile(parts, id, name, bytes)),
    saveEdit: (id, base, edit, inverse, next) =>
      whenFree(() => saveEdit(parts, id, base, edit, inverse, next)),
    undo: (id, base) => whenFree(() => saveStep(parts, id, base, "undo")),
    redo: (id, base) => whenFree(() => saveStep(parts, id, base, "redo")),
    history: (id) => history(db, id),
    backup: actions.backup,
    close: actions.close,
  };
}
