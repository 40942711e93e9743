import type { Problem } from "@causey/engine/formula";
import type { StrengthReading } from "@causey/engine/site";
import { PA_PER_PSF } from "@causey/engine/units";
import type { CsvRow } from "../csv/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { checkExchanged } from "./exchanged.ts";
import { NamedTable } from "./named-table.ts";
import type { DecimalSign, LeftOut, PointUnit } from "./types.ts";
import { metresPer } from "./units.ts";

export interface ShearColumns {
  readonly id: string | null;
  readonly x: string;
  readonly y: string;
  readonly depth: string;
  readonly peak: string;
  readonly remoulded: string | null;
  /** Vane diameter and height in millimetres, as "55 x 110". */
  readonly vane: string | null;
}

export interface ShearOptions {
  readonly columns: ShearColumns;
  /** Of positions and depths. */
  readonly unit: PointUnit;
  readonly strength_unit: "kpa" | "psf";
  readonly decimal: DecimalSign;
  /** Multiplies both strengths: 1 where the file is corrected already; a vane in peat reads high. */
  readonly correction: number;
  /** Who took the readings, with what, when. */
  readonly source: string;
}

export interface ShearRead {
  readonly readings: readonly StrengthReading[];
  readonly left_out: readonly LeftOut[];
  readonly warnings: readonly Problem[];
}

/** Stronger than this is no soft ground: most likely another unit [kPa]. */
const STRONGEST_KPA = 500;
/** Deeper than any hand vane [m]. */
const DEEPEST_M = 30;

type Table = NamedTable<keyof ShearColumns>;

/**
 * Reads field-vane readings from CSV: peak and remoulded strength, depth, vane size.
 *
 * Rows without a peak strength are left out and listed. Throws `ProblemError` with every fault: no position, depth
 * below zero, remoulded above peak, strengths that no soft ground has. Warns where strengths are taken as read.
 */
export function readShearReadings(file: string, bytes: Uint8Array, options: ShearOptions): ShearRead {
  const found = new Findings(file);
  if (!(options.correction > 0 && options.correction <= 1))
    found.stop({
      code: "shear-correction",
      place: "correction",
      value: options.correction,
      message: "The correction of vane strengths must lie above 0 and not above 1.",
      mend: "Give 1 for readings that are corrected already, and the factor otherwise.",
    });
  const table: Table = new NamedTable(found, bytes, { ...options.columns }, options.decimal);
  checkExchanged(found, options.columns);
  refuseConeIndex(found, options.columns.peak);
  const left_out: LeftOut[] = [];
  const readings = table.rows.flatMap((row) => readRow(table, row, options, left_out) ?? []);
  found.throwIfErrors();
  if (options.correction === 1 && readings.length > 0)
    found.warn({
      code: "shear-as-read",
      place: `column ${quote(options.columns.peak)}`,
      value: `${readings.length} readings`,
      message:
        "The strengths are taken as they stand. A field vane in peat reads high: published factors run from 0.26 to 0.69 and differ widely.",
      mend: "In peat give a factor such as 0.5, or say in the source that the readings are corrected.",
    });
  return { readings, left_out, warnings: found.warnings };
}

const CONE = /cone|penetro|cpt|^kpa[ _]?\d+$|(^|[^a-z])(ci|qc)([^a-z]|$)/i;

/** A cone index in the place of a strength would make mud ten times as firm as it is. */
function refuseConeIndex(found: Findings, column: string): void {
  if (!CONE.test(column.trim()) && !CONE.test(found.file.replace(/\.[^.]*$/, ""))) return;
  found.error({
    code: "shear-cone-index",
    place: `column ${quote(column)}`,
    value: column,
    message: `The column ${quote(column)} of ${quote(found.file)} looks like readings of a cone penetrometer. A cone index is not a shear strength and not a bearing capacity.`,
    mend: "Take vane readings where supports will stand. If the column does hold vane strengths, give it and the file a name that says so, such as su_kpa.",
  });
}

function readRow(
  table: Table,
  row: CsvRow,
  options: ShearOptions,
  left_out: LeftOut[],
): StrengthReading | null {
  const metres = metresPer[options.unit];
  const kpa = (options.strength_unit === "kpa" ? 1 : PA_PER_PSF / 1000) * options.correction;
  const [x, y, depth, peak, remoulded] = (["x", "y", "depth", "peak", "remoulded"] as const).map((k) =>
    table.number(row, k),
  ) as [number | null, number | null, number | null, number | null, number | null];
  if (peak === null) {
    left_out.push({
      line: row.line,
      id: table.text(row, "id") || null,
      reason: "no-reading",
      value: table.text(row, "peak"),
    });
    return null;
  }
  if (x === null || y === null || depth === null) {
    const lacks = x === null || y === null ? "position" : "depth";
    table.fault(
      row,
      "shear-place",
      "",
      `A reading has no ${lacks}.`,
      `Give the ${lacks}, or leave the row out.`,
    );
    return null;
  }
  if (!isSound(table, row, depth * metres, peak * kpa, remoulded === null ? null : remoulded * kpa))
    return null;
  const vane = vaneSize(table, row);
  return {
    x: x * metres,
    y: y * metres,
    depth_m: depth * metres,
    su_kpa: peak * kpa,
    source: sourceOf(options, table.text(row, "id")),
    ...(remoulded === null ? {} : { remoulded_kpa: remoulded * kpa }),
    ...(vane === null ? {} : { vane_mm: vane }),
  };
}

function sourceOf({ source, correction }: ShearOptions, id: string): string {
  const name = id === "" ? source : `${source}, ${id}`;
  return correction === 1 ? name : `${name}, vane reading x ${correction}`;
}

function isSound(table: Table, row: CsvRow, depth: number, peak: number, remoulded: number | null): boolean {
  const faults: readonly (readonly [boolean, string, unknown, string, string])[] = [
    [
      depth < 0 || depth > DEEPEST_M,
      "shear-depth",
      depth,
      `A depth lies outside 0 to ${DEEPEST_M} m.`,
      "Give depths below ground, above zero, in the unit chosen.",
    ],
    [
      peak <= 0 || peak > STRONGEST_KPA,
      "shear-strength",
      peak,
      `A peak strength of ${peak.toPrecision(4)} kPa lies outside 0 to ${STRONGEST_KPA} kPa.`,
      "Check the unit of the strengths.",
    ],
    [
      remoulded !== null && (remoulded < 0 || remoulded > peak),
      "shear-remoulded",
      remoulded,
      "A remoulded strength lies below zero or above the peak.",
      "Check that the two columns are not exchanged.",
    ],
  ];
  const wrong = faults.filter(([isWrong]) => isWrong);
  for (const [, code, value, message, mend] of wrong) table.fault(row, code, value, message, mend);
  return wrong.length === 0;
}

/** "55x110", "55 / 110 mm", "65" -> "55 x 110", "65"; null for an empty cell and for a fault, which is reported. */
function vaneSize(table: Table, row: CsvRow): string | null {
  const text = table.text(row, "vane");
  if (text === "") return null;
  const match = /^(\d{1,3}(?:[.,]\d+)?)\s*(?:mm)?\s*(?:[x×*/]\s*(\d{1,3}(?:[.,]\d+)?)\s*(?:mm)?)?$/i.exec(
    text,
  );
  if (match)
    return [match[1]!, match[2]]
      .filter((v) => v !== undefined)
      .map((v) => v.replace(",", "."))
      .join(" x ");
  table.fault(
    row,
    "shear-vane",
    text,
    "A vane size cannot be read.",
    'Write diameter and height in millimetres, as "55 x 110".',
  );
  return null;
}
