import type { Kysely } from "kysely";
import { Migrator, type Migration } from "kysely/migration";
import { StoreError } from "./port.ts";

/** Every step of the schema, by name in order. A step that was released is never changed: a new one is added. */
const migrations: Readonly<Record<string, Migration>> = {
  "0001-plans": {
    async up(db: Kysely<unknown>): Promise<void> {
      await db.schema
        .createTable("plan")
        .addColumn("id", "text", (c) => c.primaryKey())
        .addColumn("name", "text", (c) => c.notNull())
        .addColumn("site_name", "text", (c) => c.notNull())
        .addColumn("document", "text", (c) => c.notNull())
        .addColumn("revision", "integer", (c) => c.notNull())
        .addColumn("undo_top", "integer")
        .addColumn("redo_top", "integer")
        .addColumn("created_at", "bigint", (c) => c.notNull())
        .addColumn("saved_at", "bigint", (c) => c.notNull())
        .execute();
      await db.schema
        .createTable("revision")
        .addColumn("plan_id", "text", (c) => c.notNull().references("plan.id"))
        .addColumn("number", "integer", (c) => c.notNull())
        .addColumn("kind", "text", (c) => c.notNull())
        .addColumn("summary", "text", (c) => c.notNull())
        .addColumn("edit", "text")
        .addColumn("inverse", "text")
        .addColumn("of_revision", "integer")
        .addColumn("undo_top", "integer")
        .addColumn("redo_top", "integer")
        .addColumn("saved_at", "bigint", (c) => c.notNull())
        .addPrimaryKeyConstraint("revision_key", ["plan_id", "number"])
        .execute();
      await db.schema
        .createTable("plan_file")
        .addColumn("plan_id", "text", (c) => c.notNull().references("plan.id"))
        .addColumn("name", "text", (c) => c.notNull())
        .addColumn("sha256", "text", (c) => c.notNull())
        .addColumn("size", "bigint", (c) => c.notNull())
        .addPrimaryKeyConstraint("plan_file_key", ["plan_id", "name"])
        .execute();
    },
  },
};

/** Brings the schema to the newest step. Throws `StoreError` "newer-store" when it holds steps this build lacks. */
export async function migrate<T>(db: Kysely<T>): Promise<void> {
  const provider = {
    getMigrations: (): Promise<Record<string, Migration>> => Promise.resolve({ ...migrations }),
  };
  const { error } = await new Migrator({ db, provider }).migrateToLatest();
  if (error === undefined) return;
  if (error instanceof Error && /previously executed migration .* is missing/.test(error.message))
    throw new StoreError(
      "newer-store",
      "This store was written by a newer version of Causey. Use that version, or a backup made by this one.",
      error,
    );
  throw error;
}
