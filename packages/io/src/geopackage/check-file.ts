import type { Findings } from "../problem/index.ts";

const SIGN = "SQLite format 3\0";
const MEND = "Copy or export the GeoPackage again; a copy that was cut off on its way looks like this.";

export const isSqlite = (bytes: Uint8Array): boolean =>
  bytes.length >= 16 && Array.from(SIGN).every((c, i) => bytes[i] === c.charCodeAt(0));

/**
 * Holds the head of an SQLite file (its file format, section 1.3) against its length, walks the pages of its list of
 * tables, and gives the bytes to open: a file that a mapping program had open is in a mode that needs a second file
 * beside it, so it is turned back, with a warning that the last changes may be missing. Throws `ProblemError`.
 */
export function checkFile(found: Findings, bytes: Uint8Array): Uint8Array {
  const stop = (at: number, value: string, message: string): never =>
    found.stop({ code: "gpkg-file", place: `byte ${at}`, value, message: `${message}.`, mend: MEND });
  if (!isSqlite(bytes) || bytes.length < 512) stop(0, `${bytes.length} bytes`, "This is no SQLite database");
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const stated = view.getUint16(16, false);
  const size = stated === 1 ? 65_536 : stated;
  if (size < 512 || (size & (size - 1)) !== 0) stop(16, `${stated}`, "The page size of the database is none");
  const pages = view.getUint32(28, false);
  const isCurrent = view.getUint32(24, false) === view.getUint32(92, false);
  if (isCurrent && pages * size > bytes.length)
    stop(
      28,
      `${pages} pages of ${size} bytes`,
      `The file is cut off: it should be ${pages * size} bytes long`,
    );
  checkTableTree(view, size, stop);
  if (view.getUint8(18) !== 2 && view.getUint8(19) !== 2) return bytes;
  found.warn({
    code: "gpkg-open",
    place: "byte 18",
    value: "write-ahead log",
    message: "The file was open in another program when it was copied: its last changes may be missing.",
    mend: "Close the layer in the mapping program, then copy the file again.",
  });
  const plain = bytes.slice();
  plain.set([1, 1], 18);
  return plain;
}

type Stop = (at: number, value: string, message: string) => never;

const LEAF = 0x0d;
const INTERIOR = 0x05;

/** The tree of the list of tables, which is read as soon as the file is opened: a page met twice would never end. */
function checkTableTree(view: DataView, size: number, stop: Stop): void {
  const seen = new Set<number>();
  const open = [1];
  for (let page = open.pop(); page !== undefined; page = open.pop()) {
    const start = (page - 1) * size;
    if (page < 1 || start + size > view.byteLength || seen.has(page))
      stop(start, `page ${page}`, "The list of tables is damaged");
    seen.add(page);
    const head = page === 1 ? 100 : start;
    const kind = view.getUint8(head);
    if (kind === LEAF) continue;
    if (kind !== INTERIOR) stop(head, `page kind ${kind}`, "The list of tables is damaged");
    const cells = view.getUint16(head + 3, false);
    open.push(view.getUint32(head + 8, false));
    if (head + 12 + 2 * cells > start + size)
      stop(head + 3, `${cells} cells`, "The list of tables is damaged");
    for (let i = 0; i < cells; i++) {
      const at = start + view.getUint16(head + 12 + 2 * i, false);
      if (at + 4 > start + size) stop(at, "cell", "The list of tables is damaged");
      open.push(view.getUint32(at, false));
    }
  }
}
