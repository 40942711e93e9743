import type { SeriesFile } from "@causey/engine/water";
import type { CsvTable } from "../csv/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import type { Places } from "./columns.ts";
import { readLevel } from "./read-level.ts";

/** Differences between two columns vary less than this by rounding alone [file units]. */
const ROUNDING = 0.0051;
/** Zeros closer than this are one [file units]. */
const SAME_ZERO = 0.02;
/** Fewer rows than this show nothing. */
const LEAST_ROWS = 10;
/** A column in which this share of the levels is exactly 0 was cut off there. */
const CUT_OFF_SHARE = 0.05;

const FEET = /(^|[^a-z])(us[ _-]?ft|ft|feet|foot|usft|sft)([^a-z]|$)/i;
const METRES = /(^|[^a-z])(m|metres?|meters?)([^a-z]|$)/i;
/** Vertical datums that heads are named by; each is one datum wherever it stands. */
const DATUMS = /(?:^|[^a-z0-9])(navd_?88|ngvd_?29|mllw|mhhw|mlw|mhw|msl|igld_?85|odn|nap)(?=[^a-z0-9]|$)/i;

/** What the heads say of the level that its user says otherwise: unit and datum. */
export function checkLevelHead(
  found: Findings,
  heads: readonly string[],
  at: Places,
  choice: SeriesFile,
): void {
  const head = heads[at.level] ?? "";
  const says = FEET.test(head) ? "ft" : METRES.test(head) ? "m" : choice.unit;
  if (says !== choice.unit)
    found.error({
      code: "series-unit",
      place: "water.series.unit",
      value: head,
      message: `The column ${quote(head)} names ${says === "ft" ? "feet" : "metres"}; it is read in ${choice.unit === "ft" ? "feet" : "metres"}.`,
      mend: `Set the unit of the record to ${says === "ft" ? "feet" : "metres"}, or rename the column if its name is wrong.`,
    });
  const datum = DATUMS.exec(head)?.[1];
  if (datum !== undefined && !isNamed(choice.datum, datum))
    found.warn({
      code: "series-datum-head",
      place: "water.series.datum",
      value: head,
      message: `The column ${quote(head)} names the datum ${datum.toUpperCase()}; the record is said to be on "${choice.datum}".`,
      mend: "Make sure that both mean the same datum; otherwise name the file's own, with the offset between the two and where it comes from.",
    });
}

/** "mean sea level" is MSL, "Ordnance Datum Newlyn" ODN, "NAVD 88" NAVD88. */
function isNamed(name: string, datum: string): boolean {
  const plain = (text: string): string => text.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
  const initials = name
    .split(/[^\p{L}\p{N}]+/u)
    .map((w) => w[0] ?? "")
    .join("");
  return plain(name).includes(plain(datum)) || plain(initials) === plain(datum);
}

/** Doubts that only the numbers raise: the same water over two zeros, and a level that was cut off at 0. */
export function noteLevels(found: Findings, table: CsvTable, at: Places, choice: SeriesFile): void {
  const commas = table.delimiter !== ",";
  const levels = table.rows.map((row) => numberIn(row.cells[at.level] ?? "", commas));
  noteOtherZero(found, table, at, levels, choice);
  noteCutOff(found, table.heads[at.level] ?? "", levels);
}

function numberIn(cell: string, commas: boolean): number | null {
  const level = readLevel(cell, commas);
  return typeof level === "number" ? level : null;
}

function noteOtherZero(
  found: Findings,
  { heads, rows, delimiter }: CsvTable,
  at: Places,
  levels: readonly (number | null)[],
  choice: SeriesFile,
): void {
  const own = heads[at.level] ?? "";
  heads.forEach((head, k) => {
    if (k === at.level || at.time.includes(k)) return;
    const apart = constantGap(levels, (i) => numberIn(rows[i]!.cells[k] ?? "", delimiter !== ","));
    if (apart === null || Math.abs(apart) < SAME_ZERO) return;
    found.warn({
      code: "series-two-zeros",
      place: `columns ${quote(own)} and ${quote(head)}`,
      value: Math.abs(apart).toFixed(2),
      message: `The columns ${quote(own)} and ${quote(head)} run ${Math.abs(apart).toFixed(2)} ${choice.unit} apart in every row: the same water over two zeros. ${quote(own)} is read, as heights on "${choice.datum}".`,
      mend: `Make sure that "${choice.datum}" is the zero of ${quote(own)} and not of ${quote(head)}; otherwise read the other column, or give the datum and the offset that belong to this one.`,
    });
  });
}

/** The difference between two columns when it is one all the way down; null when it is not, or hardly anything is there. */
function constantGap(
  levels: readonly (number | null)[],
  other: (row: number) => number | null,
): number | null {
  let [low, high, sum, n] = [Infinity, -Infinity, 0, 0];
  for (let i = 0; i < levels.length; i++) {
    const level = levels[i]!;
    if (level === null) continue;
    const value = other(i);
    if (value === null) return null;
    const gap = level - value;
    [low, high, sum, n] = [Math.min(low, gap), Math.max(high, gap), sum + gap, n + 1];
    if (high - low > ROUNDING) return null;
  }
  return n < LEAST_ROWS ? null : sum / n;
}

function noteCutOff(found: Findings, head: string, levels: readonly (number | null)[]): void {
  const known = levels.filter((v) => v !== null);
  const zeros = known.filter((v) => v === 0).length;
  if (known.length < LEAST_ROWS || zeros < CUT_OFF_SHARE * known.length) return;
  if (known.some((v) => v < 0) || known.every((v) => v === 0)) return;
  found.warn({
    code: "series-cut-off",
    place: `column ${quote(head)}`,
    value: `${zeros} of ${known.length} readings`,
    message: `${zeros} of ${known.length} readings are exactly 0 and none is lower: the sensor stood dry, or the column was cut off at 0. The water was there, or anywhere below.`,
    mend: "If the file has a column that is not cut off, read that one; levels below the sensor stay unknown in both.",
  });
}
