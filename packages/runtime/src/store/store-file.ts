import { open } from "node:fs/promises";
import { StoreError } from "./port.ts";

/** Marks a database file as Causey's ("Csy1"), so that no other program's file is taken for a store. */
export const APPLICATION_ID = 0x43737931;

/** The file's first bytes and the place of the application id: "Database File Format", sqlite.org/fileformat.html, 1.3. */
const MAGIC = "SQLite format 3\0";
const HEADER_BYTES = 100;
const APPLICATION_ID_AT = 68;

/** What a path holds, seen from the file's header alone. An empty file counts as nothing, as it does for SQLite. */
export async function whatIsAt(path: string): Promise<"nothing" | "store" | "something-else"> {
  const header = await headerOf(path);
  if (header === null || header.length === 0) return "nothing";
  const isStore =
    header.length === HEADER_BYTES &&
    header.toString("latin1", 0, MAGIC.length) === MAGIC &&
    header.readUInt32BE(APPLICATION_ID_AT) === APPLICATION_ID;
  return isStore ? "store" : "something-else";
}

async function headerOf(path: string): Promise<Buffer | null> {
  try {
    const file = await open(path, "r");
    try {
      const { buffer, bytesRead } = await file.read(Buffer.alloc(HEADER_BYTES), 0, HEADER_BYTES, 0);
      return buffer.subarray(0, bytesRead);
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return null;
    throw error;
  }
}

export const notAStore = (path: string): StoreError =>
  new StoreError("not-a-store", `${path} is not a Causey store; it is left as it is. Give another place.`);
