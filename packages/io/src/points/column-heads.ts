import { readCsv } from "../csv/index.ts";
import { Findings } from "../problem/index.ts";

/** Heads are looked for in this much of a file [bytes]. */
const START = 1_000_000;

/**
 * Heads of a CSV file in lower case, to choose columns from; blank ones left out. Reads the start of a large file
 * alone. Throws `ProblemError` for what is no text and for a file without a line of heads.
 *
 * such_as  heads named as an example where the file has none
 */
export function columnHeads(
  file: string,
  bytes: Uint8Array,
  such_as = "id, x, y and so on",
): readonly string[] {
  const found = new Findings(file);
  const heads = readCsv(found, startOf(bytes), START, 100_000).heads.filter((h) => h !== "");
  if (heads.length === 0)
    found.stop({
      code: "csv-no-heads",
      place: "line 1",
      value: "",
      message: "The file has no line of heads.",
      mend: `Name the columns in the first line: ${such_as}.`,
    });
  return heads;
}

/** Whole lines only, as far as one-byte line ends can be trusted: text of two bytes a sign is left whole. */
function startOf(bytes: Uint8Array): Uint8Array {
  const isWide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (bytes.length <= START || isWide) return bytes;
  const end = bytes.lastIndexOf(0x0a, START - 1);
  return end < 0 ? bytes : bytes.subarray(0, end);
}
