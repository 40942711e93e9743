import type { Database, SqlJsStatic } from "sql.js";

/**
 * Where the program finds SQLite's WebAssembly file. Node needs nothing. A browser gives `locateFile`, which turns
 * the file's name into its address, or the bytes themselves.
 */
export interface SqliteHook {
  readonly locateFile?: (file: string) => string;
  readonly wasmBinary?: ArrayBuffer;
}

let engine: Promise<SqlJsStatic> | null = null;

/** SQLite is about 700 kB, so it is loaded when the first database is opened, and once. */
const loadSqlite = (hook: SqliteHook): Promise<SqlJsStatic> =>
  (engine ??= import("sql.js")
    .then(({ default: init }) => init({ ...hook }))
    .catch((fault: unknown) => {
      engine = null;
      throw fault;
    }));

/**
 * Opens a database in memory (empty without bytes), hands it to `use` and closes it. After a fault of the machine
 * itself (out of memory) the next call starts a new one.
 */
export async function withDatabase<T>(
  bytes: Uint8Array | null,
  hook: SqliteHook,
  use: (db: Database) => T,
): Promise<T> {
  const { Database } = await loadSqlite(hook);
  const db = new Database(bytes);
  try {
    return use(db);
  } catch (fault) {
    if (fault instanceof WebAssembly.RuntimeError) engine = null;
    throw fault;
  } finally {
    closeQuietly(db);
  }
}

/** Closing a damaged database may fail too; the fault that matters is then already on its way. */
function closeQuietly(db: Database): void {
  try {
    db.close();
  } catch {
    engine = null;
  }
}
