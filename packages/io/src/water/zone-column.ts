import type { CsvRow, CsvTable } from "../csv/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { timeWords, type Places } from "./columns.ts";
import type { DateOrder } from "./date-order.ts";
import { readTime } from "./read-time.ts";
import { fixedOffset, type Zone } from "./zone.ts";

/** Times that differ by less are one: loggers write them to the second or the minute [s]. */
const SAME_TIME_S = 90;
/** Rows that are looked at to tell what a column holds. */
const LOOKED_AT = 200;

/** A column of times and the column right of it that names the zone of each. */
interface ZonedTime {
  readonly time: number;
  readonly zone: number;
}

/**
 * Holds the times as they are read against a column of the same file that names zones (WET, WEST, EST): a table in
 * local time that is read as UTC is an hour off from the change to summer time on, and nothing else shows it.
 */
export function checkZoneColumn(
  found: Findings,
  { heads, rows }: CsvTable,
  at: Places,
  how: { readonly zone: Zone; readonly order: DateOrder | null },
): void {
  const other = zonedTime(heads, rows, at);
  if (other === null) return;
  let [first, hours, differing]: [CsvRow | null, number, number] = [null, 0, 0];
  for (const row of rows) {
    const own = readTime(timeWords(row.cells, at), how.zone, how.order);
    const told = readTime(
      `${row.cells[other.time] ?? ""} ${row.cells[other.zone] ?? ""}`,
      how.zone,
      how.order,
    );
    if (!own.ok || !told.ok || Math.abs(own.t_s - told.t_s) < SAME_TIME_S) continue;
    if (first === null) [first, hours] = [row, (own.t_s - told.t_s) / 3600];
    differing += 1;
  }
  if (first === null) return;
  const [time, zone] = [heads[other.time]!, heads[other.zone]!];
  found.error({
    code: "series-zone-words",
    place: `line ${first.line}`,
    value: `${first.cells[other.time] ?? ""} ${first.cells[other.zone] ?? ""}`,
    message: `The column ${quote(zone)} names the zone of ${quote(time)}, and by it the times as read are off by ${hours.toFixed(1)} hours from line ${first.line} on, in ${differing} of ${rows.length} rows: as where the clocks change.`,
    mend: `Name "${time} + ${zone}" as the column of times, or correct the zone that the times are read in (${how.zone.name}).`,
  });
}

function zonedTime(heads: readonly string[], rows: readonly CsvRow[], at: Places): ZonedTime | null {
  const looked = rows.slice(0, LOOKED_AT);
  const isTimes = (i: number): boolean =>
    looked.some((r) => /^\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}[T ]\d{1,2}:\d{2}/.test(r.cells[i] ?? ""));
  const isZones = (i: number): boolean => {
    const words = looked.map((r) => (r.cells[i] ?? "").trim()).filter((w) => w !== "");
    return words.length > 0 && words.every((w) => /^[A-Z]{1,5}$/i.test(w) && fixedOffset(w) !== null);
  };
  for (let zone = 1; zone < heads.length; zone++) {
    if (at.time.includes(zone) || !isZones(zone)) continue;
    for (let time = zone - 1; time >= 0; time--) if (isTimes(time)) return { time, zone };
  }
  return null;
}
