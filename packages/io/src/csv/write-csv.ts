import { DomainError } from "@causey/engine/units";

export type CsvCell = string | number | null;

/**
 * Text that a spreadsheet would run as a formula (it begins with = + - @, a tab or a line break) gets an apostrophe
 * in front, the spreadsheet's own sign for "this is text". `undefuse` takes exactly this apostrophe off again.
 */
export const defuse = (text: string): string => (/^'*[=+\-@\t\r\n]/.test(text) ? `'${text}` : text);

/** Takes off what `defuse` put on: undefuse(defuse(x)) = x for every text. */
export const undefuse = (text: string): string => (/^'+[=+\-@\t\r\n]/.test(text) ? text.slice(1) : text);

/**
 * A CSV file (RFC 4180: comma, CRLF, UTF-8), one row of heads and the rows below. Numbers are written as they are, so
 * a negative number stays a number; null is an empty cell. Throws `DomainError` for a number that is not finite.
 */
export function csvBytes(heads: readonly string[], rows: readonly (readonly CsvCell[])[]): Uint8Array {
  const lines = [heads, ...rows].map((row) => row.map(cell).join(","));
  return new TextEncoder().encode(`${lines.join("\r\n")}\r\n`);
}

function cell(value: CsvCell): string {
  if (value === null) return "";
  if (typeof value === "string") return quoted(defuse(value));
  if (!Number.isFinite(value)) throw new DomainError("not-a-finite-number", { value: String(value) });
  return String(value === 0 ? 0 : value);
}

const quoted = (text: string): string =>
  /[",;\r\n\t]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
