import type { FileEntry, PlanStore } from "../api/types.ts";

export interface ShelvedFile extends FileEntry {
  readonly bytes: Uint8Array;
}

export type FileShelf = (plan: string, files: readonly FileEntry[]) => Promise<readonly ShelvedFile[]>;

/** Fetches the files beside a plan, each content once. */
export function createFileShelf(plans: PlanStore): FileShelf {
  const held = new Map<string, Promise<Uint8Array>>();
  const fetchOnce = (plan: string, file: FileEntry): Promise<Uint8Array> => {
    const known = held.get(file.sha256);
    if (known) return known;
    const coming = plans.file(plan, file.name);
    held.set(file.sha256, coming);
    coming.catch(() => held.delete(file.sha256));
    return coming;
  };
  return (plan, files) =>
    Promise.all(files.map(async (file) => ({ ...file, bytes: await fetchOnce(plan, file) })));
}
