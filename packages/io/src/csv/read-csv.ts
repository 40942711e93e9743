import Papa from "papaparse";
import { decodeText } from "../files/index.ts";
import { quote, type Findings } from "../problem/index.ts";

export interface CsvRow {
  /** Line of the file on which the row begins, counted from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvTable {
  readonly delimiter: string;
  readonly heads: readonly string[];
  readonly rows: readonly CsvRow[];
}

/**
 * Cells of a CSV file with one row of heads; the delimiter ( , ; or tab ) is read off the heads. Blank lines are left
 * out, cells are trimmed. Throws `ProblemError` for text that is not UTF-8, quotes that do not close, and more than
 * `rowLimit` rows, which are not read.
 */
export function readCsv(found: Findings, bytes: Uint8Array, byteLimit: number, rowLimit: number): CsvTable {
  const text = decodeText(found, bytes, byteLimit);
  const delimiter = sniff(text);
  const parsed = Papa.parse<string[]>(text, { delimiter, newline: lineEnd(text), preview: rowLimit + 2 });
  for (const e of parsed.errors.filter((e) => e.type === "Quotes"))
    found.error({
      code: "csv-quotes",
      place: `row ${(e.row ?? 0) + 1}`,
      message: "A cell in quotes is not closed, or text follows its closing quote.",
      mend: "Close the quote, and write a quote inside a cell twice.",
    });
  const rows = withLines(parsed.data).filter((r) => r.cells.some((c) => c !== ""));
  if (rows.length > rowLimit + 1)
    found.stop({
      code: "too-many-rows",
      place: `line ${rows.at(-1)!.line}`,
      value: `more than ${rowLimit} rows`,
      message: `The file holds more than the ${rowLimit} rows that are read.`,
      mend: "Keep the rows that the plan needs.",
    });
  const [head, ...rest] = rows;
  return { delimiter, heads: head?.cells.map((c) => c.toLowerCase()) ?? [], rows: rest };
}

/** The delimiter that parts the heads most often; a comma when none does. */
function sniff(text: string): string {
  const head = text.split(/[\r\n]/, 20).find((line) => line.trim() !== "") ?? "";
  const count = (d: string): number => head.split(d).length;
  return [";", "\t"].reduce((best, d) => (count(d) > count(best) ? d : best), ",");
}

const lineEnd = (text: string): "\r\n" | "\n" | "\r" =>
  text.includes("\r\n") ? "\r\n" : text.includes("\n") || !text.includes("\r") ? "\n" : "\r";

/** A cell may hold line breaks, so the line of a row is counted through the cells before it. */
function withLines(data: readonly (readonly string[])[]): CsvRow[] {
  let line = 1;
  return data.map((raw) => {
    const row = { line, cells: raw.map((c) => c.trim()) };
    line += 1 + raw.reduce((n, c) => n + (c.match(/\r\n|\r|\n/g)?.length ?? 0), 0);
    return row;
  });
}

/** Places of the columns by head; reports heads that are given twice. */
export function columnsOf(found: Findings, heads: readonly string[]): ReadonlyMap<string, number> {
  const columns = new Map<string, number>();
  heads.forEach((head, i) => {
    if (head === "") return;
    if (columns.has(head))
      found.error({
        code: "csv-head",
        place: "line 1",
        value: head,
        message: `The column ${quote(head)} stands twice.`,
        mend: "Keep one of the two.",
      });
    columns.set(head, i);
  });
  return columns;
}
