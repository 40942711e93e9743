import type { Results } from "@causey/engine/plan";
import type { Zone } from "@causey/engine/site";

/** What stands in a text where the name of a hidden zone stood. */
export const WITHHELD = "a withheld area";

/** Keys whose text is written for people and may name a zone. */
const FREE_TEXT = new Set([
  "because",
  "carries",
  "caution",
  "cautions",
  "change",
  "governs",
  "mend",
  "message",
  "missing",
  "note",
  "notes",
  "reason",
  "source",
  "text",
  "title",
]);

/**
 * The results without any trace of hidden zones (rare species, archaeology): their rows are dropped, gaps over them
 * lose their place, marks of rules broken there are left out, and their names and ids in texts give way to "a withheld
 * area". All sums stay as they are.
 */
export function withoutHidden(results: Results, zones: readonly Zone[]): Results {
  const hidden = zones.filter((z) => z.hidden);
  if (hidden.length === 0) return results;
  const isHidden = (id: string): boolean => hidden.some((z) => z.id === id || z.name === id);
  const clean = (text: string): string => withhold(text, hidden);
  const { layout, evaluation, route, survey } = results;
  const cleared: Results = {
    ...results,
    layout: {
      ...layout,
      parts: layout.parts.map((p) => ({ ...p, bridges: p.bridges.filter((id) => !isHidden(id)) })),
      unreached: layout.unreached.map((u) => ({
        ...u,
        gap: u.gap !== null && clean(u.gap.over) !== u.gap.over ? null : u.gap,
      })),
      line: layout.line && {
        ...layout.line,
        broken: layout.line.broken.filter((b) => clean(b.message) === b.message),
      },
    },
    evaluation: {
      ...evaluation,
      shaded_by_zone: evaluation.shaded_by_zone.filter((row) => !isHidden(row.zone)),
      crossings: evaluation.crossings.filter((row) => !isHidden(row.zone)),
    },
    route: {
      ...route,
      parcels: route.parcels.filter((row) => !isHidden(row.zone)),
      crossings: route.crossings.filter((row) => !isHidden(row.zone)),
      sensitive: route.sensitive.filter((row) => !isHidden(row.zone)),
    },
    survey: {
      ...survey,
      unchecked_habitats: survey.unchecked_habitats.filter((row) => !isHidden(row.zone)),
    },
  };
  return cleanTexts(cleared, clean, false) as Results;
}

/** Names give way with their endings ("Fen orchids"); ids only as whole words, so that "a1" does not spoil "a12". */
function withhold(text: string, hidden: readonly Zone[]): string {
  const names = hidden.map((z) => z.name).sort((a, b) => b.length - a.length);
  const withoutNames = names.reduce((t, name) => t.replaceAll(pattern(name, "\\p{L}*"), WITHHELD), text);
  return hidden.reduce((t, z) => t.replaceAll(pattern(z.id, ""), WITHHELD), withoutNames);
}

const pattern = (words: string, ending: string): RegExp => {
  const literal = words.replaceAll(/[.*+?^${}()|[\]\\/]/g, "\\$&");
  return new RegExp(`(?<![\\p{L}\\p{N}_-])${literal}${ending}(?![\\p{L}\\p{N}_-])`, "giu");
};

function cleanTexts(value: unknown, clean: (text: string) => string, isFree: boolean): unknown {
  if (typeof value === "string") return isFree ? clean(value) : value;
  if (Array.isArray(value)) return value.map((v) => cleanTexts(v, clean, isFree));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, v]) => [key, cleanTexts(v, clean, FREE_TEXT.has(key))]),
  );
}
