import type { VectorLayer } from "@causey/io/layers";
import { UsageError } from "../shell/index.ts";

/** The layer that is meant: the one named, or the only one that holds anything. Throws `UsageError` with all names. */
export function chooseLayer(layers: readonly VectorLayer[], name: string | undefined): VectorLayer {
  const full = layers.filter((l) => l.features.length > 0);
  const names = full.map((l) => `"${l.name}" (${l.features.length})`).join(", ");
  if (name === undefined) {
    if (full.length === 1) return full[0]!;
    throw new UsageError(
      full.length === 0
        ? "The file holds no feature with a shape."
        : `The file holds several layers: ${names}. Say which with --layer NAME.`,
    );
  }
  const chosen = layers.find((l) => l.name === name);
  if (!chosen) throw new UsageError(`There is no layer "${name}" in the file. There are ${names}.`);
  return chosen;
}
