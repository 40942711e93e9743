import { open } from "node:fs/promises";

/** Puts a folder's list of names on the disk, so that a rename survives a power cut. Windows does this by itself. */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === "win32") return;
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
