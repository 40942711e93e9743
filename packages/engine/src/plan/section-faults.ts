import type { Problem } from "../formula/index.ts";
import type { Plan } from "./document.ts";
import { editProblem, unknownIdFault } from "./edit-problem.ts";
import type { SectionEdit } from "./edit.ts";
import { visitFaults } from "./visit-faults.ts";

/** Sections whose items carry an id of their own. */
const listed = ["starts", "plots", "zones", "levels", "visits"] as const;

/** What stands against replacing a section: doubled ids, and references that would point at nothing. */
export function sectionFaults(plan: Plan, edit: SectionEdit): Problem[] {
  const after = { ...plan, [edit.section]: edit.value } as Plan;
  const twins = listed
    .filter((section) => section === edit.section)
    .flatMap((section) => twinFaults(section, after[section]));
  return [...twins, ...referenceFaults(after, edit.section)];
}

function twinFaults(section: string, items: readonly { readonly id: string }[]): Problem[] {
  const ids = items.map((item) => item.id);
  return ids.flatMap((id, i) =>
    ids.indexOf(id) === i
      ? []
      : [editProblem(`${section}[${i}].id`, id, "stands twice", "Give each its own id.")],
  );
}

function referenceFaults(after: Plan, section: SectionEdit["section"]): Problem[] {
  if (section === "visits")
    return after.visits.flatMap((visit, i) =>
      visitFaults(after, visit).map((p) => ({ ...p, place: p.place.replace(/^visit/, `visits[${i}]`) })),
    );
  if (section === "plots")
    return after.visits.flatMap((visit, i) =>
      visit.plots.flatMap((id, n) => unknownIdFault("plot", id, after.plots, `visits[${i}].plots[${n}]`)),
    );
  if (section === "levels" || section === "flood_level")
    return after.flood_level === null
      ? []
      : unknownIdFault("level", after.flood_level, after.levels, "flood_level");
  return [];
}
