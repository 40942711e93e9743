import type { LumberSize } from "../materials/tables.ts";
import { deckBoards, deckThickness } from "./deck.ts";
import { platformStringers, type StringerLines } from "./frame.ts";
import { platformSheets } from "./platform-sheets.ts";
import { around, place, type PlacedPiece, type Span } from "./piece.ts";
import { lying, sectionOf } from "./section.ts";
import type { Kit } from "./types.ts";

/** Edges of a platform as one enters it; "back" is the edge it is entered by. */
export type PlatformEdge = "back" | "ahead" | "left" | "right";

/**
 * Every piece of one platform as a box: x along from the edge it is entered by, y across from the middle line
 * (left positive), z up from its underside. Stringers run along, rows of cross pieces between them.
 *
 * A platform in two pieces is cut along its middle line: every piece lies in one half (`platformHalves`).
 *
 * closed  edges that no module leaves from: where the kit has curbs, theirs runs through  (none when left out)
 *
 * Throws `DomainError` when the table lacks a size.
 */
export function platformPieces(
  kit: Kit,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[] = [],
): PlacedPiece[] {
  const { side_mm, stringers } = kit.platform;
  const lines = platformStringers(kit, sizes);
  const top = lines.depth_mm;
  return [
    ...lines.lines.map((y) => place("stringer", stringers.size, side_mm, [0, side_mm], y, [0, top])),
    ...crossRows(kit, lines, sizes),
    ...platformDeck(kit, lines, sizes),
    ...platformCurbs(kit, top + deckThickness(kit.deck, sizes), sizes, closed),
  ];
}

/** Rows at equal spacing, first and last flush with the edges; each row fits between the stringers. */
function crossRows(kit: Kit, lines: StringerLines, sizes: readonly LumberSize[]): PlacedPiece[] {
  const { side_mm, cross_pieces } = kit.platform;
  const { along, high } = lying(sectionOf(sizes, cross_pieces.size), kit.cross_pieces.lay);
  const z: Span = [lines.depth_mm - high, lines.depth_mm];
  const step = (side_mm - along) / (cross_pieces.count - 1);
  return Array.from({ length: cross_pieces.count }, (_, row): Span => [
    row * step,
    row * step + along,
  ]).flatMap((x) => lines.bays.map((y) => place("cross piece", cross_pieces.size, y[1] - y[0], x, y, z)));
}

function platformDeck(kit: Kit, lines: StringerLines, sizes: readonly LumberSize[]): PlacedPiece[] {
  const { deck, platform } = kit;
  const half = platform.side_mm / 2;
  if (deck.kind !== "boards") return platformSheets(kit, deck, lines, deckThickness(deck, sizes));
  const widths: Span[] =
    platform.pieces === 1
      ? [[-half, half]]
      : [
          [-half, 0],
          [0, half],
        ];
  return widths.flatMap((y) => deckBoards(deck, platform.side_mm, y, lines.depth_mm, sizes));
}

/** The pieces of each part of a platform that is carried by itself: one whole, or the right and the left half. */
export function platformHalves(
  kit: Kit,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[] = [],
): readonly PlacedPiece[][] {
  const pieces = platformPieces(kit, sizes, closed);
  if (kit.platform.pieces === 1) return [pieces];
  const isRight = (p: PlacedPiece): boolean => p.y0 + p.y1 < 0;
  return [pieces.filter(isRight), pieces.filter((p) => !isRight(p))];
}

/** Curbs flank the walkway's opening at every edge and run through at the closed ones. */
function platformCurbs(
  kit: Kit,
  z_mm: number,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[],
): PlacedPiece[] {
  if (!kit.curb) return [];
  const { size } = kit.curb;
  const { thickness_mm, width_mm: w } = sectionOf(sizes, size);
  const side = kit.platform.side_mm;
  const half = side / 2;
  const open = kit.deck.width_mm / 2;
  const z: Span = [z_mm, z_mm + thickness_mm];
  const along = (x: Span, y: Span) => place("curb", size, x[1] - x[0], x, y, z);
  const across = (x: Span, y: Span) => place("curb", size, y[1] - y[0], x, y, z);
  const inHalves = kit.platform.pieces === 2;
  const runs = (edge: PlatformEdge, reach: number): Span[] => {
    const isAcross = edge === "back" || edge === "ahead";
    if (closed.includes(edge) && !(inHalves && isAcross)) return [[-reach, reach]];
    const from = closed.includes(edge) ? 0 : open;
    return [
      [-reach, -from],
      [from, reach],
    ];
  };
  return [
    ...runs("right", half).map((s) => along([half + s[0], half + s[1]], [-half, -half + w])),
    ...runs("left", half).map((s) => along([half + s[0], half + s[1]], [half - w, half])),
    ...runs("back", half - w).map((s) => across([0, w], s)),
    ...runs("ahead", half - w).map((s) => across([side - w, side], s)),
  ].filter((p) => p.length_mm > 0);
}

/** Bearing of each stringer on a sill of the given length under the edge it ends at [mm]. */
export const stringersOnSill = (lines: StringerLines, sill_mm: number): number =>
  lines.lines.filter(([y0, y1]) => {
    const [s0, s1] = around(0, sill_mm);
    return Math.min(y1, s1) - Math.max(y0, s0) >= lines.thickness_mm / 2 - 0.05;
  }).length;
