import { defineFormula, type Trace } from "../formula/index.ts";
import { metres, qty } from "../units/index.ts";
import type { LevelRole, WaterLevel } from "./types.ts";

/** Length of one stretch of deck, straight between two heights, that lies below a level. */
export const deckBelow = defineFormula(
  {
    id: "water.deck-below",
    title: "Deck below a water level, one stretch partly under",
    symbol: "l",
    unit: "m",
    text: "L * (z - a) / (b - a)",
    inputs: { L: "m", z: "m", a: "m", b: "m" },
    validity:
      "The deck rises straight from its lower end a to its higher end b over the length L; z lies between them, b above a.",
    source: {
      id: "causey-water",
      title: "Causey's reading of water levels, docs/methods/water.md",
      status: "project",
    },
  },
  ({ L, z, a, b }) => (L * (z - a)) / (b - a),
);

/** One part of the walkway, joint to joint: top of the deck at both ends. */
export interface DeckStretch {
  readonly length_m: number;
  readonly from: { readonly joint: string; readonly deck_m: number };
  readonly to: { readonly joint: string; readonly deck_m: number };
}

/** How much of the deck's top lies below one level. */
export interface DeckUnder {
  readonly level: WaterLevel;
  readonly under_m: number;
  readonly whole_m: number;
  readonly lowest: { readonly joint: string; readonly deck_m: number };
}

/**
 * Length of deck below a level, and where the deck is lowest. A deck at the very level counts as dry.
 *
 * returns null when there is no deck
 * trace   receives one step for each stretch that is partly under
 */
export function deckUnder(
  stretches: readonly DeckStretch[],
  level: WaterLevel,
  trace?: Trace,
): DeckUnder | null {
  const ends = stretches.flatMap((s) => [s.from, s.to]);
  const [first, ...rest] = ends;
  if (first === undefined) return null;
  return {
    level,
    under_m: stretches.reduce((sum, s) => sum + stretchUnder(s, level.z_m, trace), 0),
    whole_m: stretches.reduce((sum, s) => sum + s.length_m, 0),
    lowest: rest.reduce((a, e) => (e.deck_m < a.deck_m ? e : a), first),
  };
}

function stretchUnder({ length_m, from, to }: DeckStretch, z_m: number, trace?: Trace): number {
  const [low, high] = [Math.min(from.deck_m, to.deck_m), Math.max(from.deck_m, to.deck_m)];
  if (high < z_m) return length_m;
  if (low >= z_m) return 0;
  return deckBelow(
    { L: qty(length_m, "m"), z: metres(z_m), a: metres(low), b: metres(high) },
    trace,
    `${from.joint} to ${to.joint}`,
  );
}

/** The level that ordinary high water reaches: the first of these roles that the plan has. */
const COMMON: readonly LevelRole[] = ["mhw", "mhhw", "mhws", "mhwn", "ordinary-high-water", "high-tide-line"];

/**
 * The levels that a deck should stand above: ordinary high water, then the highest predicted tide. A level on another
 * datum than the plan's cannot be held against the deck and is left out (`levelFindings` says so).
 */
export function highLevels(
  levels: readonly WaterLevel[],
  datum: string,
): { readonly common: WaterLevel | null; readonly highest: WaterLevel | null } {
  const mine = levels.filter((l) => l.datum === datum);
  const role = COMMON.find((r) => mine.some((l) => l.role === r));
  return {
    common: mine.find((l) => l.role === role) ?? null,
    highest: mine.find((l) => l.role === "highest-predicted") ?? null,
  };
}
