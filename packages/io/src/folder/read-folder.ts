import { lstat, open, readdir, realpath } from "node:fs/promises";
import { join, sep } from "node:path";
import { FILE_LIMITS, fileNameFault, type PlanFiles } from "../files/index.ts";
import { Findings, quote } from "../problem/index.ts";

/** Folders inside folders that are read; photos lie one or two deep. */
const MOST_DEPTH = 4;

interface Walk {
  readonly root: string;
  readonly found: Findings;
  readonly sizes: Map<string, number>;
}

/**
 * All files of a plan folder, with those of its inner folders. Node only. Files and folders whose names begin with a
 * dot are left out. A link that leads out of the folder, a name that a plan folder cannot hold, and more or larger
 * files than `FILE_LIMITS` are refused before anything is read.
 * Throws `ProblemError` when the folder does not exist or holds something that is refused.
 */
export async function readFolder(dir: string): Promise<PlanFiles> {
  const found = new Findings(dir);
  const root = await folderOf(found, dir);
  const walk = { root, found, sizes: new Map<string, number>() };
  await visit(walk, "", 0);
  const total = [...walk.sizes.values()].reduce((sum, n) => sum + n, 0);
  if (total > FILE_LIMITS.total_bytes)
    refuse(
      found,
      "all files",
      `${total} bytes`,
      `The folder holds more than ${FILE_LIMITS.total_bytes} bytes`,
    );
  found.throwIfErrors();
  const names = [...walk.sizes.keys()].sort();
  const files = new Map<string, Uint8Array>();
  for (const name of names) files.set(name, await readBounded(walk, name));
  found.throwIfErrors();
  return files;
}

async function folderOf(found: Findings, dir: string): Promise<string> {
  const root = await realpath(dir).catch(() => null);
  if (root !== null && (await lstat(root)).isDirectory()) return root;
  return found.stop({
    code: "folder-missing",
    place: "folder",
    value: dir,
    message: root === null ? `There is no folder ${quote(dir)}.` : `${quote(dir)} is not a folder.`,
    mend: 'Give the path of a plan folder, or make one with "causey new".',
  });
}

const refuse = (found: Findings, place: string, value: string, message: string): void =>
  found.error({
    code: "folder-file",
    place,
    value,
    message: `${message}.`,
    mend: "Take out of the folder what the plan does not need.",
  });

async function visit(walk: Walk, inner: string, depth: number): Promise<void> {
  for (const entry of await readdir(join(walk.root, inner))) {
    if (entry.startsWith(".")) continue;
    const name = inner === "" ? entry : `${inner}/${entry}`;
    const why = fileNameFault(name);
    if (why !== null) refuse(walk.found, name, name, `The file ${quote(name)} is refused: ${why}`);
    else await take(walk, name, depth);
  }
}

async function take(walk: Walk, name: string, depth: number): Promise<void> {
  const { root, found, sizes } = walk;
  const path = await realpath(join(root, name)).catch(() => null);
  if (path === null || !path.startsWith(root + sep))
    return refuse(
      found,
      name,
      path ?? "broken link",
      `The link ${quote(name)} leads out of the folder or nowhere`,
    );
  const status = await lstat(path);
  if (status.isDirectory()) {
    if (depth >= MOST_DEPTH) refuse(found, name, name, `The folder ${quote(name)} lies too deep`);
    else if (path === join(root, ...name.split("/"))) await visit(walk, name, depth + 1);
    else refuse(found, name, path, `The folder ${quote(name)} is a link, which could lead in circles`);
  } else if (!status.isFile()) refuse(found, name, name, `${quote(name)} is not a file`);
  else if (status.size > FILE_LIMITS.file_bytes)
    refuse(
      found,
      name,
      `${status.size} bytes`,
      `The file ${quote(name)} is larger than ${FILE_LIMITS.file_bytes} bytes`,
    );
  else if (sizes.size >= FILE_LIMITS.entries) {
    if (sizes.size === FILE_LIMITS.entries)
      refuse(
        found,
        name,
        `${sizes.size} files`,
        `The folder holds more than the ${FILE_LIMITS.entries} files that are read`,
      );
    sizes.set(`${name} (not read)`, 0);
  } else sizes.set(name, status.size);
}

/** Reads no more than was announced, should the file grow meanwhile. */
async function readBounded(walk: Walk, name: string): Promise<Uint8Array> {
  const file = await open(join(walk.root, name), "r");
  try {
    const bytes = new Uint8Array(walk.sizes.get(name)!);
    let at = 0;
    while (at < bytes.length) {
      const { bytesRead } = await file.read(bytes, at, bytes.length - at, at);
      if (bytesRead === 0) break;
      at += bytesRead;
    }
    return at === bytes.length ? bytes : bytes.slice(0, at);
  } finally {
    await file.close();
  }
}
