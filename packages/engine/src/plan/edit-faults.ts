import type { Problem } from "../formula/index.ts";
import type { LayoutChoice, Plan, Weights } from "./document.ts";
import { editProblem, unknownIdFault } from "./edit-problem.ts";
import type { Edit } from "./edit.ts";
import { isFinite, isNotNegative, isPositive, numberFaults } from "./number-faults.ts";
import { sectionFaults } from "./section-faults.ts";
import { visitFaults } from "./visit-faults.ts";
import { zoneFaults } from "./zone-faults.ts";

/** Everything that stands against an edit of this plan, all at once; empty when it can be applied. */
export function editFaults(plan: Plan, edit: Edit): Problem[] {
  switch (edit.type) {
    case "move-plot":
      return [...unknownIdFault("plot", edit.plot, plan.plots), ...placeFaults(edit)];
    case "move-start":
      return [...unknownIdFault("start", edit.start, plan.starts), ...placeFaults(edit)];
    case "set-plot-reach":
      return [...unknownIdFault("plot", edit.plot, plan.plots), ...reachFaults(edit)];
    case "add-zone":
      return zoneFaults(plan, edit);
    case "remove-zone":
      return unknownIdFault("zone", edit.zone, plan.zones);
    case "set-weights":
      return weightFaults(edit.weights, "weights.");
    case "set-layout":
      return layoutFaults(edit.layout);
    case "set-visit":
      return visitFaults(plan, edit.visit);
    case "set-kit":
    case "set-units":
      return [];
    case "rename":
      return edit.name.trim() === ""
        ? [editProblem("name", edit.name, "the name is empty", "Give the plan a name.")]
        : [];
    case "set-price-list":
      return [
        ...(edit.file.trim() === ""
          ? [editProblem("file", edit.file, "the price list has no name", "Name its file.")]
          : []),
        ...(/^[A-Z]{3}$/.test(edit.currency)
          ? []
          : [
              editProblem(
                "currency",
                edit.currency,
                "this is not the code of a currency",
                "Give three capital letters, such as USD.",
              ),
            ]),
      ];
    case "set-section":
      return sectionFaults(plan, edit);
    default:
      return unknownEdit(edit);
  }
}

/** Easting and northing of a moved plot or start [m]: any finite number. */
const placeFaults = (place: { readonly x: number; readonly y: number }): Problem[] =>
  numberFaults("", place, { x: isFinite, y: isFinite });

/** Keep-off distance and reach beyond it [m]. */
const reachFaults = (reach: { readonly keep_off_m: number; readonly reach_m: number }): Problem[] =>
  numberFaults("", reach, { keep_off_m: isNotNegative, reach_m: isPositive });

const weightFaults = (weights: Weights, prefix: string): Problem[] =>
  numberFaults(prefix, weights, {
    money: isNotNegative,
    shade_per_m2: isNotNegative,
    contact_per_m2: isNotNegative,
    crossing: isNotNegative,
  });

const layoutFaults = (layout: LayoutChoice): Problem[] => [
  ...weightFaults(layout.weights, "layout.weights."),
  ...numberFaults("layout.", layout, {
    heading_step_deg: { above: 0, most: 90 },
    first_heading_deg: isFinite,
    max_grade: isPositive,
    min_clear_mm: isNotNegative,
    slop_mm: isNotNegative,
  }),
  ...(layout.passing_every_m === null
    ? []
    : numberFaults("layout.", layout, { passing_every_m: isPositive })),
];

/** Reached only by data that was never checked against the union, such as a file from a newer version. */
function unknownEdit(edit: never): Problem[] {
  const { type } = edit as { readonly type?: unknown };
  return [editProblem("type", type, "this kind of edit is not known", "Use a version that knows it.")];
}
