import { M_PER_FT } from "@causey/engine/units";
import type { SeriesFile } from "@causey/engine/water";
import type { CsvTable } from "../csv/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { orderOfDates, timeWords, type Places } from "./columns.ts";
import type { DateOrder } from "./date-order.ts";
import { isGoodFlag, readLevel } from "./read-level.ts";
import { readTime } from "./read-time.ts";
import type { Zone } from "./zone.ts";

export interface Point {
  readonly t: number;
  readonly z: number;
  readonly line: number;
}

/** What the rows of a file held, sorted by time, one level a time. */
export interface Rows {
  readonly points: readonly Point[];
  readonly empty: number;
  readonly doubled: number;
  /** How many rows each flag took out. */
  readonly flags: ReadonlyMap<string, number>;
  /** Rows whose time a clock change leaves without an instant, with the first of them in words. */
  readonly clock: { readonly count: number; readonly first: string };
  /** Rows that stand before the one above them, and where the clock goes back by about an hour. */
  readonly outOfOrder: number;
  readonly hourBack: Point | null;
  /** Rows that name their own zone. */
  readonly zoned: number;
  /** Which number of a date is the day, where the year stands last. */
  readonly order: DateOrder | null;
}

type Draft = { -readonly [K in keyof Rows]: Rows[K] } & {
  points: Point[];
  flags: Map<string, number>;
  clock: { count: number; first: string };
};

/** Reads every row; cells that are no time or no level are reported with their line, nothing is repaired. */
export function readRows(found: Findings, table: CsvTable, at: Places, zone: Zone, choice: SeriesFile): Rows {
  const order = orderOfDates(found, table.rows, at);
  found.throwIfErrors();
  const read: Draft = {
    points: [],
    empty: 0,
    doubled: 0,
    flags: new Map(),
    clock: { count: 0, first: "" },
    outOfOrder: 0,
    hourBack: null,
    zoned: 0,
    order,
  };
  const commas = table.delimiter !== ",";
  for (const { line, cells } of table.rows)
    readRow(found, read, line, cells, { at, zone, order, choice, commas });
  return sorted(read);
}

interface Reading {
  readonly at: Places;
  readonly zone: Zone;
  readonly order: DateOrder | null;
  readonly choice: SeriesFile;
  readonly commas: boolean;
}

function readRow(found: Findings, read: Draft, line: number, cells: readonly string[], how: Reading): void {
  const { at, choice } = how;
  const cell = cells[at.level] ?? "";
  const level = readLevel(cell, how.commas);
  const flag = at.flag === null ? "" : (cells[at.flag] ?? "");
  if (level === null) read.empty++;
  else if (at.flag !== null && !isGoodFlag(flag)) read.flags.set(flag, (read.flags.get(flag) ?? 0) + 1);
  else {
    const words = timeWords(cells, at);
    const time = readTime(words, how.zone, how.order);
    if (!time.ok && time.clock !== null) {
      if (read.clock.count++ === 0) read.clock.first = `line ${line}, ${words} ${time.why}`;
      return;
    }
    if (!time.ok) timeFault(found, line, words, time.why);
    if (typeof level !== "number") levelFault(found, line, cell, level.why);
    if (time.ok && typeof level === "number")
      take(read, { t: time.t_s, z: level * metresOf(choice) + choice.offset_m, line }, time.zoned);
  }
}

const metresOf = ({ unit }: SeriesFile): number => (unit === "ft" ? M_PER_FT : 1);

function take(read: Draft, point: Point, zoned: boolean): void {
  const before = read.points.at(-1);
  if (before !== undefined && point.t < before.t) {
    read.outOfOrder++;
    if (before.t - point.t <= 3600) read.hourBack ??= point;
  }
  if (zoned) read.zoned++;
  read.points.push(point);
}

function timeFault(found: Findings, line: number, words: string, why: string): void {
  found.error({
    code: "series-time",
    place: `line ${line}`,
    value: words,
    message: `The time ${quote(words)} ${why}.`,
    mend: "Correct the row, or take it out.",
  });
}

function levelFault(found: Findings, line: number, cell: string, why: "formula" | "not a number"): void {
  found.error({
    code: "series-level",
    place: `line ${line}`,
    value: cell,
    message:
      why === "formula"
        ? `The level ${quote(cell)} is a formula: its value is not in the file.`
        : `The level ${quote(cell)} is not a number.`,
    mend:
      why === "formula"
        ? "Save the sheet again with values in place of formulas."
        : "Correct it, or leave the cell empty: it is then a gap.",
  });
}

function sorted(read: Draft): Rows {
  const all =
    read.outOfOrder === 0 ? read.points : read.points.toSorted((a, b) => a.t - b.t || a.line - b.line);
  const points = all.filter((p, i) => i === 0 || p.t !== all[i - 1]!.t);
  return { ...read, points, doubled: all.length - points.length };
}
