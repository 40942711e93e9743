/** A column that is looked for in a file. */
export interface WantedHead<K extends string = string> {
  readonly key: K;
  /** Heads that name it, in lower case; the first that a file has is taken. */
  readonly heads: readonly string[];
}

/**
 * The head that each wanted column goes by, by its key; null for a column that no head names. No head is taken twice:
 * the earlier of the wanted columns has it.
 */
export function guessHeads<K extends string>(
  wanted: readonly WantedHead<K>[],
  heads: readonly string[],
): Readonly<Record<K, string | null>> {
  const taken = new Set<string>();
  const found = wanted.map(({ key, heads: known }) => {
    const head = known.find((name) => heads.includes(name) && !taken.has(name)) ?? null;
    if (head !== null) taken.add(head);
    return [key, head] as const;
  });
  return Object.fromEntries(found) as Record<K, string | null>;
}
