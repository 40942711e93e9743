import type { LevelRole, JointWetness, WetShare } from "@causey/engine/water";
import { levelText, shower } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";

/** The water's levels, and what they mean for who walks: hours under water of ground and deck, deck below high water. */
export function waterBlocks(context: PaperContext): Block[] {
  const levels = [...levelLines(context), ...deckLines(context)].join(" ");
  return [
    { kind: "space", height: 1.5 },
    ...[levels, ...wetLines(context)].map((text): Block => ({ kind: "text", text })),
  ];
}

/** The levels in one paragraph, with what each mean is, for readers who do not live with tides. */
function levelLines({ plan }: PaperContext): string[] {
  if (plan.levels.length === 0) return ["Water levels: none given."];
  const levels = plan.levels.map((l) => `${levelName(l.name, l.role)} ${levelText(l.z_m, plan)}`);
  const datums = [...new Set(plan.levels.map((l) => l.datum))].join(", ");
  return [`Water levels on ${datums}: ${levels.join("; ")}.`];
}

/** The wettest ground and the wettest deck of the line by the record; without one, that it cannot be told. */
function wetLines({ results: { water } }: PaperContext): string[] {
  const { record, joints } = water;
  if (record === null)
    return water.cautions.length > 0
      ? [...water.cautions]
      : ["Hours under water cannot be told: no record and no tide table is given."];
  const ground = wettest(joints, "ground");
  const deck = wettest(joints, "deck");
  if (ground === null || deck === null) return [];
  const basis = record.basis === "predicted" ? "predicted levels, no wind," : `${record.basis} levels`;
  const years = ground.ground.hours_per_year === null ? " The record does not cover a year." : "";
  return [
    `Under water by the ${basis} of ${record.from.slice(0, 10)} to ${record.to.slice(0, 10)}: the wettest ground of the line, at joint ${ground.joint}, ${wetWords(ground.ground)}; the wettest deck, ${deck.deck.share > 0 ? `at joint ${deck.joint}, ${wetWords(deck.deck)}` : "never"}.${years}`,
  ];
}

const wettest = (joints: readonly JointWetness[], what: "ground" | "deck"): JointWetness | null =>
  joints.reduce<JointWetness | null>(
    (most, j) => (most === null || j[what].share > most[what].share ? j : most),
    null,
  );

/** "12.5 % of the time (9.0 % to 15.1 %), about 1,096 hours a year"; without the band or the year where not known. */
function wetWords({ share, low, high, hours_per_year }: WetShare): string {
  const band = low === null || high === null ? "" : ` (${percent(low)} to ${percent(high)})`;
  const hours =
    hours_per_year === null
      ? ""
      : `, about ${Math.round(hours_per_year).toLocaleString("en-US")} hours a year`;
  return `${percent(share)} of the time${band}${hours}`;
}

/** A share above nothing never reads as nothing. */
const percent = (share: number): string =>
  share > 0 && share < 0.001 ? "under 0.1 %" : `${(share * 100).toFixed(1)} %`;

const DECK_FIGURES = ["deck-under-high-water", "deck-under-highest-tide"];

/** How much of the deck lies below the high levels, where they are known. */
function deckLines({ plan, results }: PaperContext): string[] {
  const show = shower(plan);
  const told = results.figures
    .filter((f) => DECK_FIGURES.includes(f.id))
    .map((f) => `${f.title}: ${f.value > 0 ? show(f.value, "m") : "none of it"}`);
  return told.length > 0 ? [`${told.join("; ")}.`] : [];
}

/** What the means of a tide are. */
const ROLES: Partial<Record<LevelRole, string>> = {
  mhw: "the mean of all high tides",
  mhhw: "the mean of each day's higher high tide",
  mhws: "the mean of spring high tides",
  mlw: "the mean of all low tides",
  mllw: "the mean of each day's lower low tide",
};

const levelName = (name: string, role: LevelRole): string => {
  const words = ROLES[role];
  return words === undefined ? name : `${name} (${words})`;
};
