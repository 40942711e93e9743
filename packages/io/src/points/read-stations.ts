import type { Problem } from "@causey/engine/formula";
import type { Station } from "@causey/engine/survey";
import type { CsvRow } from "../csv/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { DateColumn } from "./date-column.ts";
import { checkExchanged } from "./exchanged.ts";
import { warnOfLeftOut } from "./finish-points.ts";
import { LeftOutRows, markMissing } from "./missing.ts";
import { NamedTable } from "./named-table.ts";
import { checkEllipsoid } from "./suspicions.ts";
import type { DateOrder, DecimalSign, LeftOut, PointUnit } from "./types.ts";
import { metresPer } from "./units.ts";

export interface StationColumns {
  readonly id: string;
  readonly x: string;
  readonly y: string;
  /** Height of the ground on the plan's datum. */
  readonly ground: string;
  /** Depth that a probe sank before firm ground. */
  readonly probe: string | null;
  /** Level of standing water on the plan's datum. */
  readonly water: string | null;
  readonly date: string | null;
}

export interface StationOptions {
  readonly columns: StationColumns;
  readonly unit: PointUnit;
  readonly decimal: DecimalSign;
  readonly date_order: DateOrder;
  /** Heights on the plan's datum that are known at the site: marks, water levels [m]. */
  readonly known_heights_m?: readonly number[];
}

export interface StationsRead {
  /** In the order of the file: ground is taken as known along the line from one to the next. */
  readonly stations: readonly Station[];
  readonly left_out: readonly LeftOut[];
  readonly warnings: readonly Problem[];
}

type Table = NamedTable<keyof StationColumns>;

/**
 * Reads probe stations from CSV: station, x, y, ground, probe depth, water level.
 *
 * Rows without a ground height, and those whose position or height is a sign for nothing (0, 0 far from all others),
 * are left out and listed; an empty probe depth or water level means "not read". Names lose their blanks, as a plan's
 * ids have none. Throws `ProblemError` with every fault, and for heights above the ellipsoid.
 */
export function readProbeStations(file: string, bytes: Uint8Array, options: StationOptions): StationsRead {
  const found = new Findings(file);
  const table: Table = new NamedTable(found, bytes, { ...options.columns }, options.decimal);
  const dates = new DateColumn(found, options.date_order);
  checkExchanged(found, options.columns);
  const left_out: LeftOut[] = [];
  const lines = new Map<string, number>();
  const stations = table.rows.flatMap((row) => {
    const station = readRow(table, row, metresPer[options.unit], dates, left_out);
    if (station === null) return [];
    const first = lines.get(station.id);
    if (first !== undefined)
      table.fault(
        row,
        "station-twice",
        station.id,
        `Line ${first} already holds the station ${quote(station.id)}.`,
        "Name every station once.",
      );
    lines.set(station.id, row.line);
    return [station];
  });
  dates.finish();
  found.throwIfErrors();
  const kept = withoutMissing(found, stations, lines, left_out);
  const heights = kept.map((s) => s.ground_m);
  checkEllipsoid(found, heights, `column "${options.columns.ground}"`, options.known_heights_m ?? [], true);
  found.throwIfErrors();
  return { stations: kept, left_out, warnings: found.warnings };
}

/** Stations whose position or height stands for nothing are no stations: they go to the rows left out. */
function withoutMissing(
  found: Findings,
  stations: readonly Station[],
  lines: ReadonlyMap<string, number>,
  left_out: LeftOut[],
): readonly Station[] {
  const left = new LeftOutRows();
  const marks = new Uint8Array(stations.length);
  const rows = {
    x: stations.map((s) => s.x),
    y: stations.map((s) => s.y),
    z: stations.map((s) => s.ground_m),
    lines: stations.map((s) => lines.get(s.id)!),
    ids: { at: (row: number) => stations[row]!.id },
    length: stations.length,
  };
  markMissing(rows, marks, left, 1);
  warnOfLeftOut(found, left);
  left_out.push(...left.listed);
  left_out.sort((a, b) => a.line - b.line);
  return stations.filter((_, i) => marks[i] === 0);
}

function readRow(
  table: Table,
  row: CsvRow,
  metres: number,
  dates: DateColumn,
  left_out: LeftOut[],
): Station | null {
  const id = table.text(row, "id").replaceAll(/\s+/g, "-");
  const length = (key: "x" | "y" | "ground" | "probe" | "water"): number | null => {
    const value = table.number(row, key);
    return value === null ? null : value * metres;
  };
  const [x, y, ground_m] = [length("x"), length("y"), length("ground")];
  const [probe_m, water_m] = [length("probe"), length("water")];
  const date = dates.read(table.text(row, "date"), row.line);
  if (!/^\P{Cc}{1,80}$/u.test(id))
    table.fault(
      row,
      "station-name",
      id,
      "A station has no name, or one longer than 80 signs.",
      "Name every station.",
    );
  if (probe_m !== null && probe_m < 0)
    table.fault(
      row,
      "station-probe",
      probe_m,
      "A probe depth lies below zero.",
      "Give how deep the probe sank, above zero.",
    );
  if (x === null || y === null || ground_m === null) {
    const reason = ground_m === null ? "no-height" : "no-position";
    left_out.push({ line: row.line, id: id || null, reason, value: "" });
    return null;
  }
  return { id, x, y, ground_m, probe_m, water_m, date };
}
