import type { Problem } from "@causey/engine/formula";
import { median, quantileOfSorted } from "@causey/engine/survey";
import { Findings, quote } from "../problem/index.ts";
import type { CsvRow } from "../csv/index.ts";
import { checkExchanged } from "./exchanged.ts";
import { NamedTable } from "./named-table.ts";
import type { DecimalSign, LeftOut } from "./types.ts";

export interface PenetrometerOptions {
  readonly columns: {
    readonly id: string | null;
    readonly x: string;
    readonly y: string;
    /** Cone index at each depth, from the top down [kPa]. */
    readonly index: readonly string[];
    /** Kind of ground, as a moisture class, to sum up by. */
    readonly group: string | null;
  };
  readonly decimal: DecimalSign;
}

/** From the softest fifth of the places read to the firmest. */
export const FIRMNESS = ["soft", "rather soft", "middling", "rather firm", "firm"] as const;
export type Firmness = (typeof FIRMNESS)[number];

export interface PenetrometerPlace {
  readonly id: string | null;
  readonly x: number;
  readonly y: number;
  /** Null = not read at this depth. */
  readonly index_kpa: readonly (number | null)[];
  /** Lowest index of the place: what ranks it [kPa]. */
  readonly weakest_kpa: number;
  /** Among the places of this file alone. */
  readonly firmness: Firmness;
  readonly group: string | null;
}

export interface PenetrometerGroup {
  readonly group: string;
  readonly n: number;
  /** Middle cone index at each depth [kPa]; null where nothing was read. */
  readonly median_kpa: readonly (number | null)[];
}

export interface PenetrometerRead {
  readonly places: readonly PenetrometerPlace[];
  /** From soft to firm, by the middle index at the first depth. */
  readonly groups: readonly PenetrometerGroup[];
  readonly left_out: readonly LeftOut[];
  /** Always holds the warning that a cone index is no strength. */
  readonly warnings: readonly Problem[];
}

type Unranked = Omit<PenetrometerPlace, "firmness">;

/**
 * Reads a table of cone penetrometer readings and ranks the ground by it, from soft to firm.
 *
 * A cone index is neither a vane strength nor a bearing capacity; nothing here turns it into one, and a warning says
 * so. The ranking holds among the places of one file, taken with one cone in one season. x and y in metres. Places
 * without any index are left out and listed. Throws `ProblemError` with every fault.
 */
export function readPenetrometer(
  file: string,
  bytes: Uint8Array,
  options: PenetrometerOptions,
): PenetrometerRead {
  const found = new Findings(file);
  const { id, x, y, group, index } = options.columns;
  const names = Object.fromEntries(index.map((name, i) => [`index${i}`, name]));
  const table = new NamedTable<string>(found, bytes, { id, x, y, group, ...names }, options.decimal);
  checkExchanged(found, options.columns);
  const left_out: LeftOut[] = [];
  const read = table.rows.flatMap((row) => readRow(table, row, index.length, left_out) ?? []);
  found.throwIfErrors();
  found.warn({
    code: "cone-index",
    place: `columns ${index.map(quote).join(", ")}`,
    value: `${read.length} places`,
    message:
      "A cone index tells which ground is softer than which. It is not a shear strength and not a bearing capacity, and must not be converted into one without a stated rule for this cone and this soil.",
    mend: "Use the ranking to choose where to look; take vane readings where supports will stand.",
  });
  return { places: ranked(read), groups: groupsOf(read, index.length), left_out, warnings: found.warnings };
}

function readRow(
  table: NamedTable<string>,
  row: CsvRow,
  depths: number,
  left_out: LeftOut[],
): Unranked | null {
  const [x, y] = [table.number(row, "x"), table.number(row, "y")];
  const index_kpa = Array.from({ length: depths }, (_, i) => table.number(row, `index${i}`));
  const known = index_kpa.filter((v) => v !== null);
  const id = table.text(row, "id") || null;
  if (known.some((v) => v < 0)) {
    table.fault(
      row,
      "cone-index-value",
      Math.min(...known),
      "A cone index lies below zero.",
      "Check the column.",
    );
    return null;
  }
  if (x === null || y === null || known.length === 0) {
    const reason = known.length === 0 ? "no-reading" : "no-position";
    left_out.push({ line: row.line, id, reason, value: "" });
    return null;
  }
  return { id, x, y, index_kpa, weakest_kpa: Math.min(...known), group: table.text(row, "group") || null };
}

function ranked(places: readonly Unranked[]): readonly PenetrometerPlace[] {
  if (places.length === 0) return [];
  const sorted = places.map((p) => p.weakest_kpa).sort((a, b) => a - b);
  const bounds = [0.2, 0.4, 0.6, 0.8].map((share) => quantileOfSorted(sorted, share));
  return places.map((p) => ({
    ...p,
    firmness: FIRMNESS[bounds.filter((bound) => p.weakest_kpa > bound).length]!,
  }));
}

function groupsOf(places: readonly Unranked[], depths: number): readonly PenetrometerGroup[] {
  const groups = new Map<string, Unranked[]>();
  for (const place of places) {
    if (place.group === null) continue;
    const members = groups.get(place.group);
    if (members) members.push(place);
    else groups.set(place.group, [place]);
  }
  return [...groups]
    .map(([group, members]) => ({
      group,
      n: members.length,
      median_kpa: Array.from({ length: depths }, (_, i) => {
        const known = members.map((m) => m.index_kpa[i] ?? null).filter((v) => v !== null);
        return known.length === 0 ? null : median(known);
      }),
    }))
    .sort((a, b) => (a.median_kpa[0] ?? Infinity) - (b.median_kpa[0] ?? Infinity));
}
