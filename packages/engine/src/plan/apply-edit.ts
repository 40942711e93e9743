import type { Problem } from "../formula/index.ts";
import { DomainError } from "../units/index.ts";
import type { Plan } from "./document.ts";
import { editFaults } from "./edit-faults.ts";
import type { Edit, SectionEdit } from "./edit.ts";

export type EditOutcome =
  | { readonly ok: true; readonly plan: Plan; readonly inverse: Edit }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface Change {
  readonly plan: Plan;
  readonly inverse: Edit;
}

/**
 * Applies one edit to a plan and says how to take it back.
 *
 * plan  left as it is; what the edit does not touch is shared with the answer
 * edit  one member of the union; a plot, start, zone or visit is named by its id
 * Returns the new plan and the edit that restores the old one, or every fault of the edit at once: an unknown or
 * doubled id, a number that is not finite or out of range. Whether the plan can still be built is for `derive`.
 */
export function applyEdit(plan: Plan, edit: Edit): EditOutcome {
  const problems = editFaults(plan, edit);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, ...perform(plan, edit) };
}

/**
 * The plan as it was before an edit: applies the inverse that `applyEdit` gave, without judging it, so that an edit
 * which mended a fault can be taken back too. Throws `DomainError` when the inverse belongs to another plan.
 */
export const revertEdit = (plan: Plan, inverse: Edit): Plan => perform(plan, inverse).plan;

function perform(plan: Plan, edit: Edit): Change {
  switch (edit.type) {
    case "move-plot":
      return movePlot(plan, edit);
    case "move-start":
      return moveStart(plan, edit);
    case "set-plot-reach":
      return setPlotReach(plan, edit);
    case "add-zone":
      return addZone(plan, edit);
    case "remove-zone":
      return removeZone(plan, edit);
    case "set-weights":
      return {
        plan: { ...plan, layout: { ...plan.layout, weights: edit.weights } },
        inverse: { type: "set-weights", weights: plan.layout.weights },
      };
    case "set-layout":
      return { plan: { ...plan, layout: edit.layout }, inverse: { type: "set-layout", layout: plan.layout } };
    case "set-visit":
      return setVisit(plan, edit);
    case "set-kit":
      return { plan: { ...plan, kit: edit.kit }, inverse: { type: "set-kit", kit: plan.kit } };
    case "set-units":
      return { plan: { ...plan, units: edit.units }, inverse: { type: "set-units", units: plan.units } };
    case "rename":
      return { plan: { ...plan, name: edit.name }, inverse: { type: "rename", name: plan.name } };
    case "set-price-list":
      return setPriceList(plan, edit);
    case "set-section":
      return setSection(plan, edit);
  }
}

function setSection(plan: Plan, { section, value }: SectionEdit): Change {
  const inverse = { type: "set-section", section, value: plan[section] } as SectionEdit;
  return { plan: { ...plan, [section]: value }, inverse };
}

function setPriceList(plan: Plan, { file, currency }: EditOf<"set-price-list">): Change {
  return {
    plan: { ...plan, prices: { ...plan.prices, file }, money: { ...plan.money, currency } },
    inverse: { type: "set-price-list", file: plan.prices.file, currency: plan.money.currency },
  };
}

type EditOf<T extends Edit["type"]> = Extract<Edit, { readonly type: T }>;

/** Position and item of an id. `editFaults` has told the user about an unknown one before this is reached. */
function locate<T extends { readonly id: string }>(list: readonly T[], id: string): readonly [number, T] {
  const at = list.findIndex((item) => item.id === id);
  const item = list[at];
  if (!item) throw new DomainError("edit-of-unknown-item", { id });
  return [at, item];
}

function movePlot(plan: Plan, { plot, x, y }: EditOf<"move-plot">): Change {
  const [at, old] = locate(plan.plots, plot);
  return {
    plan: { ...plan, plots: plan.plots.with(at, { ...old, x, y }) },
    inverse: { type: "move-plot", plot, x: old.x, y: old.y },
  };
}

function moveStart(plan: Plan, { start, x, y }: EditOf<"move-start">): Change {
  const [at, old] = locate(plan.starts, start);
  return {
    plan: { ...plan, starts: plan.starts.with(at, { ...old, x, y }) },
    inverse: { type: "move-start", start, x: old.x, y: old.y },
  };
}

function setPlotReach(plan: Plan, { plot, keep_off_m, reach_m }: EditOf<"set-plot-reach">): Change {
  const [at, old] = locate(plan.plots, plot);
  return {
    plan: { ...plan, plots: plan.plots.with(at, { ...old, keep_off_m, reach_m }) },
    inverse: { type: "set-plot-reach", plot, keep_off_m: old.keep_off_m, reach_m: old.reach_m },
  };
}

function addZone(plan: Plan, { zone, at = plan.zones.length }: EditOf<"add-zone">): Change {
  return {
    plan: { ...plan, zones: plan.zones.toSpliced(at, 0, zone) },
    inverse: { type: "remove-zone", zone: zone.id },
  };
}

function removeZone(plan: Plan, edit: EditOf<"remove-zone">): Change {
  const [at, zone] = locate(plan.zones, edit.zone);
  return {
    plan: { ...plan, zones: plan.zones.toSpliced(at, 1) },
    inverse: { type: "add-zone", zone, at },
  };
}

function setVisit(plan: Plan, { visit }: EditOf<"set-visit">): Change {
  const [at, old] = locate(plan.visits, visit.id);
  return {
    plan: { ...plan, visits: plan.visits.with(at, visit) },
    inverse: { type: "set-visit", visit: old },
  };
}
