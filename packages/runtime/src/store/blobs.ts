import { createHash, randomUUID } from "node:crypto";
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { StoreError } from "./port.ts";
import { syncFolder } from "./sync-folder.ts";

export interface BlobRecord {
  readonly sha256: string;
  readonly size: number;
}

/** Bytes kept by their content: the name is the SHA-256, so a blob is written once and never changes. */
export interface Blobs {
  /** Settles when the bytes and their name are on the disk. */
  readonly put: (bytes: Uint8Array) => Promise<BlobRecord>;
  /** Throws `StoreError` "damaged-file" when the blob is missing or no longer has its hash. */
  readonly get: (sha256: string) => Promise<Uint8Array>;
}

const sha256Of = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** A folder of blobs. The folder is made on the first `put`. */
export function blobFolder(folder: string): Blobs {
  const pathOf = (sha256: string): string => join(folder, sha256);
  return {
    put: async (bytes) => {
      const sha256 = sha256Of(bytes);
      await mkdir(folder, { recursive: true, mode: 0o700 });
      if (!(await holds(pathOf(sha256), sha256))) await writeAside(folder, pathOf(sha256), bytes);
      await syncFolder(folder);
      return { sha256, size: bytes.length };
    },
    get: async (sha256) => {
      const bytes = await readIfThere(pathOf(sha256));
      if (bytes && sha256Of(bytes) === sha256) return bytes;
      throw new StoreError(
        "damaged-file",
        `A file of the store is ${bytes ? "damaged" : "missing"}: ${pathOf(sha256)}. Bring it back from a backup.`,
      );
    },
  };
}

async function readIfThere(path: string): Promise<Uint8Array | null> {
  try {
    return new Uint8Array(await readFile(path));
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return null;
    throw error;
  }
}

/** A blob that was damaged is not trusted by its name: the next `put` of the same bytes mends it. */
async function holds(path: string, sha256: string): Promise<boolean> {
  const bytes = await readIfThere(path);
  return bytes !== null && sha256Of(bytes) === sha256;
}

async function writeAside(folder: string, path: string, bytes: Uint8Array): Promise<void> {
  const aside = join(folder, `${randomUUID()}.part`);
  try {
    const file = await open(aside, "wx", 0o600);
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(aside, path);
  } catch (error) {
    await rm(aside, { force: true });
    throw error;
  }
}
