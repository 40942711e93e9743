import { join } from "node:path";
import { backupDatabase } from "./backup.ts";
import type { BackupReport } from "./port.ts";

/** The database in a data folder; the files of its plans lie in `files/` beside it. */
export const databaseOf = (dataFolder: string): string => join(dataFolder, "causey.sqlite");

/**
 * Copies everything in a data folder to the file `target` and `files/` beside it, while a server may be running.
 * To bring it back, copy both into an empty data folder, the file under the name `causey.sqlite`.
 * Throws `StoreError` (see `backupDatabase`).
 */
export const backupStore = (dataFolder: string, target: string): Promise<BackupReport> =>
  backupDatabase(databaseOf(dataFolder), target);
