import type { KnownItem, QuoteRow } from "./quote-types.ts";

/** What is to be known of the rows that are taken, once for each matter, with their lines. */
export function quoteNotes(
  rows: readonly QuoteRow[],
  items: ReadonlyMap<number, string>,
  known: readonly KnownItem[],
): readonly string[] {
  const kinds = new Map(known.map((k) => [k.item, k]));
  const lines = new Map<string, number[]>();
  const note = (words: string, line: number): void => {
    lines.set(words, [...(lines.get(words) ?? []), line]);
  };
  for (const { line, cells, guess } of rows) {
    const item = kinds.get(items.get(line) ?? "");
    if (item === undefined) continue;
    if (!item.is_lumber && cells[0] !== "")
      note("The length is left out: these are priced by the piece", line);
    for (const word of item.is_lumber ? guess.unheeded : [])
      note(`"${word}" makes no difference: a price is kept for a size, whatever else is said of it`, line);
    for (const word of guess.strange) note(`"${word}" is not understood and left unread`, line);
  }
  return [...lines].map(([words, at]) => `${words} (line${at.length > 1 ? "s" : ""} ${listed(at)}).`);
}

const LISTED = 10;
const listed = (lines: readonly number[]): string =>
  lines.length <= LISTED
    ? lines.join(", ")
    : `${lines.slice(0, LISTED).join(", ")} and ${lines.length - LISTED} more`;
