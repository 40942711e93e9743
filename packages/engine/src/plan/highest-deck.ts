import { defineFormula, type Trace } from "../formula/index.ts";
import type { Joint } from "../layout/index.ts";
import { metres } from "../units/index.ts";
import type { Figure } from "./results.ts";

/** Top of the deck over the ground at one joint. */
export const deckOverGround = defineFormula(
  {
    id: "layout.deck-over-ground",
    title: "Top of the deck over the ground at a joint",
    symbol: "h",
    unit: "m",
    text: "d - g",
    inputs: { d: "m", g: "m" },
    validity: "Deck and ground on one datum.",
    source: {
      id: "causey-layout",
      title: "Causey's layout, docs/methods/layout-search.md",
      status: "project",
    },
  },
  ({ d, g }) => d - g,
);

export interface HighestDeck {
  /** Id of the joint. */
  readonly joint: string;
  readonly height_m: number;
}

type Place = Pick<Joint, "id" | "ground_m" | "deck_m">;

/**
 * Where people stand highest over the ground: the joint with the most from ground to top of the deck, the first of
 * several alike. Read at the joints alone: over a channel between two of them the ground may lie deeper.
 *
 * returns null when there is no joint
 * trace   receives the step of that joint
 */
export function highestDeck(joints: readonly Place[], trace?: Trace): HighestDeck | null {
  const [first, ...rest] = joints;
  if (first === undefined) return null;
  const height = (j: Place): number => j.deck_m - j.ground_m;
  const most = rest.reduce((a, j) => (height(j) > height(a) ? j : a), first);
  const height_m = deckOverGround({ d: metres(most.deck_m), g: metres(most.ground_m) }, trace, most.id);
  return { joint: most.id, height_m };
}

/** The figure of it; none without a walkway. */
export function highestDeckFigure(joints: readonly Place[]): Figure[] {
  const working: Trace = [];
  const found = highestDeck(joints, working);
  if (found === null) return [];
  return [
    {
      id: "highest-deck",
      title: "Greatest height of the deck over ground",
      value: found.height_m,
      unit: "m",
      note: `At joint ${found.joint}. Read at the joints: over a channel between two of them the ground may lie deeper.`,
      working,
      sources: [deckOverGround.spec.source],
    },
  ];
}
