import type { Problem } from "@causey/engine/formula";
import { makeSeries, type Series, type SeriesFile } from "@causey/engine/water";
import { Findings, quote } from "../problem/index.ts";
import { reportClockChange } from "./clock-change.ts";
import { columnPlaces, readTable } from "./columns.ts";
import { checkLevelHead, noteLevels } from "./level-doubts.ts";
import { readRows, type Rows } from "./read-rows.ts";
import { reportRows, reportSeries } from "./report.ts";
import { checkZoneColumn } from "./zone-column.ts";
import { zoneOf } from "./zone.ts";

export interface SeriesRead {
  readonly series: Series;
  readonly warnings: readonly Problem[];
  readonly counts: {
    readonly rows: number;
    readonly kept: number;
    readonly empty: number;
    readonly flagged: number;
    readonly doubled: number;
    /** Times that a clock change leaves without an instant. */
    readonly clockless: number;
  };
}

/**
 * Reads a gauge's or logger's CSV, or a table of high and low waters, onto the plan's vertical datum.
 *
 * choice  which columns, which unit, which zone, which datum; heights come out as level * unit + offset_m. The time
 *         may lie in several columns ("date + time + zone"); years stand first, or the rows show which number is the day
 * place   where the choice stands in the plan, for messages
 * datum   the plan's; a file on another datum needs an offset with its source
 * Throws `ProblemError` with every fault of the file. Gaps, doubled and flagged rows, times that a clock change
 * leaves without an instant, and rows out of order are warnings: they are left out, and counted. At most 200 MB and
 * three million rows.
 */
export function readSeries(
  bytes: Uint8Array,
  choice: SeriesFile,
  datum: string,
  place = "water.series",
): SeriesRead {
  const found = new Findings(choice.file);
  const table = readTable(found, bytes);
  const zone = zoneOf(choice.zone);
  const at = columnPlaces(found, table.heads, choice, place);
  checkDatum(found, choice, datum, place);
  if (zone === null)
    found.error({
      code: "series-zone",
      place: `${place}.zone`,
      value: choice.zone,
      message: `${quote(choice.zone)} is not a zone.`,
      mend: 'Give "UTC", an offset such as "-05:00", or a place such as "Europe/Lisbon".',
    });
  found.throwIfErrors();
  checkLevelHead(found, table.heads, at!, choice);
  const rows = readRows(found, table, at!, zone!, choice);
  found.throwIfErrors();
  const series = seriesOf(rows, choice);
  checkZoneColumn(found, table, at!, { zone: zone!, order: rows.order });
  noteLevels(found, table, at!, choice);
  reportRows(found, rows, choice);
  reportSeries(found, rows.points, series);
  reportClockChange(found, rows, series, zone!);
  found.throwIfErrors();
  return { series, warnings: found.warnings, counts: countsOf(rows, table.rows.length) };
}

function checkDatum(found: Findings, choice: SeriesFile, datum: string, place: string): void {
  if (!Number.isFinite(choice.offset_m))
    found.error({
      code: "series-offset",
      place: `${place}.offset_m`,
      value: choice.offset_m,
      message: "The offset is not a number.",
      mend: "Give 0 where the file is on the plan's datum.",
    });
  if (choice.datum === datum || choice.offset_source.trim() !== "") return;
  found.error({
    code: "datum-clash",
    place: `${place}.datum`,
    value: choice.datum,
    message: `The levels of ${quote(choice.file)} are on "${choice.datum}", the plan is on "${datum}".`,
    mend: `Give the difference between the two at the site (offset_m) and where it comes from (offset_source): a tide table's datum is not the land's.`,
  });
}

const seriesOf = ({ points, zoned }: Rows, choice: SeriesFile): Series =>
  makeSeries({
    kind: choice.kind,
    basis: choice.basis,
    attribution: choice.attribution,
    zone_note: zoneNote(choice.zone, zoned, points.length),
    t_s: Float64Array.from(points, (p) => p.t),
    z_m: Float64Array.from(points, (p) => p.z),
  });

function zoneNote(zone: string, zoned: number, kept: number): string {
  if (zoned === 0) return `Times of the file were read as ${zone}.`;
  return zoned >= kept
    ? "Times of the file name their own zone."
    : `Times of the file name their own zone, or were read as ${zone}.`;
}

function countsOf(rows: Rows, count: number): SeriesRead["counts"] {
  return {
    rows: count,
    kept: rows.points.length,
    empty: rows.empty,
    flagged: [...rows.flags.values()].reduce((a, b) => a + b, 0),
    doubled: rows.doubled,
    clockless: rows.clock.count,
  };
}
