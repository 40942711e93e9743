import type { Problem } from "@causey/engine/formula";

interface Named {
  readonly id: string;
  readonly name: string;
}

/**
 * What a file brings, with a number behind each name that is taken: by something in the plan that stays, or by an
 * earlier one of the file. A crew goes by the names, so none may stand twice; each change is a warning.
 *
 * there  what the plan holds; those whose id comes again are replaced, so their names are free
 * noun   what one of them is; file: for messages
 */
export function withFreeNames<T extends Named>(
  come: readonly T[],
  there: readonly Named[],
  noun: string,
  file: string,
): { readonly items: readonly T[]; readonly notes: readonly Problem[] } {
  const ids = new Set(come.map((item) => item.id));
  const taken = new Set(there.filter((item) => !ids.has(item.id)).map((item) => item.name.trim()));
  // Names that are free as they stand are kept, whatever number another one needs.
  const own = new Set(come.map((item) => item.name.trim()));
  const notes: Problem[] = [];
  const items = come.map((item) => {
    const name = item.name.trim();
    const next = taken.has(name) ? numbered(name, (word) => taken.has(word) || own.has(word)) : name;
    taken.add(next);
    if (next === name) return item;
    notes.push({
      code: "layer-name",
      severity: "warning",
      file,
      place: `id "${item.id}"`,
      value: name,
      message: `Another ${noun} is called "${name}" already, so this one is called "${next}".`,
      mend: "Give each a name of its own afterwards, or choose another field of the names.",
    });
    return { ...item, name: next };
  });
  return { items, notes };
}

function numbered(name: string, isTaken: (word: string) => boolean): string {
  for (let n = 2; ; n++) if (!isTaken(`${name} (${n})`)) return `${name} (${n})`;
}
