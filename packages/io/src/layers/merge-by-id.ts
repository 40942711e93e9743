interface Item {
  readonly id: string;
}

/**
 * What comes in, added to what stands: each item of a known id takes the place of the one that stands, the others
 * follow in their order. `known` are the incoming items whose id stands already; whether they may replace is for the
 * user to say.
 */
export function mergeById<T extends Item>(
  standing: readonly T[],
  incoming: readonly T[],
): { readonly merged: readonly T[]; readonly known: readonly T[] } {
  const ids = new Set(standing.map((item) => item.id));
  const coming = new Map(incoming.map((item) => [item.id, item]));
  return {
    merged: [
      ...standing.map((item) => coming.get(item.id) ?? item),
      ...incoming.filter((i) => !ids.has(i.id)),
    ],
    known: incoming.filter((item) => ids.has(item.id)),
  };
}
