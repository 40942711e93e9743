import { checkExchanged } from "./exchanged.ts";
import type { Findings } from "../problem/index.ts";
import { ListedLines } from "./listed-lines.ts";
import { LeftOutRows, markMissing } from "./missing.ts";
import type { PointRows } from "./point-rows.ts";
import { checkDegrees, checkEllipsoid, checkFeet, warnOfOrigin, warnOfZeros } from "./suspicions.ts";
import { eachNameTwin, eachSpotTwin } from "./twins.ts";
import type { LeftOutReason, PointOptions, PointsRead, PointTable } from "./types.ts";
import { metresPer } from "./units.ts";

/** What remains to be done when every row is in: rows that are no points, the unit, and what is odd about the whole. */
export function finishPoints(
  found: Findings,
  rows: PointRows,
  left: LeftOutRows,
  options: PointOptions,
): PointsRead {
  const per = metresPer[options.unit];
  const total = rows.length;
  const marks = new Uint8Array(total);
  const kept = markMissing(rows, marks, left, per);
  markTwins(found, rows, marks, left, per);
  if (left.count > 0) rows.dropMarked(marks);
  left.listed.sort((a, b) => a.line - b.line);
  warnOfLeftOut(found, left);
  const points = rows.table(per);
  if (kept.doubtful_origin) warnOfOrigin(found);
  warnOfZeros(found, kept.zeros, points.z.length, options.columns.z);
  judge(found, points, options);
  found.throwIfErrors();
  return { points, left_out: left.listed, left_out_count: left.count, warnings: found.warnings };
}

function judge(found: Findings, points: PointTable, options: PointOptions): void {
  if (points.z.length === 0) {
    found.error({
      code: "points-none",
      place: "file",
      message: "No row of the file is a point with a position and a height.",
      mend: "Check the columns that are named for x, y and the height.",
    });
    return;
  }
  checkExchanged(found, options.columns);
  checkDegrees(found, points, options);
  checkFeet(found, points, options);
  const asGround = options.heights !== "as-read";
  checkEllipsoid(found, points.z, `column "${options.columns.z}"`, options.known_heights_m ?? [], asGround);
}

/** Heights on one spot that differ by less than this are one point [m]. */
const SAME_HEIGHT_M = 0.0005;

function markTwins(
  found: Findings,
  rows: PointRows,
  marks: Uint8Array,
  left: LeftOutRows,
  metres_per_unit: number,
): void {
  const others = new ListedLines();
  const idOf = (row: number): string | null => rows.ids?.at(row) ?? null;
  eachSpotTwin(rows, marks, (row, first) => {
    if (Math.abs(rows.z[row]! - rows.z[first]!) * metres_per_unit > SAME_HEIGHT_M)
      return others.add(rows.lines[row]!, idOf(row));
    marks[row] = 1;
    left.add(rows.lines[row]!, idOf(row), "same-point", `as line ${rows.lines[first]}`);
  });
  if (others.count > 0)
    found.warn({
      code: "points-two-heights",
      place: others.text,
      value: `${others.count} points`,
      message:
        "Points lie on the spot of an earlier one, with another height: the ground there is taken at the mean of them.",
      mend: "Check which of them is right.",
    });
  if (rows.ids) warnOfNames(found, rows, marks);
}

function warnOfNames(found: Findings, rows: PointRows, marks: Uint8Array): void {
  const names = new ListedLines();
  eachNameTwin(rows.ids!, marks, (row) => names.add(rows.lines[row]!, rows.ids!.at(row)));
  if (names.count > 0)
    found.warn({
      code: "points-same-name",
      place: names.text,
      value: `${names.count} points`,
      message: "Points bear the name of an earlier one at another place.",
      mend: "Check that no shot was taken twice under one name; all were kept.",
    });
}

const reasonWords: Readonly<Record<LeftOutReason, string>> = {
  "no-position": "without a position",
  "position-zero": "with the position 0, 0, far from all others: their coordinates are missing",
  "no-height": "without a height",
  "height-zero": "with a height of exactly 0, far from all others: their heights are missing",
  "no-data-value": "with a customary value for no height",
  "no-reading": "without a reading",
  "same-point": "that repeat an earlier point",
};

/** One warning for each reason why rows are not among the points. */
export function warnOfLeftOut(found: Findings, left: LeftOutRows): void {
  for (const [reason, count] of left.counts) {
    const lines = new ListedLines();
    for (const row of left.listed) if (row.reason === reason) lines.add(row.line, row.id);
    found.warn({
      code: `points-${reason}`,
      place: lines.text,
      value: `${count} rows`,
      message: `${count} row${count === 1 ? "" : "s"} ${reasonWords[reason]}. Left out: ${lines.text}.`,
      mend:
        reason === "same-point"
          ? "Nothing needs to be done."
          : "Fill in what is missing from the field book if these points matter.",
    });
  }
}
