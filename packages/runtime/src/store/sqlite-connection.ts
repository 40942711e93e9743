import { setTimeout as pause } from "node:timers/promises";
import type { SqliteDatabase, SqliteStatement } from "kysely";
import Database from "libsql";
import { StoreError } from "./port.ts";

export type Connection = Database.Database;

/** How long one attempt waits for another process that is writing; this long nothing else runs here [ms]. */
const BUSY_TIMEOUT_MS = 50;
const ATTEMPTS = 100;
/** Between two attempts other requests have their turn [ms]. */
const PAUSE_MS = 10;

export function connect(path: string): Connection {
  const connection = new Database(path);
  connection.exec(`pragma busy_timeout = ${BUSY_TIMEOUT_MS}`);
  return connection;
}

/** The one value of a pragma. */
export function pragma(connection: Connection, name: string): unknown {
  const [row] = connection.pragma(name) as readonly (object | undefined)[];
  return row === undefined ? undefined : Object.values(row)[0];
}

/**
 * The connection as kysely wants it, with two of its own ways. A transaction takes the write lock when it begins, so
 * that it waits at its start or never. And transactions begin and end by `exec`: a prepared statement that met a lock
 * stays open in this driver and would forbid every later commit ("SQL statements in progress").
 */
export function forKysely(connection: Connection): SqliteDatabase {
  const control: Readonly<Record<string, string>> = {
    begin: "begin immediate",
    commit: "commit",
    rollback: "rollback",
  };
  return {
    close: () => connection.close(),
    prepare: (sql) => {
      const command = control[sql];
      return command === undefined
        ? (connection.prepare(sql) as unknown as SqliteStatement)
        : controlStatement(connection, command);
    },
  };
}

const controlStatement = (connection: Connection, command: string): SqliteStatement => ({
  reader: false,
  all: () => [],
  iterate: () => [].values(),
  run: () => {
    connection.exec(command);
    return { changes: 0, lastInsertRowid: 0 };
  },
});

/** Another process holds a lock that is needed. */
export const isBusy = (error: unknown): boolean =>
  error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");

/**
 * Runs work that is one transaction, and again while another process holds the write lock, for about six seconds.
 * Throws `StoreError` "busy" then.
 */
export async function whenFree<T>(work: () => Promise<T>, attempts = ATTEMPTS): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error)) throw error;
      if (attempt === attempts)
        throw new StoreError(
          "busy",
          "Another program is writing to the store. Try again in a moment.",
          error,
        );
      await pause(PAUSE_MS);
    }
  }
}
