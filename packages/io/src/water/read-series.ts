import type { Problem } from "@causey/engine/formula";
import { M_PER_FT } from "@causey/engine/units";
import { isoMinute, makeSeries, type Series, type SeriesFile } from "@causey/engine/water";
import { columnsOf, readCsv, type CsvRow } from "../csv/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { isGoodFlag, readLevel } from "./read-level.ts";
import { readTime, zoneOf, type Zone } from "./read-time.ts";

const BYTE_LIMIT = 200_000_000;
const ROW_LIMIT = 3_000_000;
/** Fastest rise that is believed without a word: the steepest tides rise 4 m in an hour (from memory) [m/s]. */
const FASTEST_M_PER_S = 4 / 3600;
/** Steps below this are never named [m]. */
const SMALL_STEP_M = 1;

export interface SeriesRead {
  readonly series: Series;
  readonly warnings: readonly Problem[];
  readonly counts: {
    readonly rows: number;
    readonly kept: number;
    readonly empty: number;
    readonly flagged: number;
    readonly doubled: number;
  };
}

/**
 * Reads a gauge's or logger's CSV, or a table of high and low waters, onto the plan's vertical datum.
 *
 * choice  which columns, which unit, which zone, which datum; heights come out as level * unit + offset_m
 * datum   the plan's; a file on another datum needs an offset with its source
 * Throws `ProblemError` with every fault of the file. Gaps, doubled and flagged rows, times that a clock change
 * leaves without an instant, and rows out of order are warnings: they are left out, and counted.
 */
export function readSeries(bytes: Uint8Array, choice: SeriesFile, datum: string): SeriesRead {
  const found = new Findings(choice.file);
  const table = readCsv(found, bytes, BYTE_LIMIT, ROW_LIMIT);
  const zone = zoneOf(choice.zone);
  const at = columnPlaces(found, table.heads, choice);
  checkDatum(found, choice, datum);
  if (zone === null)
    found.error({
      code: "series-zone",
      place: "water.series.zone",
      value: choice.zone,
      message: `${quote(choice.zone)} is not a zone.`,
      mend: 'Give "UTC", an offset such as "-05:00", or a place such as "Europe/Lisbon".',
    });
  found.throwIfErrors();
  const rows = readRows(found, table.rows, at!, zone!, choice, table.delimiter === ";");
  found.throwIfErrors();
  const series = seriesOf(rows.points, choice);
  report(found, rows, series, choice);
  found.throwIfErrors();
  return { series, warnings: found.warnings, counts: { ...rows.counts, rows: table.rows.length } };
}

interface Places {
  readonly time: number;
  readonly level: number;
  readonly flag: number | null;
}

function columnPlaces(found: Findings, heads: readonly string[], { columns }: SeriesFile): Places | null {
  const known = columnsOf(found, heads);
  const place = (name: string, key: string): number => {
    const at = known.get(name.trim().toLowerCase());
    if (at === undefined)
      found.error({
        code: "series-column",
        place: `water.series.columns.${key}`,
        value: name,
        message: `The file has no column ${quote(name)}.`,
        mend: `Its columns are: ${heads.join(", ") || "none"}.`,
      });
    return at ?? -1;
  };
  const [time, level] = [place(columns.time, "time"), place(columns.level, "level")];
  const flag = columns.flag === null ? null : place(columns.flag, "flag");
  return { time, level, flag };
}

function checkDatum(found: Findings, choice: SeriesFile, datum: string): void {
  if (choice.datum === datum || choice.offset_source.trim() !== "") return;
  found.error({
    code: "datum-clash",
    place: "water.series.datum",
    value: choice.datum,
    message: `The levels of ${quote(choice.file)} are on "${choice.datum}", the plan is on "${datum}".`,
    mend: `Give the difference between the two at the site (offset_m) and where it comes from (offset_source): a tide table's datum is not the land's.`,
  });
}

interface Rows {
  readonly points: { t: number; z: number; line: number }[];
  readonly counts: { kept: number; empty: number; flagged: number; doubled: number };
  readonly clockFaults: string[];
  outOfOrder: number;
}

function readRows(
  found: Findings,
  rows: readonly CsvRow[],
  at: Places,
  zone: Zone,
  choice: SeriesFile,
  decimalComma: boolean,
): Rows {
  const unit = choice.unit === "ft" ? M_PER_FT : 1;
  const read: Rows = {
    points: [],
    counts: { kept: 0, empty: 0, flagged: 0, doubled: 0 },
    clockFaults: [],
    outOfOrder: 0,
  };
  for (const { line, cells } of rows) {
    const level = readLevel(cells[at.level] ?? "", decimalComma);
    if (level === null) {
      read.counts.empty++;
      continue;
    }
    if (at.flag !== null && !isGoodFlag(cells[at.flag] ?? "")) {
      read.counts.flagged++;
      continue;
    }
    const time = readTime(cells[at.time] ?? "", zone);
    if (level === "not a number" || !time.ok) cellFault(found, line, cells, at, time, read);
    else {
      const before = read.points.at(-1)?.t;
      if (before !== undefined && time.t_s < before) read.outOfOrder++;
      read.points.push({ t: time.t_s, z: level * unit + choice.offset_m, line });
    }
  }
  read.points.sort((a, b) => a.t - b.t || a.line - b.line);
  const first = read.points.filter((p, i) => i === 0 || p.t !== read.points[i - 1]!.t);
  read.counts.doubled = read.points.length - first.length;
  read.counts.kept = first.length;
  return { ...read, points: first };
}

function cellFault(
  found: Findings,
  line: number,
  cells: readonly string[],
  at: Places,
  time: ReturnType<typeof readTime>,
  read: Rows,
): void {
  if (!time.ok && time.why.includes("clock")) {
    read.clockFaults.push(`line ${line}, ${cells[at.time]} ${time.why}`);
    return;
  }
  const isTime = !time.ok;
  found.error({
    code: isTime ? "series-time" : "series-level",
    place: `line ${line}`,
    value: cells[isTime ? at.time : at.level],
    message: isTime
      ? `The time ${quote(cells[at.time] ?? "")} ${time.why}.`
      : `The level ${quote(cells[at.level] ?? "")} is not a number.`,
    mend: isTime
      ? "Correct the row, or take it out."
      : "Correct it, or leave the cell empty: it is then a gap.",
  });
}

const seriesOf = (points: Rows["points"], choice: SeriesFile): Series =>
  makeSeries({
    kind: choice.kind,
    basis: choice.basis,
    attribution: choice.attribution,
    t_s: Float64Array.from(points, (p) => p.t),
    z_m: Float64Array.from(points, (p) => p.z),
  });

/** What the reader noticed and left out, once each with its count. */
function report(found: Findings, rows: Rows, series: Series, choice: SeriesFile): void {
  const { counts, points } = rows;
  if (points.length < 2)
    found.error({
      code: "series-empty",
      place: "rows",
      value: `${points.length} levels`,
      message: "The file holds fewer than two levels.",
      mend: "Check the columns and the flags, or take another file.",
    });
  const warn = (code: string, place: string, message: string, mend: string): void =>
    found.warn({ code, place, message, mend });
  if (counts.empty > 0)
    warn(
      "series-empty-cells",
      "rows",
      `${counts.empty} rows have no level and are left out.`,
      "Nothing, if they are truly missing.",
    );
  if (counts.flagged > 0)
    warn(
      "series-flagged",
      "rows",
      `${counts.flagged} rows are flagged as doubtful and are left out.`,
      "Look at the flags' meaning in the file's own notes.",
    );
  if (counts.doubled > 0)
    warn(
      "series-doubled",
      "rows",
      `${counts.doubled} rows repeat a time; the first of each is kept.`,
      "A clock that went back writes an hour twice: give the zone's name, not its offset.",
    );
  if (rows.outOfOrder > 0)
    warn(
      "series-order",
      "rows",
      `${rows.outOfOrder} rows stand before the one above them; they were sorted by time.`,
      "Check for days and months that changed places.",
    );
  if (rows.clockFaults.length > 0)
    warn(
      "series-clock",
      rows.clockFaults[0]!,
      `${rows.clockFaults.length} times have no single instant in ${choice.zone} and are left out.`,
      'If the logger kept one time all year, give its offset, such as "-05:00".',
    );
  reportGaps(found, series);
  reportJump(found, points);
}

function reportGaps(found: Findings, series: Series): void {
  const { gaps } = series;
  if (gaps.length === 0) return;
  const longest = gaps.reduce((a, g) => (g.to_s - g.from_s > a.to_s - a.from_s ? g : a));
  found.warn({
    code: "series-gaps",
    place: `${isoMinute(longest.from_s)} to ${isoMinute(longest.to_s)}`,
    value: `${gaps.length} gaps`,
    message: `The record has ${gaps.length} gaps; the longest is ${((longest.to_s - longest.from_s) / 3600).toFixed(1)} hours.`,
    mend: "Nothing is read across a gap. Fill it from the gauge if that can be had.",
  });
}

/** A step that no tide makes: a changed sensor, a wrong unit, a moved decimal point. */
function reportJump(found: Findings, points: Rows["points"]): void {
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    if (Math.abs(b.z - a.z) <= Math.max(SMALL_STEP_M, FASTEST_M_PER_S * (b.t - a.t)) || b.t - a.t > 86_400)
      continue;
    found.warn({
      code: "series-jump",
      place: `line ${b.line}`,
      value: `${(b.z - a.z).toFixed(2)} m`,
      message: `From line ${a.line} to line ${b.line} the water moves by ${Math.abs(b.z - a.z).toFixed(2)} m in ${((b.t - a.t) / 60).toFixed(0)} minutes.`,
      mend: "Check the unit, the sensor and the decimal point.",
    });
    return;
  }
}
