import type { PointColumns } from "@causey/engine/survey";
import { quote, type Findings } from "../problem/index.ts";
import { cellText } from "./cell-text.ts";
import { RowCells } from "./row-cells.ts";
import type { PointUnit } from "./types.ts";
import { unitWords } from "./units.ts";

/** Places of the wanted columns in a row, from 0; -1 for one that is not wanted. */
export type ColumnPlaces = { readonly [K in keyof PointColumns]: number };

const NUMBERED = /^#(\d{1,4})$/;
const plain = (head: string): string => head.trim().normalize("NFC").toLowerCase();

/** Delimiter that parts a line of heads most often: comma, semicolon or tab, outside quotes. */
export function sniffDelimiter(line: string): number {
  const bare = line.replaceAll(/"[^"]*"/g, "");
  const count = (d: string): number => bare.split(d).length;
  return [";", "\t"].reduce((best, d) => (count(d) > count(best) ? d : best), ",").charCodeAt(0);
}

/** Cells of the first row as text. */
export const headsOf = (bytes: Uint8Array, row: RowCells): readonly string[] =>
  Array.from({ length: Math.min(row.count, row.starts.length) }, (_, i) => cellText(bytes, row, i));

/** Whether the columns are asked for by number, as in a file without heads. */
export const isNumbered = (columns: PointColumns): boolean =>
  [columns.x, columns.y, columns.z].every((name) => NUMBERED.test(name.trim()));

/** Finds the columns by their heads; a missing one and one that stands twice are reported and end the reading. */
export function placeColumns(
  found: Findings,
  heads: readonly string[],
  columns: PointColumns,
  line: number,
): ColumnPlaces {
  const known = heads.map(plain);
  const place = (what: string, name: string | null): number => {
    if (name === null) return -1;
    const number = NUMBERED.exec(name.trim());
    const at = number ? Number(number[1]) - 1 : known.indexOf(plain(name));
    if (at < 0 || at >= heads.length) missing(found, heads, what, name, line);
    else if (!number && known.indexOf(plain(name), at + 1) >= 0) twice(found, name, line);
    return at;
  };
  const places = {
    id: place("the point's name", columns.id),
    x: place("x (east)", columns.x),
    y: place("y (north)", columns.y),
    z: place("the height", columns.z),
    code: place("the code", columns.code),
    accuracy: place("the accuracy", columns.accuracy),
    date: place("the date", columns.date),
  };
  checkApart(found, columns, places, line);
  found.throwIfErrors();
  return places;
}

function missing(found: Findings, heads: readonly string[], what: string, name: string, line: number): void {
  found.error({
    code: "points-column",
    place: `line ${line}`,
    value: heads.join(", "),
    message: `The file has no column ${quote(name)}, which is named for ${what}.`,
    mend: `Name one of its columns: ${heads.slice(0, 30).map(quote).join(", ")}. For a file without heads write #1, #2, #3.`,
  });
}

const twice = (found: Findings, name: string, line: number): void =>
  found.error({
    code: "csv-head",
    place: `line ${line}`,
    value: name,
    message: `The column ${quote(name)} stands twice.`,
    mend: "Rename one of the two.",
  });

function checkApart(found: Findings, columns: PointColumns, places: ColumnPlaces, line: number): void {
  for (const [a, b] of [
    ["x", "y"],
    ["x", "z"],
    ["y", "z"],
  ] as const)
    if (places[a] >= 0 && places[a] === places[b])
      found.error({
        code: "points-column",
        place: `line ${line}`,
        value: columns[a],
        message: `The column ${quote(columns[a])} is named for both ${a} and ${b}.`,
        mend: "Name a column for each of x, y and z.",
      });
}

const FEET = /(^|[^a-z])(us[ _-]?ft|ft|feet|foot|usft|sft)([^a-z]|$)/i;
const METRES = /(^|[^a-z])(m|metres?|meters?)([^a-z]|$)/i;

/** A head that names another unit than the one chosen is an error: the factor between them is 3.28. */
export function checkUnitOfHeads(
  found: Findings,
  heads: readonly string[],
  places: ColumnPlaces,
  unit: PointUnit,
  line: number,
): void {
  for (const key of ["x", "y", "z"] as const) {
    const head = heads[places[key]] ?? "";
    const says = FEET.test(head) ? "feet" : METRES.test(head) ? "metres" : null;
    if (says === null || (says === "metres") === (unit === "m")) continue;
    found.error({
      code: "points-unit",
      place: `line ${line}`,
      value: head,
      message: `The column ${quote(head)} names ${says}; the file is read in ${unitWords[unit]}.`,
      mend: `Choose ${says} as the unit of the file, or rename the column if its name is wrong.`,
    });
  }
}
