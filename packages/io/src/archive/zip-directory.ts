import type { Findings } from "../problem/index.ts";

/** One entry as the zip's central directory claims it. Every number is a claim until it was checked. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  /** Where its data begins and ends in the archive. */
  readonly from: number;
  readonly to: number;
}

const END_SIGN = 0x06054b50;
const ENTRY_SIGN = 0x02014b50;
const LOCAL_SIGN = 0x04034b50;
const END_BYTES = 22;
const ENTRY_BYTES = 46;
const LOCAL_BYTES = 30;

const MEND = "Pack the plan folder again as an ordinary .zip file.";

/**
 * The entries of a zip archive (APPNOTE 6.3.10, sections 4.3.7 to 4.3.16), read from its central directory without
 * unpacking anything. Offsets are held against the length of the archive. Archives in several parts and zip64 are
 * refused. Throws `ProblemError`.
 *
 * most  entries that are read at most
 */
export function zipDirectory(found: Findings, bytes: Uint8Array, most: number): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(found, view);
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  if (count === 0xffff || start === 0xffffffff || view.getUint16(end + 4, true) !== 0)
    stop(
      found,
      end,
      `${count} entries`,
      "The archive is in several parts or in the zip64 form, which is not read",
    );
  if (count > most)
    stop(found, end, `${count} entries`, `The archive holds ${count} files; at most ${most} are read`);
  const entries: ZipEntry[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + ENTRY_BYTES > end || view.getUint32(at, true) !== ENTRY_SIGN)
      stop(found, at, `entry ${i + 1} of ${count}`, "The directory of the archive is damaged");
    entries.push(readEntry(found, view, bytes, at, start));
    at +=
      ENTRY_BYTES +
      view.getUint16(at + 28, true) +
      view.getUint16(at + 30, true) +
      view.getUint16(at + 32, true);
  }
  return entries;
}

function findEnd(found: Findings, view: DataView): number {
  const least = Math.max(0, view.byteLength - END_BYTES - 0xffff);
  for (let at = view.byteLength - END_BYTES; at >= least; at--)
    if (view.getUint32(at, true) === END_SIGN) return at;
  return stop(
    found,
    view.byteLength,
    `${view.byteLength} bytes`,
    "This is not a zip archive, or it is cut off",
  );
}

function readEntry(
  found: Findings,
  view: DataView,
  bytes: Uint8Array,
  at: number,
  directory: number,
): ZipEntry {
  const nameEnd = at + ENTRY_BYTES + view.getUint16(at + 28, true);
  const packed = view.getUint32(at + 20, true);
  const local = view.getUint32(at + 42, true);
  if (nameEnd > bytes.length || local + LOCAL_BYTES > directory || view.getUint32(local, true) !== LOCAL_SIGN)
    stop(found, at, `offset ${local}`, "An entry of the archive points outside it");
  const from = local + LOCAL_BYTES + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (from + packed > directory)
    stop(found, at, `bytes ${from} to ${from + packed}`, "An entry of the archive reaches beyond its end");
  return {
    name: decodeName(found, bytes.subarray(at + ENTRY_BYTES, nameEnd), at),
    method: view.getUint16(at + 10, true),
    encrypted: (view.getUint16(at + 8, true) & 1) !== 0,
    crc: view.getUint32(at + 16, true),
    packed,
    size: view.getUint32(at + 24, true),
    from,
    to: from + packed,
  };
}

function decodeName(found: Findings, bytes: Uint8Array, at: number): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes).normalize("NFC");
  } catch {
    return stop(found, at, "file name", "A file name in the archive is not UTF-8 text");
  }
}

const stop = (found: Findings, at: number, value: string, message: string): never =>
  found.stop({ code: "archive", place: `byte ${at}`, value, message: `${message}.`, mend: MEND });
