import { closedDecks } from "./closed-decks.ts";
import type { DeckChoice } from "./deck-choice.ts";
import { gratings } from "./gratings.ts";

export { deckOf, type DeckChoice } from "./deck-choice.ts";

/** Decks that the Kit page offers: generic, no brand; each says where its numbers come from. */
export const deckChoices: readonly DeckChoice[] = [...closedDecks, ...gratings];

/** The deck with this id; undefined when there is none. */
export const deckChoice = (id: string): DeckChoice | undefined => deckChoices.find((d) => d.id === id);
