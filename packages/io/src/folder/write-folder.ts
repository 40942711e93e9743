import { createHash } from "node:crypto";
import { lstat, mkdir, open, readFile, readdir, realpath, rename, rm } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { DomainError } from "@causey/engine/units";
import { fileNameFault, type PlanFiles } from "../files/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { clearLeftovers, makeAside } from "./aside.ts";
import { writeFault } from "./write-fault.ts";

/** Stands in every folder that Causey wrote: the sign, then one line "check sum  name" for each file. */
const MARK_FILE = ".causey-output";
const MARK =
  "Written by Causey. A later run may replace this folder as long as the files are as they were written.";

export interface WriteFolderOptions {
  /** Write even where something else stands; that is moved aside, never deleted. */
  readonly force?: boolean;
  /** Stops the writing: what was written aside is taken away, and the promise rejects with the signal's reason. */
  readonly signal?: AbortSignal;
}

export interface FolderWritten {
  readonly dir: string;
  /** Where a folder that was in the way now lies; null when none was, or when it was an earlier output. */
  readonly moved_aside: string | null;
}

/**
 * Writes a folder as one step: the files are written beside it and forced to disk, then the folder is named. A crash
 * leaves the old folder (perhaps under its name with ".before-1") or the new one, never half of each; what it leaves
 * beside them is taken away by the next run. Node only.
 *
 * dir    path of the folder; its parent must exist
 * files  name -> bytes
 * Throws `ProblemError` when something is in the way that is not an earlier output of Causey exactly as it was written
 * (a file was added or changed since), unless `force` is set; `FolderWriteError` when the disk is full or may not be
 * written; `DomainError` for a name that a folder cannot hold.
 */
export async function writeFolder(
  dir: string,
  files: PlanFiles,
  options: WriteFolderOptions = {},
): Promise<FolderWritten> {
  for (const name of files.keys()) {
    const why = fileNameFault(name);
    if (why !== null) throw new DomainError("file-name", { name, why });
  }
  const target = await inRealParent(dir);
  const obstacle = await inTheWay(target);
  if (obstacle !== null && obstacle.why !== null && options.force !== true) stop(dir, obstacle.why);
  await clearLeftovers(target);
  const bytes = [...files.values()].reduce((sum, b) => sum + b.length, 0);
  let place = basename(target);
  let aside: string | null = null;
  try {
    aside = await makeAside(target);
    await fill(aside, files, options.signal, (name) => (place = name));
    options.signal?.throwIfAborted();
    const moved = await putInPlace(aside, target, obstacle !== null);
    const isSpent = obstacle !== null && obstacle.why === null;
    if (moved !== null && isSpent) await rm(moved, { recursive: true, force: true });
    return { dir: target, moved_aside: isSpent ? null : moved };
  } catch (error) {
    if (aside !== null) await rm(aside, { recursive: true, force: true });
    options.signal?.throwIfAborted();
    throw writeFault(dir, place, bytes, error);
  }
}

/** Names the finished folder; what stood there before is put back if that fails. */
async function putInPlace(aside: string, target: string, isTaken: boolean): Promise<string | null> {
  const moved = isTaken ? await moveAside(target) : null;
  try {
    await rename(aside, target);
  } catch (error) {
    if (moved !== null) await rename(moved, target);
    throw error;
  }
  await syncFolder(dirname(target));
  return moved;
}

async function inRealParent(dir: string): Promise<string> {
  const path = resolve(dir);
  const parent = await realpath(dirname(path)).catch(() => null);
  if (parent !== null && path !== dirname(path)) return join(parent, basename(path));
  return stop(dir, "the folder in which it should stand does not exist", "Make that folder first.");
}

const stop = (dir: string, why: string, mend?: string): never =>
  new Findings(dir).stop({
    code: "folder-in-the-way",
    place: "folder",
    value: dir,
    message: `The folder ${quote(dir)} is not written: ${why}.`,
    mend: mend ?? "Choose another folder, or force it: what stands there is then moved aside, not deleted.",
  });

/** What stands at the place: null for nothing; `why` null when it may simply be replaced. */
async function inTheWay(target: string): Promise<{ readonly why: string | null } | null> {
  const status = await lstat(target).catch(() => null);
  if (status === null) return null;
  if (!status.isDirectory()) return { why: "a file or a link of this name stands there" };
  const names = await allNames(target, "");
  if (names.length === 0) return { why: null };
  const mark = await readFile(join(target, MARK_FILE), "utf8").catch(() => "");
  const [sign, ...lines] = mark.split("\n");
  if (sign !== MARK) return { why: "a folder that is no output of Causey stands there" };
  for (const name of names.filter((n) => n !== MARK_FILE)) {
    const isOwn = lines.some((line) => line.endsWith(`  ${name}`));
    if (!isOwn) return { why: `it holds ${quote(name)}, which Causey did not write` };
    if (!lines.includes(markLine(name, await readFile(join(target, name)))))
      return { why: `${quote(name)} was changed after Causey wrote it` };
  }
  return { why: null };
}

const markLine = (name: string, bytes: Uint8Array): string =>
  `${createHash("sha256").update(bytes).digest("hex")}  ${name}`;

async function allNames(root: string, inner: string): Promise<string[]> {
  const entries = await readdir(join(root, inner), { withFileTypes: true });
  const names = entries.map((e): Promise<string[]> => {
    const name = inner === "" ? e.name : `${inner}/${e.name}`;
    return e.isDirectory() ? allNames(root, name) : Promise.resolve([name]);
  });
  return (await Promise.all(names)).flat();
}

async function fill(
  root: string,
  files: PlanFiles,
  signal: AbortSignal | undefined,
  begin: (name: string) => void,
): Promise<void> {
  const names = [...files.keys()].sort();
  const folders = new Set(
    names.flatMap((n) =>
      n
        .split("/")
        .slice(0, -1)
        .map((_, i, parts) => parts.slice(0, i + 1).join("/")),
    ),
  );
  for (const folder of folders) await mkdir(join(root, folder), { recursive: true });
  for (const name of names) {
    begin(name);
    await writeSynced(join(root, name), files.get(name)!, signal);
  }
  const sums = names.map((name) => markLine(name, files.get(name)!));
  await writeSynced(join(root, MARK_FILE), new TextEncoder().encode([MARK, ...sums, ""].join("\n")), signal);
  for (const folder of [...folders, ""]) await syncFolder(join(root, folder));
}

async function writeSynced(path: string, bytes: Uint8Array, signal: AbortSignal | undefined): Promise<void> {
  signal?.throwIfAborted();
  const file = await open(path, "wx");
  try {
    await file.writeFile(bytes, signal === undefined ? {} : { signal });
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Windows cannot open a folder to force it to disk; there the rename alone must do. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, "r").catch(() => null);
  if (folder === null) return;
  try {
    await folder.sync();
  } catch {
    // Some file systems refuse to sync a folder; the files themselves are on disk already.
  } finally {
    await folder.close();
  }
}

async function moveAside(target: string): Promise<string> {
  for (let n = 1; ; n++) {
    const aside = `${target}.before-${n}`;
    if ((await lstat(aside).catch(() => null)) !== null) continue;
    await rename(target, aside);
    return aside;
  }
}
