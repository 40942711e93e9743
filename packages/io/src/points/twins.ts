import type { PointRows } from "./point-rows.ts";
import type { TextColumn } from "./text-column.ts";

/**
 * Visits every row that is equal to an earlier one, with the first of its kind. Rows marked 1 take no part. An open
 * table of row numbers: 4 to 8 bytes a row, whatever the rows hold.
 */
export function eachTwin(
  length: number,
  marks: Uint8Array,
  hash: (row: number) => number,
  isSame: (a: number, b: number) => boolean,
  visit: (row: number, first: number) => void,
): void {
  let size = 16;
  while (size < length * 1.5) size *= 2;
  const table = new Uint32Array(size);
  for (let row = 0; row < length; row++) {
    if (marks[row] === 1) continue;
    let at = hash(row) & (size - 1);
    while (table[at] !== 0 && !isSame(table[at]! - 1, row)) at = (at + 1) & (size - 1);
    if (table[at] === 0) table[at] = row + 1;
    else visit(row, table[at]! - 1);
  }
}

/** Positions are told apart to a thousandth of the file's unit. */
const fine = (v: number): number => Math.round(v * 1000);

const mix = (a: number, b: number): number => {
  let h = Math.imul(fine(a) | 0, 0x9e3779b1) ^ Math.imul(fine(b) | 0, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return (h ^ (h >>> 13)) >>> 0;
};

/** Rows on the spot of an earlier one. */
export const eachSpotTwin = (
  rows: PointRows,
  marks: Uint8Array,
  visit: (row: number, first: number) => void,
): void =>
  eachTwin(
    rows.length,
    marks,
    (i) => mix(rows.x[i]!, rows.y[i]!),
    (a, b) => fine(rows.x[a]!) === fine(rows.x[b]!) && fine(rows.y[a]!) === fine(rows.y[b]!),
    visit,
  );

/** Rows with the name of an earlier one; rows without a name take no part. */
export function eachNameTwin(
  ids: TextColumn,
  marks: Uint8Array,
  visit: (row: number, first: number) => void,
): void {
  const named = marks.slice(0, ids.length);
  for (let i = 0; i < ids.length; i++) if (ids.isEmpty(i)) named[i] = 1;
  eachTwin(
    ids.length,
    named,
    (i) => ids.hash(i),
    (a, b) => ids.isSame(a, b),
    visit,
  );
}
