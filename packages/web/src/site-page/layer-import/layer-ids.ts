import { idFromName, type VectorFeature } from "@causey/io/layers";

export { idFromName };

/**
 * Features with ids made of their names, so that the same file brought in once more meets its own areas again. Equal
 * names get a number behind them; a feature without a name gets its place in the layer.
 */
export function withIdsFromNames(
  features: readonly VectorFeature[],
  nameField: string,
  noun: string,
): readonly VectorFeature[] {
  const taken = new Set<string>();
  return features.map((feature, i) => {
    const name = feature.properties[nameField];
    const word = typeof name === "string" || typeof name === "number" ? idFromName(String(name)) : "";
    const id = free(taken, word === "" ? `${noun}-${i + 1}` : word);
    taken.add(id);
    return { ...feature, id };
  });
}

function free(taken: ReadonlySet<string>, word: string): string {
  if (!taken.has(word)) return word;
  for (let n = 2; ; n++) if (!taken.has(`${word}-${n}`)) return `${word}-${n}`;
}
