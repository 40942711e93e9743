import type { Problem } from "../formula/index.ts";
import type { Polygons, Zone } from "../site/index.ts";
import type { Plan } from "./document.ts";
import { editProblem } from "./edit-problem.ts";
import { isNotNegative, numberFaults } from "./number-faults.ts";

/** What stands against adding a zone, at position `at` of the list when given. */
export function zoneFaults(plan: Plan, edit: { readonly zone: Zone; readonly at?: number }): Problem[] {
  const { zone, at } = edit;
  const place = { least: 0, most: plan.zones.length, whole: true };
  return [
    ...idFaults(plan, zone.id),
    ...(at === undefined ? [] : numberFaults("", { at }, { at: place })),
    ...(zone.sensitivity === undefined ? [] : numberFaults("zone.", zone, { sensitivity: isNotNegative })),
    ...polygonFaults(zone.polygons),
  ];
}

function idFaults(plan: Plan, id: string): Problem[] {
  if (id.trim() === "") return [editProblem("zone.id", id, "the id is empty", "Give an id.")];
  if (!plan.zones.some((z) => z.id === id)) return [];
  return [editProblem("zone.id", id, "the plan already has a zone with this id", "Give a new id.")];
}

function polygonFaults(polygons: Polygons): Problem[] {
  const place = "zone.polygons";
  if (polygons.length === 0 || polygons.some((rings) => rings.length === 0))
    return [editProblem(place, "", "the zone has no outline", "Draw its outline.")];
  const rings = polygons.flat();
  const short = rings.filter((ring) => ring.length < 3).length;
  const broken = rings.flat().filter(([x, y]) => !Number.isFinite(x) || !Number.isFinite(y)).length;
  return [
    ...(short > 0
      ? [editProblem(place, short, "outlines with fewer than three corners", "Give three or more.")]
      : []),
    ...(broken > 0
      ? [editProblem(place, broken, "corners that are not finite numbers", "Give x and y in metres.")]
      : []),
  ];
}
