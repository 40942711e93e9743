import type { Problem } from "../formula/index.ts";
import type { Plan, Visit } from "./document.ts";
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
  return [...twins, ...referenceFaults(plan, after, edit.section)];
}

function twinFaults(section: string, items: readonly { readonly id: string }[]): Problem[] {
  const ids = items.map((item) => item.id);
  return ids.flatMap((id, i) =>
    ids.indexOf(id) === i
      ? []
      : [editProblem(`${section}[${i}].id`, id, "stands twice", "Give each its own id.")],
  );
}

function referenceFaults(before: Plan, after: Plan, section: SectionEdit["section"]): Problem[] {
  if (section === "visits")
    return after.visits.flatMap((visit, i) =>
      visitFaults(after, visit).map((p) => ({ ...p, place: p.place.replace(/^visit/, `visits[${i}]`) })),
    );
  if (section === "plots")
    return after.visits.flatMap((visit, i) =>
      visit.plots.flatMap((id, n) => goneFault(before, after, visit, id, `visits[${i}].plots[${n}]`)),
    );
  if (section === "levels" || section === "flood_level")
    return after.flood_level === null
      ? []
      : unknownIdFault("level", after.flood_level, after.levels, "flood_level");
  return [];
}

/** A visit that would lead to a plot that is taken away, said in the plan's own names. */
function goneFault(before: Plan, after: Plan, visit: Visit, id: string, place: string): Problem[] {
  const plot = before.plots.find((p) => p.id === id);
  if (plot === undefined || after.plots.some((p) => p.id === id))
    return unknownIdFault("plot", id, after.plots, place);
  return [
    editProblem(
      place,
      plot.name,
      `the visit "${visit.name}" still goes to "${plot.name}"`,
      "Untick it on the page Request first, then take the plot away.",
    ),
  ];
}
