import { chmod, mkdir } from "node:fs/promises";
import { dirname } from "node:path";
import { Kysely, SqliteDialect } from "kysely";
import { migrate } from "./migrations.ts";
import { StoreError } from "./port.ts";
import { connect, forKysely, pragma, whenFree, type Connection } from "./sqlite-connection.ts";
import { APPLICATION_ID, notAStore, whatIsAt } from "./store-file.ts";
import type { Tables } from "./tables.ts";

export interface OpenDatabase {
  readonly connection: Connection;
  readonly db: Kysely<Tables>;
  readonly close: () => Promise<void>;
}

/** Opens, and makes when it is not there, a store's database. Throws `StoreError` when the file is something else. */
export async function openDatabase(path: string): Promise<OpenDatabase> {
  await mkdir(dirname(path), { recursive: true, mode: 0o700 });
  const found = await whatIsAt(path);
  if (found === "something-else") throw notAStore(path);
  const connection = connect(path);
  try {
    if (found === "nothing") await whenFree(async () => markAsStore(connection));
    await whenFree(async () => makeDurable(connection, path));
    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: forKysely(connection) }) });
    await whenFree(() => migrateAlone(connection, db));
    if (found === "nothing") await chmod(path, 0o600);
    return { connection, db, close: () => close(connection, db) };
  } catch (error) {
    connection.close();
    throw error;
  }
}

/** First of all, while the file has its plain journal, so that the file's header says whose it is from then on. */
function markAsStore(connection: Connection): void {
  connection.exec(`pragma application_id = ${APPLICATION_ID}`);
}

/**
 * A commit is on the disk before it is acknowledged: write-ahead log with a full sync at every commit; on macOS the
 * stronger sync that also empties the drive's cache (elsewhere these two settings do nothing). What was set is read
 * back, because a file system without shared memory silently keeps another journal.
 */
function makeDurable(connection: Connection, path: string): void {
  for (const setting of [
    "journal_mode = wal",
    "synchronous = full",
    "fullfsync = on",
    "checkpoint_fullfsync = on",
    "foreign_keys = on",
  ])
    connection.exec(`pragma ${setting}`);
  if (pragma(connection, "journal_mode") === "wal" && pragma(connection, "synchronous") === 2) return;
  throw new StoreError(
    "cannot-open",
    `The disk that holds ${path} cannot keep a write-ahead log. Put the data folder on a local disk.`,
  );
}

/** One process at a time: a second one that starts meanwhile waits, and then finds the work done. */
async function migrateAlone(connection: Connection, db: Kysely<Tables>): Promise<void> {
  connection.exec("begin immediate");
  try {
    await migrate(db);
    connection.exec("commit");
  } catch (error) {
    connection.exec("rollback");
    throw error;
  }
}

/**
 * The log is written home first, so that the database file is whole by itself: this driver closes a connection only
 * when its last statement was collected.
 */
async function close(connection: Connection, db: Kysely<Tables>): Promise<void> {
  connection.exec("pragma wal_checkpoint(truncate)");
  await db.destroy();
}
