import { place, type PlacedPiece, type Span } from "./piece.ts";
import type { Deck, PanelDeck } from "./types.ts";

/** Deck kinds that come as panels and carry along the walk from cross piece to cross piece. */
export const PANEL_KINDS = ["moulded-grating", "bar-grating", "plywood", "plastic-panel"] as const;

export const isPanelDeck = (deck: Deck): deck is PanelDeck => PANEL_KINDS.some((kind) => kind === deck.kind);

/** A sheet of a deck as bought: mesh or panel. */
export interface Sheet {
  readonly length_mm: number;
  readonly width_mm: number;
  /** Left open between two neighbours. */
  readonly gap_mm: number;
}

/** Sheets end to end over a length, each trimmed alike. */
export interface SheetRun {
  readonly count: number;
  /** Length of one as laid [mm]. */
  readonly length_mm: number;
}

/**
 * Whole sheets that cover a length with their gaps, each trimmed alike; a sheet is never stretched.
 *
 * length_mm  length to cover, > 0  [mm]
 */
export function sheetRun(sheet: Omit<Sheet, "width_mm">, length_mm: number): SheetRun {
  const { gap_mm: gap } = sheet;
  const count = Math.max(1, Math.ceil((length_mm + gap) / (sheet.length_mm + gap) - 1e-6));
  return { count, length_mm: (length_mm - (count - 1) * gap) / count };
}

/** Where the k-th sheet of a run lies along the part [mm]. */
export const sheetSpan = (run: SheetRun, gap_mm: number, k: number): Span => {
  const x0 = k * (run.length_mm + gap_mm);
  return [x0, x0 + run.length_mm];
};

export const panelSheet = (deck: PanelDeck): Sheet => ({
  length_mm: deck.panel_length_mm,
  width_mm: deck.width_mm,
  gap_mm: deck.gap_mm,
});

/** Item id under which the price list sells a kit's panels: kind, then length by width by thickness in whole millimetres. */
export const panelItem = (deck: PanelDeck): string =>
  `${deck.kind} ${Math.round(deck.panel_length_mm)}x${Math.round(deck.width_mm)}x${Math.round(deck.thickness_mm)}`;

/** Panels of a module, end to end, one panel wide. */
export function deckPanels(deck: PanelDeck, length_mm: number, z_mm: number): PlacedPiece[] {
  const run = sheetRun(panelSheet(deck), length_mm);
  const half = deck.width_mm / 2;
  return Array.from({ length: run.count }, (_, k) =>
    place(
      "deck panel",
      null,
      run.length_mm,
      sheetSpan(run, deck.gap_mm, k),
      [-half, half],
      [z_mm, z_mm + deck.thickness_mm],
    ),
  );
}
