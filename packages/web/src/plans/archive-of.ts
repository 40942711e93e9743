import { writeArchive } from "@causey/io/archive";

/** The chosen files as one plan archive: a single .zip as it is, anything else packed together. */
export async function archiveOf(files: readonly File[]): Promise<Uint8Array> {
  const contents = await Promise.all(files.map(async (file) => new Uint8Array(await file.arrayBuffer())));
  const isArchive = files.length === 1 && isZip(contents[0]!);
  return isArchive ? contents[0]! : writeArchive(new Map(files.map((file, i) => [file.name, contents[i]!])));
}

/** Told by its first bytes, not by its name. */
const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;
