import type { KnownItem, QuoteChoice, QuoteRow } from "@causey/io/prices";

interface Choice {
  readonly value: string;
  readonly words: string;
}

/** What a row can be taken for: nothing, a known item, or a new one of its own words. */
export function itemChoices(row: QuoteRow, known: readonly KnownItem[]): readonly Choice[] {
  const isNew = row.words !== "" && !known.some((k) => k.item === row.words);
  return [
    { value: "", words: "leave out" },
    ...known.map(({ item, names }) => ({ value: item, words: wordsOf(item, names) })),
    ...(isNew ? [{ value: row.words, words: `a new item: ${row.words}` }] : []),
  ];
}

const wordsOf = (item: string, names: readonly string[]): string =>
  item.length > 6 && names[0] !== undefined && names[0] !== item ? `${item} (${names[0]})` : item;

/** Line, length, price and day of a row, and what its words may mean. */
export function rowWords({ line, cells, guess }: QuoteRow, { length_unit, currency }: QuoteChoice): string {
  const [length = "", price = "", day = ""] = cells;
  const withUnit = (cell: string, unit: string): string =>
    /[\d.,]$/.test(cell) ? `${cell} ${unit}`.trim() : cell;
  const parts = [`line ${line}`, withUnit(length, length_unit ?? ""), withUnit(price, currency), day];
  const doubt =
    guess.perhaps === null
      ? []
      : [`perhaps ${guess.perhaps}, but not understood: ${guess.strange.map((w) => `"${w}"`).join(", ")}`];
  return [...parts.filter((part) => part !== ""), ...doubt].join(" · ");
}
