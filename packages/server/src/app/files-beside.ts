import type { Store, StoredFile } from "@causey/runtime/store";
import type { FilesBeside } from "./options.ts";

/** The files beside a plan's document, each read when it is asked for. */
export const filesBeside = (store: Store, id: string, files: readonly StoredFile[]): FilesBeside => ({
  hashOf: (name) => files.find((file) => file.name === name)?.sha256 ?? null,
  read: (name) => store.readFile(id, name),
});

/** All of them, by name. */
export async function readAll(
  store: Store,
  id: string,
  files: readonly StoredFile[],
): Promise<Map<string, Uint8Array>> {
  const contents = new Map<string, Uint8Array>();
  for (const { name } of files) {
    const bytes = await store.readFile(id, name);
    if (bytes) contents.set(name, bytes);
  }
  return contents;
}
