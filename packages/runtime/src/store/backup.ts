import { randomUUID } from "node:crypto";
import { chmod, mkdir, open, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { blobFolder } from "./blobs.ts";
import { StoreError, type BackupReport } from "./port.ts";
import { connect, isBusy, pragma, type Connection } from "./sqlite-connection.ts";
import { whatIsAt } from "./store-file.ts";
import { syncFolder } from "./sync-folder.ts";

/** Where a database's blobs lie: beside it. */
export const blobFolderOf = (database: string): string => join(dirname(resolve(database)), "files");

/**
 * Copies a store to `target` while servers go on using it, through a connection of its own: one snapshot of the
 * database (`VACUUM INTO`), then every blob that the snapshot names, into `files/` beside the target. Everything is
 * written aside and synced; the target gets its name last, so a target that is there is complete. An earlier backup
 * of that name is replaced. The blobs of several backups in one folder are shared, since they never change.
 *
 * Throws `StoreError`: "cannot-open" when there is no store; "cannot-back-up" when the target is the store itself,
 * another program's file or a backup in use; "damaged-file" when a blob no longer has its hash.
 */
export async function backupDatabase(database: string, target: string): Promise<BackupReport> {
  if ((await whatIsAt(database)) !== "store")
    throw new StoreError(
      "cannot-open",
      `There is no store at ${database}. Give the data folder of the server.`,
    );
  await mkdir(dirname(resolve(target)), { recursive: true });
  await mayReplace(database, target);
  const source = connect(database);
  try {
    return await writeBackup(source, database, resolve(target));
  } finally {
    source.close();
  }
}

async function mayReplace(database: string, target: string): Promise<void> {
  const refuse = (why: string): never => {
    throw new StoreError("cannot-back-up", `${target} ${why}. Give another file.`);
  };
  const there = await stat(target).catch(() => null);
  if (!there) return;
  if (!there.isFile()) refuse("is not a file");
  if ((await realpath(target)) === (await realpath(database))) refuse("is the store itself");
  const found = await whatIsAt(target);
  if (found === "something-else") refuse("was not written by Causey and is left as it is");
  if (found === "store" && isInUse(target)) refuse("is open as a store");
}

/**
 * Whether some program has a database open: leaving the write-ahead log needs it alone. It also takes the log away
 * from beside an earlier backup, which must not lie beside the next one.
 */
function isInUse(path: string): boolean {
  const connection = connect(path);
  try {
    connection.exec("pragma journal_mode = delete");
    return false;
  } catch (error) {
    if (isBusy(error)) return true;
    throw error;
  } finally {
    connection.close();
  }
}

async function writeBackup(source: Connection, database: string, target: string): Promise<BackupReport> {
  const aside = join(dirname(target), `.${basename(target)}.${randomUUID()}.part`);
  try {
    source.prepare("vacuum into ?").run(aside);
    await chmod(aside, 0o600);
    const { plans, hashes } = contentsOf(source, aside);
    const blobBytes = await copyBlobs(database, target, hashes);
    const bytes = blobBytes + (await stat(aside)).size;
    await syncFile(aside);
    await rename(aside, target);
    await syncFolder(dirname(target));
    return { file: target, plans, files: hashes.length, bytes };
  } finally {
    await rm(aside, { force: true });
  }
}

interface Contents {
  readonly plans: number;
  readonly hashes: readonly string[];
}

/** What the copy holds, read from the copy itself after its integrity was checked. */
function contentsOf(source: Connection, aside: string): Contents {
  source.prepare("attach database ? as copy").run(aside);
  try {
    const verdict = pragma(source, "copy.integrity_check");
    if (verdict !== "ok") throw new StoreError("cannot-back-up", `The copy is damaged: ${String(verdict)}`);
    const plans = source.prepare("select id from copy.plan").all().length;
    const rows = source.prepare("select distinct sha256 from copy.plan_file order by sha256").all();
    return { plans, hashes: (rows as { readonly sha256: string }[]).map((row) => row.sha256) };
  } finally {
    source.exec("detach database copy");
  }
}

async function copyBlobs(database: string, target: string, hashes: readonly string[]): Promise<number> {
  const from = blobFolder(blobFolderOf(database));
  const to = blobFolder(blobFolderOf(target));
  let bytes = 0;
  for (const sha256 of hashes) bytes += (await to.put(await from.get(sha256))).size;
  return bytes;
}

async function syncFile(path: string): Promise<void> {
  const file = await open(path, "r+");
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}
