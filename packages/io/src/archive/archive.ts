import { zipSync, type Zippable } from "fflate";
import { DomainError } from "@causey/engine/units";
import { FILE_LIMITS, fileNameFault, type PlanFiles } from "../files/index.ts";
import { InflateFault, inflate } from "../inflate/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { crc32 } from "./crc.ts";
import { zipDirectory, type ZipEntry } from "./zip-directory.ts";

const STORED = 0;
const DEFLATED = 8;
/** Above this many bytes unpacked, a file may not have shrunk to less than one in `MOST_RATIO`. */
const RATIO_BYTES = 10_000_000;
const MOST_RATIO = 250;
const MEND = "Pack the plan folder again as an ordinary .zip file.";

/**
 * The files of a plan folder from one .zip of it. A single folder around all files is taken off.
 *
 * name  file name, for messages
 * Throws `ProblemError`, before anything is unpacked, for names that leave the folder, twins, encrypted or oddly packed
 * entries, entries that overlap, more or larger files than `FILE_LIMITS`, and files that shrank too well to be true;
 * and while unpacking for a file that is larger than it claims or whose check sum is wrong.
 */
export function readArchive(bytes: Uint8Array, name = "archive.zip"): PlanFiles {
  const found = new Findings(name);
  const entries = zipDirectory(found, bytes, FILE_LIMITS.entries).filter((e) => !isLitter(e.name));
  checkEntries(found, entries, bytes.length);
  checkOverlap(found, entries);
  found.throwIfErrors();
  const root = commonFolder(entries);
  const files = new Map(entries.map((e) => [e.name.slice(root.length), unpack(found, bytes, e)]));
  found.throwIfErrors();
  return files;
}

/** Folders have no contents; the others are what macOS and Windows add of their own. */
const isLitter = (name: string): boolean =>
  (name.endsWith("/") && fileNameFault(name.slice(0, -1)) === null) ||
  /^__MACOSX\//.test(name) ||
  /(^|\/)(\.DS_Store|Thumbs\.db|desktop\.ini)$/i.test(name);

function checkEntries(found: Findings, entries: readonly ZipEntry[], packed: number): void {
  const seen = new Set<string>();
  let total = 0;
  for (const e of entries) {
    total += e.size;
    const twin = seen.has(e.name.toLowerCase()) ? "its name stands twice" : null;
    seen.add(e.name.toLowerCase());
    const why = fileNameFault(e.name) ?? twin ?? packingFault(e);
    if (why !== null) refuse(found, e, why);
  }
  const isBomb = total > 5 * RATIO_BYTES && total > MOST_RATIO * packed;
  if (total > FILE_LIMITS.total_bytes || isBomb)
    found.error({
      code: "archive-size",
      place: "all files",
      value: `${total} bytes`,
      message: `The archive of ${packed} bytes claims to unpack to ${total}: that is refused above ${FILE_LIMITS.total_bytes} bytes, and above ${MOST_RATIO} times its size.`,
      mend: "Leave out what the plan does not need.",
    });
}

function packingFault(e: ZipEntry): string | null {
  if (e.encrypted) return "it is encrypted";
  if (e.method !== STORED && e.method !== DEFLATED) return `it is packed with the unknown method ${e.method}`;
  if (e.method === STORED && e.size !== e.packed) return "it is stored with two different sizes";
  if (e.size > FILE_LIMITS.file_bytes)
    return `it claims to unpack to ${e.size} bytes; at most ${FILE_LIMITS.file_bytes} are read`;
  return e.size > RATIO_BYTES && e.size > MOST_RATIO * e.packed
    ? `${e.packed} bytes claim to unpack to ${e.size}`
    : null;
}

const refuse = (found: Findings, e: ZipEntry, why: string): void =>
  found.error({
    code: "archive-entry",
    place: e.name.slice(0, 120),
    value: e.name,
    message: `The file ${quote(e.name)} in the archive is refused: ${why}.`,
    mend: MEND,
  });

/** Two entries over the same bytes unpack one bomb many times. */
function checkOverlap(found: Findings, entries: readonly ZipEntry[]): void {
  const inOrder = [...entries].sort((a, b) => a.from - b.from || a.to - b.to);
  inOrder.forEach((e, i) => {
    const before = inOrder[i - 1];
    if (before !== undefined && e.from < before.to)
      refuse(found, e, `its data overlaps ${quote(before.name)}`);
  });
}

function commonFolder(entries: readonly ZipEntry[]): string {
  const folder = /^[^/]+\//.exec(entries[0]?.name ?? "")?.[0];
  return folder !== undefined && entries.every((e) => e.name.startsWith(folder)) ? folder : "";
}

function unpack(found: Findings, bytes: Uint8Array, e: ZipEntry): Uint8Array {
  const data = bytes.subarray(e.from, e.to);
  try {
    const file = e.method === STORED ? data.slice() : inflate(data, e.size, "none");
    if (file.length !== e.size)
      refuse(found, e, `it unpacks to ${file.length} bytes, not to the ${e.size} it claims`);
    else if (crc32(file) !== e.crc) refuse(found, e, "its check sum is wrong: it is damaged");
    return file;
  } catch (fault) {
    if (!(fault instanceof InflateFault)) throw fault;
    refuse(
      found,
      e,
      fault.why === "too-much"
        ? `it unpacks to more than the ${e.size} bytes it claims`
        : "its data is damaged",
    );
    return new Uint8Array(0);
  }
}

/** The first day that zip can write; the local time zone plays no part, for zip writes what the clock shows. */
const FIXED_TIME = new Date(1980, 0, 1, 12);

/**
 * One .zip of the files: equal files give equal bytes, whatever their order and whenever it is written. Throws
 * `DomainError` for a name that `readArchive` would refuse.
 */
export function writeArchive(files: PlanFiles): Uint8Array {
  const names = [...files.keys()].sort();
  const zippable: Zippable = {};
  for (const name of names) {
    const why = fileNameFault(name);
    if (why !== null) throw new DomainError("file-name", { name, why });
    zippable[name] = [files.get(name)!, { level: 6, mtime: FIXED_TIME }];
  }
  return zipSync(zippable);
}
