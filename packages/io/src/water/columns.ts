import type { SeriesFile } from "@causey/engine/water";
import { columnsOf, readCsv, type CsvRow, type CsvTable } from "../csv/index.ts";
import type { Findings } from "../problem/index.ts";
import { quote } from "../problem/index.ts";
import { dateOrder, type DateOrder } from "./date-order.ts";

const BYTE_LIMIT = 200_000_000;
const ROW_LIMIT = 3_000_000;

/** Where the chosen columns stand; a time may lie in several, a date beside its time of day and its zone. */
export interface Places {
  readonly time: readonly number[];
  readonly level: number;
  readonly flag: number | null;
}

/**
 * The table of a record's file. Lines at its top that begin with # are left out, as is the row of column widths
 * ("5s", "20d") that the US Geological Survey writes below its heads; lines are counted as the file has them.
 */
export function readTable(found: Findings, bytes: Uint8Array): CsvTable {
  const top = commentLines(bytes);
  const table = readCsv(found, bytes.subarray(top.bytes), BYTE_LIMIT, ROW_LIMIT);
  const [first, ...rest] = table.rows;
  const hasWidths = first?.cells.every((c) => /^\d+[snd]$/.test(c)) === true;
  const rows = hasWidths ? rest : table.rows;
  if (top.lines === 0) return { ...table, rows };
  return { ...table, rows: rows.map((r) => ({ line: r.line + top.lines, cells: r.cells })) };
}

function commentLines(bytes: Uint8Array): { readonly bytes: number; readonly lines: number } {
  const [HASH, LF] = [0x23, 0x0a];
  const bom = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  let [at, lines] = [bom, 0];
  while (bytes[at] === HASH) {
    const end = bytes.indexOf(LF, at);
    if (end < 0) break;
    at = end + 1;
    lines++;
  }
  return lines === 0 ? { bytes: 0, lines: 0 } : { bytes: at, lines };
}

/** Finds the chosen columns; one that is not there is reported with those that are. */
export function columnPlaces(
  found: Findings,
  heads: readonly string[],
  { columns }: SeriesFile,
  inPlan: string,
): Places | null {
  const known = columnsOf(found, heads);
  const place = (name: string, key: string): number => {
    const at = known.get(name.trim().toLowerCase());
    if (at === undefined)
      found.error({
        code: "series-column",
        place: `${inPlan}.columns.${key}`,
        value: name,
        message: `The file has no column ${quote(name)}.`,
        mend: `Its columns are: ${heads.map((h) => quote(h)).join(", ") || "none"}.${
          key === "time" ? ' Where date and time of day stand apart, name both: "date + time".' : ""
        }`,
      });
    return at ?? -1;
  };
  const isOne = known.has(columns.time.trim().toLowerCase()) || !columns.time.includes(" + ");
  const time = (isOne ? [columns.time] : columns.time.split(" + ")).map((name) => place(name, "time"));
  const level = place(columns.level, "level");
  const flag = columns.flag === null ? null : place(columns.flag, "flag");
  return [...time, level, flag ?? 0].some((i) => i < 0) ? null : { time, level, flag };
}

/** The time of a row as words. */
export const timeWords = (cells: readonly string[], { time }: Places): string =>
  time.length === 1
    ? (cells[time[0]!] ?? "")
    : time
        .map((i) => cells[i] ?? "")
        .join(" ")
        .trim();

/** Which number of a date is the day, read off all rows; reports a file that does not tell, or tells both. */
export function orderOfDates(found: Findings, rows: readonly CsvRow[], at: Places): DateOrder | null {
  const seen = dateOrder(wordsOf(rows, at));
  if (!seen.yearLast || seen.order !== null) return seen.order;
  const [dmy, mdy] = [rows[seen.dmyAt], rows[seen.mdyAt]];
  found.error({
    code: "series-date-order",
    place: dmy && mdy ? `lines ${dmy.line} and ${mdy.line}` : `line ${rows[0]?.line ?? 1}`,
    value: timeWords((dmy ?? rows[0])?.cells ?? [], at),
    message:
      dmy && mdy
        ? `The dates change their order: ${quote(timeWords(dmy.cells, at))} has the day first, ${quote(timeWords(mdy.cells, at))} the month.`
        : "The dates do not tell which number is the day: none is above 12.",
    mend: "Write the dates with the year first, as in 2027-04-30.",
  });
  return null;
}

function* wordsOf(rows: readonly CsvRow[], at: Places): Generator<string, void> {
  for (const row of rows) yield timeWords(row.cells, at);
}
