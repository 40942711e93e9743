import { quote, type Findings } from "../problem/index.ts";

/** Code pages by the language byte of dBASE tables, those that every browser can decode. */
const BY_LANGUAGE_BYTE: Readonly<Record<number, string>> = {
  0x03: "windows-1252",
  0x57: "windows-1252",
  0x13: "shift_jis",
  0x4d: "gbk",
  0x4e: "euc-kr",
  0x4f: "big5",
  0x65: "ibm866",
  0xc8: "windows-1250",
  0xc9: "windows-1251",
  0xca: "windows-1254",
  0xcb: "windows-1253",
  0x7d: "windows-1255",
  0x7e: "windows-1256",
};

/** "1252", "ANSI 1252", "CP1252", "65001", "ISO 88591": what programs write into a .cpg, as a name browsers know. */
function labelOf(cpg: string): string {
  const text = cpg.trim().toLowerCase();
  const number = /^(?:ansi|oem|cp|windows)?[\s_-]*(\d{3,5})$/.exec(text)?.[1];
  if (number === "65001") return "utf-8";
  if (number === "932") return "shift_jis";
  if (number === "936") return "gbk";
  if (number === "950") return "big5";
  if (number === "866") return "ibm866";
  const part = /^(?:iso[\s_-]*)?8859[\s_-]*(\d{1,2})$/.exec(text)?.[1];
  if (part !== undefined) return `iso-8859-${part}`;
  return number === undefined ? text : `windows-${number}`;
}

/** Turns the bytes of one field into text. Plain ASCII is the same in every code page. */
export type FieldDecoder = (place: string, bytes: Uint8Array) => string;

/**
 * The decoder for a table: by its .cpg, else by the language byte of the table, else UTF-8. Text that cannot be read
 * so is reported once, with what to give; nothing is guessed.
 */
export function fieldDecoder(found: Findings, cpg: string | null, languageByte: number): FieldDecoder {
  const label = cpg === null ? (BY_LANGUAGE_BYTE[languageByte] ?? "utf-8") : labelOf(cpg);
  const decoder = decoderOf(label);
  let isTold = false;
  return (place, bytes) => {
    const used = trimmed(bytes);
    if (used.every((b) => b < 0x80)) return String.fromCharCode(...used).trim();
    const text = decode(decoder, used);
    if (text !== null) return text.trim();
    if (!isTold)
      found.error({
        code: "dbf-text",
        place,
        value: cpg ?? `language byte ${languageByte}`,
        message: `Text in the table is not in the encoding ${quote(cpg ?? label)}, or that encoding is not read.`,
        mend: "Export the shapefile with the encoding UTF-8, or put a .cpg file beside it that names its encoding, such as 1252.",
      });
    isTold = true;
    return "";
  };
}

const trimmed = (bytes: Uint8Array): Uint8Array => {
  const end = bytes.indexOf(0);
  return end < 0 ? bytes : bytes.subarray(0, end);
};

function decoderOf(label: string): TextDecoder | null {
  try {
    return new TextDecoder(label, { fatal: true });
  } catch {
    return null;
  }
}

function decode(decoder: TextDecoder | null, bytes: Uint8Array): string | null {
  try {
    return decoder === null ? null : decoder.decode(bytes);
  } catch {
    return null;
  }
}
