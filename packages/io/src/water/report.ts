import { isoMinute, unturned, type Series, type SeriesFile } from "@causey/engine/water";
import { quote, type Findings } from "../problem/index.ts";
import type { Point, Rows } from "./read-rows.ts";

/** Fastest rise that is believed without a word: the steepest tides rise 4 m in an hour (from memory) [m/s]. */
const FASTEST_M_PER_S = 4 / 3600;
/** Steps below this are never named [m]. */
const SMALL_STEP_M = 1;
/** Readings farther apart than this cannot follow a tide [s]. */
const COARSE_STEP_S = 2 * 3600;
/** Above this share of rows that do not turn, a file is no table of high and low waters. */
const MOST_UNTURNED = 0.2;
const LISTED_GAPS = 10;
const DAY_S = 86_400;

/** What the reader noticed and left out, once each with its count. */
export function reportRows(found: Findings, rows: Rows, choice: SeriesFile): void {
  const { empty, flags, doubled, outOfOrder, clock } = rows;
  const warn = (code: string, place: string, message: string, mend: string): void =>
    found.warn({ code, place, message, mend });
  if (empty > 0)
    warn(
      "series-empty-cells",
      "rows",
      `${empty} rows have no level and are left out.`,
      "Nothing, if they are truly missing.",
    );
  if (flags.size > 0) reportFlags(found, flags);
  if (doubled > 0)
    warn(
      "series-doubled",
      "rows",
      `${doubled} rows repeat a time; the first of each is kept.`,
      "A clock that went back writes an hour twice: give the zone's name, not its offset.",
    );
  if (outOfOrder > 0)
    warn(
      "series-order",
      "rows",
      `${outOfOrder} rows stand before the one above them; they were sorted by time.`,
      "Check for days and months that changed places.",
    );
  if (clock.count > 0)
    warn(
      "series-clock",
      clock.first,
      `${clock.count} times have no single instant in ${choice.zone} and are left out.`,
      'If the logger kept one time all year, give its offset, such as "-05:00".',
    );
  if (rows.zoned > 0 && rows.zoned < rows.points.length + doubled)
    warn(
      "series-mixed-zones",
      "rows",
      `${rows.zoned} rows name their zone, the others do not; those were read as ${choice.zone}.`,
      "Check that the rows without a zone are in that one.",
    );
}

/** Flags by how many rows they took out, so that a flag that means "good" elsewhere is seen. */
function reportFlags(found: Findings, flags: ReadonlyMap<string, number>): void {
  const ranked = [...flags].toSorted((a, b) => b[1] - a[1]);
  const count = ranked.reduce((sum, [, n]) => sum + n, 0);
  found.warn({
    code: "series-flagged",
    place: "rows",
    value: ranked.map(([flag, n]) => `${flag}: ${n}`).join("; "),
    message: `${count} rows are flagged as doubtful and are left out: ${ranked
      .slice(0, 5)
      .map(([flag, n]) => `${quote(flag)} ${n}`)
      .join(", ")}${ranked.length > 5 ? " and others" : ""}.`,
    mend: "Look at the flags' meaning in the file's own notes.",
  });
}

/** What the series as a whole shows: too little, gaps, jumps, and a kind that does not fit. */
export function reportSeries(found: Findings, points: readonly Point[], series: Series): void {
  if (points.length < 2)
    found.error({
      code: "series-empty",
      place: "rows",
      value: `${points.length} levels`,
      message: "The file holds fewer than two levels.",
      mend: "Check the columns and the flags, or take another file.",
    });
  reportKind(found, points, series);
  reportGaps(found, series);
  reportJump(found, points);
}

function reportKind(found: Findings, points: readonly Point[], { kind, z_m, step_s }: Series): void {
  if (kind === "readings") {
    if (step_s !== null && step_s > COARSE_STEP_S)
      found.warn({
        code: "series-coarse",
        place: "rows",
        value: `${(step_s / 3600).toFixed(1)} hours`,
        message: "The readings lie hours apart: between them the tide is not known.",
        mend: 'If the file is a table of high and low waters, say so: kind "high-low".',
      });
    return;
  }
  const places = unturned(z_m);
  if (places.length === 0) return;
  const isNone = places.length > MOST_UNTURNED * (z_m.length - 2);
  const parts = {
    code: "series-not-turning",
    place: `line ${points[places[0]!]!.line}`,
    value: `${places.length} of ${z_m.length} rows`,
    message: isNone
      ? "The levels do not rise and fall in turn: this is no table of high and low waters."
      : `${places.length} rows are neither a high nor a low between their neighbours: a row is missing, or a level is wrong.`,
    mend: isNone
      ? 'If the file holds readings, say so: kind "readings".'
      : "Hold the rows around the line against the printed table.",
  };
  if (isNone && z_m.length > 10) found.error(parts);
  else found.warn(parts);
}

function reportGaps(found: Findings, { gaps }: Series): void {
  if (gaps.length === 0) return;
  const longest = gaps.reduce((a, g) => (g.to_s - g.from_s > a.to_s - a.from_s ? g : a));
  const span = (g: { readonly from_s: number; readonly to_s: number }): string =>
    `${isoMinute(g.from_s)} to ${isoMinute(g.to_s)}`;
  const more = gaps.length - LISTED_GAPS;
  found.warn({
    code: "series-gaps",
    place: span(longest),
    value: `${gaps.length} gaps`,
    message: `The record has ${gaps.length === 1 ? "a gap" : `${gaps.length} gaps`}; the longest is ${((longest.to_s - longest.from_s) / 3600).toFixed(1)} hours. ${gaps
      .slice(0, LISTED_GAPS)
      .map(span)
      .join("; ")}${more > 0 ? `; and ${more} more` : ""}.`,
    mend: "Nothing is read across a gap. Fill it from the gauge if that can be had.",
  });
}

/** A step that no tide makes: a changed sensor, a wrong unit, a moved decimal point. */
function reportJump(found: Findings, points: readonly Point[]): void {
  const isJump = (a: Point, b: Point): boolean =>
    b.t - a.t <= DAY_S && Math.abs(b.z - a.z) > Math.max(SMALL_STEP_M, FASTEST_M_PER_S * (b.t - a.t));
  const at = points.findIndex((p, i) => i > 0 && isJump(points[i - 1]!, p));
  if (at < 0) return;
  const [a, b] = [points[at - 1]!, points[at]!];
  found.warn({
    code: "series-jump",
    place: `line ${b.line}`,
    value: `${(b.z - a.z).toFixed(2)} m`,
    message: `From line ${a.line} to line ${b.line} the water moves by ${Math.abs(b.z - a.z).toFixed(2)} m in ${((b.t - a.t) / 60).toFixed(0)} minutes.`,
    mend: "Check the unit, the sensor and the decimal point.",
  });
}
