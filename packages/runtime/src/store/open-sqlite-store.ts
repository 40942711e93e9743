import { backupDatabase, blobFolderOf } from "./backup.ts";
import { blobFolder } from "./blobs.ts";
import { createStore } from "./create-store.ts";
import type { StoreParts } from "./parts.ts";
import type { Store } from "./port.ts";
import { whenFree } from "./sqlite-connection.ts";
import { openDatabase } from "./sqlite.ts";

/**
 * The store in one SQLite file, made when it is not there, with the files of its plans in `files/` beside it.
 *
 * path  of the database, on a local disk (not a network share: its locks and shared memory are not to be trusted)
 * Several processes may open one store: SQLite lets one write at a time, and compare-and-swap decides who was first.
 * Throws `StoreError` "not-a-store", "newer-store" or "cannot-open", with nothing changed.
 */
export async function openSqliteStore(
  path: string,
  given: Pick<StoreParts, "clock" | "newId">,
): Promise<Store> {
  const { db, close } = await openDatabase(path);
  return createStore(
    { db, blobs: blobFolder(blobFolderOf(path)), ...given },
    { backup: (target) => backupDatabase(path, target), whenFree: (work) => whenFree(work), close },
  );
}
