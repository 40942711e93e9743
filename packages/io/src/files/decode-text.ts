import type { Findings } from "../problem/index.ts";

/**
 * Text of a file in UTF-8, with or without a byte order mark; UTF-16 is read too when its mark says so.
 * Throws `ProblemError` for other bytes: guessing an old code page would spoil names without a word.
 *
 * limit  largest size that is read [bytes]
 */
export function decodeText(found: Findings, bytes: Uint8Array, limit: number): string {
  if (bytes.length > limit)
    found.stop({
      code: "too-large",
      place: "file",
      value: `${bytes.length} bytes`,
      message: `The file is larger than the ${limit} bytes that are read.`,
      mend: "Cut it to the site, or leave out what the plan does not need.",
    });
  const label = bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : utf16be(bytes) ? "utf-16be" : "utf-8";
  try {
    return new TextDecoder(label, { fatal: true }).decode(bytes);
  } catch {
    return found.stop({
      code: "not-text",
      place: `byte ${firstBadByte(bytes)}`,
      value: hex(bytes.subarray(0, 8)),
      message: "The file is not UTF-8 text.",
      mend: "Save it again with the encoding UTF-8.",
    });
  }
}

const utf16be = (bytes: Uint8Array): boolean => bytes[0] === 0xfe && bytes[1] === 0xff;

const hex = (bytes: Uint8Array): string => [...bytes].map((b) => b.toString(16).padStart(2, "0")).join(" ");

/** Position of the first byte that cannot stand in UTF-8, found by halving. */
function firstBadByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    try {
      new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(0, middle), { stream: true });
      good = middle;
    } catch {
      bad = middle;
    }
  }
  return good;
}
