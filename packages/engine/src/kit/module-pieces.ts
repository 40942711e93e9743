import type { LumberSize } from "../materials/tables.ts";
import { catchBoardSpan, crossPlaces } from "./cross-places.ts";
import { deckThickness, moduleCurbs, moduleDeck } from "./deck.ts";
import { moduleStringers, type StringerLines } from "./frame.ts";
import { place, type PlacedPiece, type Span } from "./piece.ts";
import { lying, sectionOf } from "./section.ts";
import type { Kit } from "./types.ts";

/**
 * Every piece of one module as a box in the module's own frame: x along from its start, y across from the middle
 * line (left positive), z up from its underside.
 *
 * length_mm  body length, one of the kit's  [mm]
 *
 * Throws `DomainError` when the table lacks a size. A faulty recipe gives faulty boxes: ask `validateKit` first.
 */
export function modulePieces(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): PlacedPiece[] {
  const stringers = moduleStringers(kit, sizes);
  const top = stringers.depth_mm;
  return [
    ...stringers.lines.map((y) =>
      place("stringer", kit.stringers.size, length_mm, [0, length_mm], y, [0, top]),
    ),
    ...crossPieceBoxes(kit, length_mm, stringers, sizes),
    ...catchBoards(kit, length_mm, stringers, sizes),
    ...moduleDeck(kit.deck, length_mm, top, sizes),
    ...moduleCurbs(kit, length_mm, top + deckThickness(kit.deck, sizes), sizes),
  ];
}

/** Cross pieces fit between neighbouring stringers, their tops flush with the stringers' tops. */
function crossPieceBoxes(
  kit: Kit,
  length_mm: number,
  stringers: StringerLines,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const top = stringers.depth_mm;
  return crossPlaces(kit, length_mm, sizes).flatMap(({ x, size }) => {
    const { high } = lying(sectionOf(sizes, size), kit.cross_pieces.lay);
    return stringers.bays.map((y) => place("cross piece", size, y[1] - y[0], x, y, [top - high, top]));
  });
}

/** Underside of the first cross piece over the module's underside [mm]: what a catch board must come under. */
export function startPieceUnderside(kit: Kit, sizes: readonly LumberSize[]): number {
  const depth = sectionOf(sizes, kit.stringers.size).width_mm;
  const start = kit.lengths_mm.map((l) => crossPlaces(kit, l, sizes)[0]?.size ?? kit.cross_pieces.size);
  return depth - Math.max(...start.map((id) => lying(sectionOf(sizes, id), kit.cross_pieces.lay).high));
}

/**
 * The catch board lies flat between the stringers, its top level with the underside of the first cross piece, so
 * that the projecting part comes to lie under the first cross piece of the next module and carries it.
 */
function catchBoards(
  kit: Kit,
  length_mm: number,
  stringers: StringerLines,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const x = catchBoardSpan(kit, length_mm, sizes);
  if (kit.end.kind === "plain" || !x) return [];
  const { size } = kit.end;
  const top = startPieceUnderside(kit, sizes);
  const z: Span = [top - sectionOf(sizes, size).thickness_mm, top];
  return stringers.bays.map((y) => place("catch board", size, y[1] - y[0], x, y, z));
}
