import type { Price, Tables, TakeOff } from "@causey/engine/materials";
import type { KnownItem } from "./quote-types.ts";

/**
 * Everything that a price can be kept for: the tables' lumber sizes and fasteners, what the price list names already,
 * and what the order counts. Lumber first, each item once.
 *
 * off  null while nothing is worked out yet
 */
export function knownItems(
  { sizes, fasteners }: Pick<Tables, "sizes" | "fasteners">,
  prices: readonly Price[],
  off: TakeOff | null,
): readonly KnownItem[] {
  const names = new Map<string, Set<string>>();
  const name = (item: string, ...words: readonly string[]): void => {
    const known = names.get(item) ?? new Set();
    for (const word of words) known.add(word);
    names.set(item, known);
  };
  const lumber = new Set(sizes.map((s) => s.id));
  for (const { id } of sizes) name(id);
  for (const line of off?.counted ?? []) name(line.item, line.name);
  for (const price of prices) name(price.item, price.description);
  for (const fastener of fasteners) name(fastener.id, fastener.name);
  const priced = new Set(prices.filter((p) => p.length_mm !== null).map((p) => p.item));
  return [...names].map(([item, words]) => ({
    item,
    names: [...words],
    is_lumber: lumber.has(item) || priced.has(item),
  }));
}
