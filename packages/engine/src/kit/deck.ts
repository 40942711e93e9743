import type { LumberSize } from "../materials/tables.ts";
import { deckPanels, sheetRun, type SheetRun } from "./panels.ts";
import { around, place, type PlacedPiece, type Span } from "./piece.ts";
import { sectionOf } from "./section.ts";
import type { BoardDeck, Deck, Kit, MeshDeck } from "./types.ts";

export type { BoardDeck, MeshDeck };

/** A board gap may differ this much from the recipe's to make the last board end flush [mm]. */
export const GAP_SLACK_MM = 3;

export interface BoardPattern {
  readonly count: number;
  /** The gap that makes first and last board flush with the ends [mm]. */
  readonly gap_mm: number;
}

/**
 * Boards across a length, first and last flush with its ends, all gaps equal.
 *
 * length_mm  length to cover        [mm], >= one board
 * board_mm   actual board width     [mm]
 * gap_mm     gap the recipe asks for [mm]
 * returns    the count whose actual gap (L - n w) / (n - 1) is nearest the asked one; the gap is negative when
 *            no count fits, which `validateKit` reports
 */
export function boardPattern(length_mm: number, board_mm: number, gap_mm: number): BoardPattern {
  const gapOf = (n: number): number =>
    n === 1 ? length_mm - board_mm : (length_mm - n * board_mm) / (n - 1);
  const about = Math.max(1, Math.floor((length_mm + gap_mm) / (board_mm + gap_mm)));
  const [fewer, more] = [gapOf(about), gapOf(about + 1)];
  return Math.abs(more - gap_mm) < Math.abs(fewer - gap_mm)
    ? { count: about + 1, gap_mm: more }
    : { count: about, gap_mm: fewer };
}

/** The pattern a deck of boards shows on a part of this length. */
export const deckPattern = (deck: BoardDeck, length_mm: number, sizes: readonly LumberSize[]): BoardPattern =>
  boardPattern(length_mm, sectionOf(sizes, deck.size).width_mm, deck.gap_mm);

/** Top of deck over top of stringer: a board's or panel's thickness, or two crossing wires [mm]. */
export function deckThickness(deck: Deck, sizes: readonly LumberSize[]): number {
  if (deck.kind === "boards") return sectionOf(sizes, deck.size).thickness_mm;
  return deck.kind === "mesh" ? 2 * deck.wire_mm : deck.thickness_mm;
}

/** The deck of one module: boards across, or mesh or panels end to end. */
export function moduleDeck(
  deck: Deck,
  length_mm: number,
  z_mm: number,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  if (deck.kind === "boards") return deckBoards(deck, length_mm, around(0, deck.width_mm), z_mm, sizes);
  return deck.kind === "mesh" ? meshPanels(deck, length_mm, z_mm) : deckPanels(deck, length_mm, z_mm);
}

/** Width the sheet is sheared to before its edges are bent up [mm]. */
export const sheetWidth = (deck: MeshDeck): number => deck.width_mm + 2 * deck.upturn_mm;

/** Whole mesh panels that cover a module, each trimmed alike; the recipe's sheet is never stretched. */
export const panelRun = (deck: MeshDeck, length_mm: number): SheetRun =>
  sheetRun({ length_mm: deck.panel_length_mm, gap_mm: 0 }, length_mm);

/** Deck boards over the width `y` of a part, from its start to its end. */
export function deckBoards(
  deck: BoardDeck,
  length_mm: number,
  y: Span,
  z_mm: number,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const { thickness_mm, width_mm } = sectionOf(sizes, deck.size);
  const { count, gap_mm } = deckPattern(deck, length_mm, sizes);
  return Array.from({ length: count }, (_, i) => {
    const x0 = i * (width_mm + gap_mm);
    return place("deck board", deck.size, y[1] - y[0], [x0, x0 + width_mm], y, [z_mm, z_mm + thickness_mm]);
  });
}

/** Mesh panels of a module, end to end, with both edges bent up. */
export function meshPanels(deck: MeshDeck, length_mm: number, z_mm: number): PlacedPiece[] {
  const t = 2 * deck.wire_mm;
  const run = panelRun(deck, length_mm);
  const half = deck.width_mm / 2;
  const z: Span = [z_mm, z_mm + t];
  const up: Span = [z_mm + t, z_mm + deck.upturn_mm];
  const upturn = (x: Span, y: Span): PlacedPiece => place("mesh upturn", null, run.length_mm, x, y, up);
  return Array.from({ length: run.count }, (_, i) => {
    const x: Span = [i * run.length_mm, (i + 1) * run.length_mm];
    const panel = place("mesh panel", null, run.length_mm, x, [-half, half], z);
    return up[1] <= up[0] ? [panel] : [panel, upturn(x, [-half, t - half]), upturn(x, [half - t, half])];
  }).flat();
}

/** Where walking and wheels are possible: between curbs, upturned edges or deck edges [mm]. */
export function clearWidth(kit: Kit, sizes: readonly LumberSize[]): number {
  const edge =
    kit.deck.kind === "mesh" && kit.deck.upturn_mm > 2 * kit.deck.wire_mm ? 2 * kit.deck.wire_mm : 0;
  const curb = kit.curb ? sectionOf(sizes, kit.curb.size).width_mm : 0;
  return kit.deck.width_mm - 2 * (edge + curb);
}

/** Curbs lie flat on the deck, flush with its edge or inside an upturned one. */
export function moduleCurbs(kit: Kit, length_mm: number, z_mm: number, sizes: readonly LumberSize[]) {
  if (!kit.curb) return [];
  const { thickness_mm, width_mm } = sectionOf(sizes, kit.curb.size);
  const inner = clearWidth(kit, sizes) / 2;
  const curb = (y: Span): PlacedPiece =>
    place("curb", kit.curb!.size, length_mm, [0, length_mm], y, [z_mm, z_mm + thickness_mm]);
  return [curb([-inner - width_mm, -inner]), curb([inner, inner + width_mm])];
}
