import type { Source, Trace } from "../formula/index.ts";
import type { Layout } from "../layout/index.ts";
import { showQuantity, type UnitSystem } from "../units/index.ts";
import { deckUnder, highLevels, type DeckStretch, type DeckUnder, type WaterLevel } from "../water/index.ts";
import type { Figure } from "./results.ts";
import { sumStep, type Term } from "./sum-step.ts";

export interface DeckLevelsInput {
  readonly layout: Layout;
  readonly gap_m: number;
  readonly levels: readonly WaterLevel[];
  readonly datum: string;
  readonly units: UnitSystem;
  /** Whether the request accepts wet feet; null or left out = not asked yet. */
  readonly wet_feet_ok?: boolean | null;
}

const levelsSource: Source = { id: "plan-levels", title: "The plan's water levels", status: "project" };

/** Every part from joint to joint, half a gap at either end with it; a platform straight on. */
function stretchesOf({ layout, gap_m }: DeckLevelsInput): DeckStretch[] {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const end = (id: string): DeckStretch["from"] => ({ joint: id, deck_m: joints.get(id)!.deck_m });
  return layout.parts.map((part) => ({
    length_m: (part.kind === "module" ? part.length_m : part.side_m) + gap_m,
    from: end(part.from),
    to: end(part.kind === "module" ? part.to : part.exits.ahead),
  }));
}

/** Length of deck below ordinary high water and below the highest predicted tide, each with its working. */
export function deckLevelFigures(input: DeckLevelsInput): Figure[] {
  const { common, highest } = highLevels(input.levels, input.datum);
  const stretches = stretchesOf(input);
  return [
    ...(common ? deckFigure("deck-under-high-water", common, stretches) : []),
    ...(highest ? deckFigure("deck-under-highest-tide", highest, stretches) : []),
  ];
}

function deckFigure(id: string, level: WaterLevel, stretches: readonly DeckStretch[]): Figure[] {
  const working: Trace = [];
  const under = deckUnder(stretches, level, working);
  if (under === null) return [];
  const sum = sumStep(
    {
      id: "water.deck-under",
      title: `Deck below ${level.name}`,
      symbol: "U",
      unit: "m",
      source: levelsSource,
    },
    [...wholeTerms(stretches, level), ...working.map(partTerm)],
  );
  return [
    {
      id,
      title: `Deck below ${level.name}`,
      value: under.under_m,
      unit: "m",
      note: `Lowest deck ${under.lowest.deck_m.toFixed(2)} m at joint ${under.lowest.joint}; ${level.name} ${level.z_m.toFixed(2)} m. The deck between joints is taken as straight.`,
      working: [...working, sum],
      sources: [levelsSource],
    },
  ];
}

/** Stretches that lie below the level from end to end, counted by their length. */
function wholeTerms(stretches: readonly DeckStretch[], level: WaterLevel): Term[] {
  const counts = new Map<number, number>();
  for (const { length_m, from, to } of stretches)
    if (Math.max(from.deck_m, to.deck_m) < level.z_m) counts.set(length_m, (counts.get(length_m) ?? 0) + 1);
  return [...counts].map(([value, count], n) => ({
    symbol: `p${n + 1}`,
    title: "pitch of a part wholly below",
    count,
    value,
    unit: "m",
  }));
}

const partTerm = (step: Trace[number], n: number): Term => ({
  symbol: `l${n + 1}`,
  title: `part ${step.note ?? ""} partly below`,
  count: 1,
  value: step.value,
  unit: "m",
});

/** What the owner must hear about deck and high water; nothing when all of it stands above both levels. */
export function deckLevelCautions(input: DeckLevelsInput): string[] {
  const { common, highest } = highLevels(input.levels, input.datum);
  const stretches = stretchesOf(input);
  if (stretches.length === 0) return [];
  const below = (level: WaterLevel | null): DeckUnder | null => {
    const under = level === null ? null : deckUnder(stretches, level);
    return under !== null && under.under_m > 0 ? under : null;
  };
  const [ordinary, top] = [below(common), below(highest)];
  return [
    ...(common === null
      ? [
          `No mean or ordinary high water is given on "${input.datum}": whether the deck lies under water at ordinary high tides cannot be told.`,
        ]
      : []),
    ...(ordinary ? [`${underWords(ordinary, input.units)} ${wadingWords(ordinary, input)}`] : []),
    ...(top ? [underWords(top, input.units)] : []),
  ];
}

/** What follows for the people on it, and what a deeper gap under every module can and cannot do about it. */
function wadingWords({ level, lowest }: DeckUnder, { units, wet_feet_ok }: DeckLevelsInput): string {
  const asked = wet_feet_ok === false ? "The request does not accept wet feet, yet people" : "People";
  const short = showQuantity(level.z_m - lowest.deck_m, "m", units);
  return `${asked} would walk in water there at "${level.name}": at the lowest place the deck is ${short} short. Move the line, or use taller supports; more room under the modules (Layout, Lists) lifts every joint and may lead the line elsewhere, so look at the whole of it again.`;
}

function underWords({ level, under_m, whole_m, lowest }: DeckUnder, units: UnitSystem): string {
  const say = (m: number): string => showQuantity(m, "m", units);
  const what =
    under_m >= whole_m - 1e-6
      ? `The whole deck, ${say(whole_m)}, lies`
      : `${say(under_m)} of the deck's ${say(whole_m)} lie`;
  return `${what} below "${level.name}" (${say(level.z_m)}): the lowest deck is at ${say(lowest.deck_m)}, at joint ${lowest.joint}.`;
}
