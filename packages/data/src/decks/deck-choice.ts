import type { BoardDeck, MeshDeck, PanelDeck } from "@causey/engine/kit";

/** What a kit says of its own deck, not of the product. */
type OwnWidth = "width_mm";

/** A deck as the trade sells it, without a maker: the Kit page fills a recipe with it and leaves the width to the kit. */
export interface DeckChoice {
  readonly id: string;
  readonly name: string;
  /** What to know before choosing it, and where its numbers come from. */
  readonly note: string;
  /** Of the row as a whole: the weakest of its values. */
  readonly status: "seen" | "memory" | "practice" | "computed";
  readonly deck: Omit<BoardDeck, OwnWidth> | Omit<MeshDeck, OwnWidth> | Omit<PanelDeck, OwnWidth>;
}

/** The deck of a kit of this width. */
export const deckOf = ({ deck }: DeckChoice, width_mm: number): BoardDeck | MeshDeck | PanelDeck => ({
  ...deck,
  width_mm,
});
