import type { LumberSize } from "../materials/tables.ts";
import type { Span } from "./piece.ts";
import { lying, sectionOf } from "./section.ts";
import type { CrossPieceException, Kit, SizeId } from "./types.ts";

/** Where one row of cross pieces lies along a module [mm]. */
export interface CrossPlace {
  readonly x: Span;
  readonly size: SizeId;
}

interface Row {
  readonly at: number;
  readonly size: SizeId;
  /** Kept flush with that end of the module whatever its size. */
  readonly flush: "start" | "end" | null;
}

/** Rows closer than this to another's edge count as touching, not overlapping [mm]. */
const TOUCH = 0.05;

/** Two lengths the builder would call equal [mm]. */
export const sameLength = (a: number, b: number): boolean => Math.abs(a - b) < 0.05;

/** Where the catch board lies along a module of this length; null when the end is plain [mm]. */
export function catchBoardSpan(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): Span | null {
  if (kit.end.kind === "plain") return null;
  const x1 = length_mm + kit.end.projection_mm;
  return [x1 - sectionOf(sizes, kit.end.size).width_mm, x1];
}

/**
 * Rows of cross pieces of one module: flush at the start, then every `spacing_mm` centre to centre, and flush at
 * a plain end. A regular row that would run into the end piece is left out, since the end piece does its work.
 * An exception acts on the row whose body it lies in, or adds a row of its own where
 * that lies wholly on the module.
 *
 * length_mm  body length, one of the kit's  [mm]
 */
export function crossPlaces(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): CrossPlace[] {
  const { size, spacing_mm, lay } = kit.cross_pieces;
  const reach = (id: SizeId): number => lying(sectionOf(sizes, id), lay).along;
  const span = (row: Row): Span => {
    const a = reach(row.size);
    if (row.flush === "start") return [0, a];
    return row.flush === "end" ? [length_mm - a, length_mm] : [row.at - a / 2, row.at + a / 2];
  };
  const start: Row = { at: 0, size, flush: "start" };
  const end: Row = { at: length_mm, size, flush: "end" };
  const endFrom = catchBoardSpan(kit, length_mm, sizes)?.[0] ?? span(end)[0];
  const regular: Row[] = [];
  for (let k = 1; k * spacing_mm < length_mm; k++) {
    const row: Row = { at: k * spacing_mm, size, flush: null };
    if (span(row)[1] <= endFrom + TOUCH && span(row)[0] >= span(start)[1] - TOUCH) regular.push(row);
  }
  let rows = [start, ...regular, ...(kit.end.kind === "plain" ? [end] : [])];
  for (const e of exceptionsFor(kit, length_mm)) rows = withException(rows, e, kit, length_mm, span);
  return rows.map((row) => ({ x: span(row), size: row.size })).sort((a, b) => a.x[0] - b.x[0]);
}

/** Exceptions that mean this length and lie on it. */
export const exceptionsFor = (kit: Kit, length_mm: number): CrossPieceException[] =>
  kit.cross_pieces.exceptions.filter(
    (e) =>
      (e.length_mm === undefined || sameLength(e.length_mm, length_mm)) &&
      e.at_mm >= 0 &&
      e.at_mm <= length_mm,
  );

function withException(
  rows: readonly Row[],
  e: CrossPieceException,
  kit: Kit,
  length_mm: number,
  span: (row: Row) => Span,
): Row[] {
  const hit = rows.findIndex((row) => span(row)[0] <= e.at_mm && e.at_mm <= span(row)[1]);
  if (hit >= 0 && e.omit) return rows.toSpliced(hit, 1);
  if (e.omit) return [...rows];
  const old = rows[hit] ?? { size: kit.cross_pieces.size, flush: null };
  const row: Row = { at: e.at_mm, size: e.size ?? old.size, flush: old.flush };
  if (hit >= 0) return rows.toSpliced(hit, 1, row);
  const [x0, x1] = span(row);
  return x0 < -TOUCH || x1 > length_mm + TOUCH ? [...rows] : [...rows, row];
}
