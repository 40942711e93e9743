import type { Problem } from "@causey/engine/formula";
import type { Plan, SectionEdit } from "@causey/engine/plan";
import { withoutPlaceholder } from "@causey/io/fresh";
import { mergeById } from "@causey/io/layers";
import { itemsOf, layerTargets, type LayerTarget } from "./layer-kinds.ts";
import { withFreeNames } from "./unique-names.ts";

interface Item {
  readonly id: string;
  readonly name: string;
}

export interface Merged {
  /** How many of the new ones have an id that the plan's list has already. */
  readonly known: number;
  readonly problems: readonly Problem[];
  readonly edit: SectionEdit;
}

/**
 * The plan's list with what a file brings: those of an id that is there take its place when `replace` is chosen and
 * are a problem otherwise, the new ones stand behind. Nothing that is there is ever doubled or taken away,
 * but for a start that only stood in for a real one. Starts and plots whose name is taken get a number behind it, and
 * a warning.
 *
 * file  for messages
 */
export function mergeItems(
  target: LayerTarget,
  read: readonly Item[],
  replace: boolean,
  plan: Plan,
  file: string,
): Merged {
  const listed = itemsOf(plan, target);
  const there = target === "starts" && read.length > 0 ? withoutPlaceholder(listed) : listed;
  const { noun } = layerTargets[target];
  const old = new Map(there.map((item) => [item.id, item]));
  const free = target === "zones" ? { items: read, notes: [] } : withFreeNames(read, there, noun, file);
  const come = free.items;
  const { merged: value, known } = mergeById(there, come);
  const clashes = known.map((item) =>
    problem(
      file,
      item,
      `The plan already has the ${noun} "${old.get(item.id)!.name}" with the id "${item.id}".`,
      `Choose to replace it, or take the ids from another field.`,
    ),
  );
  return {
    known: known.length,
    problems: [
      ...(replace ? [] : clashes),
      ...(target === "zones" ? sameNames(come, there, file) : acrossIds(target, come, plan, file)),
      ...free.notes,
    ],
    edit: { type: "set-section", section: target, value } as unknown as SectionEdit,
  };
}

/** Areas may share a name, but it may as well be one area under two ids: a warning. */
const sameNames = (come: readonly Item[], there: readonly Item[], file: string): readonly Problem[] =>
  come.flatMap((item) => {
    const twin = there.find((other) => other.id !== item.id && other.name.trim() === item.name.trim());
    if (twin === undefined) return [];
    const message = `The plan already has an area called "${item.name}", with the id "${twin.id}".`;
    const mend = "If the two are one area, take the ids from another field, and replace it.";
    return [{ ...problem(file, item, message, mend), severity: "warning" }];
  });

/** Starts and plots share their ids: none may stand for one of each. */
function acrossIds(
  target: "starts" | "plots",
  come: readonly Item[],
  plan: Plan,
  file: string,
): readonly Problem[] {
  const [other, otherNoun] =
    target === "starts" ? (["plots", "plot"] as const) : (["starts", "start"] as const);
  return come
    .filter((item) => plan[other].some((place) => place.id === item.id))
    .map((item) =>
      problem(
        file,
        item,
        `The id "${item.id}" belongs to a ${otherNoun} of the plan.`,
        "Give it another id, or take the ids from another field.",
      ),
    );
}

const problem = (file: string, { id, name }: Item, message: string, mend: string): Problem => ({
  code: "layer-clash",
  severity: "error",
  file,
  place: `id "${id}"`,
  value: name,
  message,
  mend,
});
