import type { Problem } from "../formula/index.ts";
import type { Cart, Plan, Visit } from "./document.ts";
import { editProblem, unknownIdFault } from "./edit-problem.ts";
import { isNotNegative, isPositive, numberFaults } from "./number-faults.ts";

/** What stands against a visit that replaces the one of the same id. */
export const visitFaults = (plan: Plan, visit: Visit): Problem[] => [
  ...unknownIdFault("visit", visit.id, plan.visits, "visit.id"),
  ...(visit.plots.length === 0
    ? [editProblem("visit.plots", "", "the visit goes to no plot", "Name at least one plot.")]
    : []),
  ...visit.plots.flatMap((id, i) => unknownIdFault("plot", id, plan.plots, `visit.plots[${i}]`)),
  ...numberFaults("visit.", visit, {
    people: { least: 1, whole: true },
    person_kg: isPositive,
    spacing_mm: isPositive,
    per_year: isPositive,
  }),
  ...(visit.cart ? cartFaults(visit.cart) : []),
  ...dateFaults(visit),
];

const cartFaults = (cart: Cart): Problem[] =>
  numberFaults("visit.cart.", cart, {
    empty_kg: isNotNegative,
    load_kg: isNotNegative,
    wet_kg: isNotNegative,
    ...(cart.width_mm === null ? {} : { width_mm: isPositive }),
    ...(cart.length_mm === null ? {} : { length_mm: isPositive }),
    track_mm: isPositive,
    axle_distance_mm: cart.axles === 2 ? isPositive : isNotNegative,
    wheel_width_mm: isPositive,
    wheel_contact_mm: isPositive,
  });

function dateFaults(visit: Visit): Problem[] {
  const faults = (["from", "to"] as const)
    .filter((key) => visit[key] !== null && !isIsoDate(visit[key]))
    .map((key) => editProblem(`visit.${key}`, visit[key], "is not a date", "Give it as 2027-04-30."));
  if (faults.length > 0 || visit.to === null || visit.from <= visit.to) return faults;
  return [
    editProblem("visit.to", visit.to, `lies before the first day ${visit.from}`, "Give a later last day."),
  ];
}

/** A real calendar day written as year-month-day; 2027-02-30 is none. */
function isIsoDate(text: string): boolean {
  const at = Date.parse(`${text}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || !Number.isFinite(at)) return false;
  return new Date(at).toISOString().startsWith(text);
}
