import type { RowCells } from "./row-cells.ts";

const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** Text of one cell, trimmed; empty where the row is shorter. Bytes that are not UTF-8 become the replacement sign. */
export function cellText(bytes: Uint8Array, row: RowCells, cell: number): string {
  if (cell < 0 || cell >= row.count) return "";
  const text = decoder.decode(bytes.subarray(row.starts[cell]!, row.ends[cell]!));
  return (row.doubled[cell] === 1 ? text.replaceAll('""', '"') : text).trim();
}

/** Whether nothing but blanks stands in a cell, or the row is shorter. */
export function isBlankCell(bytes: Uint8Array, row: RowCells, cell: number): boolean {
  if (cell < 0 || cell >= row.count) return true;
  for (let i = row.starts[cell]!; i < row.ends[cell]!; i++) if (bytes[i]! > 32) return false;
  return true;
}
