import type { CheckResult } from "../checks/index.ts";
import type { Tables } from "../materials/index.ts";
import type { Plan } from "../plan/index.ts";
import {
  betterGrades,
  closerCrossPieces,
  crossPieceScrews,
  crossPiecesOnEdge,
  deeperStringers,
  longerCatchBoard,
  morePlatformStringers,
  stouterCrossPieces,
  strongerStakes,
  thickerBoards,
  thirdStringer,
  widerSills,
  withoutLength,
} from "./kit-steps.ts";
import type { Family } from "./types.ts";

/** Length of module that a check speaks of, from its id; null when it speaks of none. */
export function lengthOf(id: string, lengths_mm: readonly number[]): number | null {
  const found = /\.(\d+)mm/.exec(id);
  if (!found) return null;
  return lengths_mm.find((l) => Math.round(l) === Number(found[1])) ?? null;
}

const moreCarriers = (plan: Plan): Family => ({
  id: "more-carriers",
  steps: [1, 2, 3, 4].map((more) => {
    const carriers = plan.laying.carriers + more;
    return {
      words: `${carriers} carriers`,
      edit: { type: "set-section", section: "laying", value: { ...plan.laying, carriers } },
      keepsLayout: true,
    };
  }),
});

/** Without the length that fails, or without the longest where the check speaks of no length. */
function shorter(plan: Plan, id: string): Family {
  const { kit } = plan;
  return withoutLength(kit, lengthOf(id, kit.lengths_mm) ?? Math.max(...kit.lengths_mm));
}

/** The families of catalogue steps that may make a check pass; none for rules that no part of a kit can mend. */
export function familiesFor(check: CheckResult, plan: Plan, tables: Tables): Family[] {
  const { kit } = plan;
  const { sizes } = tables;
  switch (check.kind) {
    case "stringer-bending":
    case "stringer-shear":
    case "stringer-deflection":
    case "damage":
    case "feel":
    case "handling":
      return [
        deeperStringers(kit, sizes),
        betterGrades(kit, tables),
        closerCrossPieces(kit),
        thirdStringer(kit),
        shorter(plan, check.id),
      ];
    case "cross-piece":
      return [
        crossPiecesOnEdge(kit),
        stouterCrossPieces(kit, sizes, "module"),
        ...crossPieceScrews(kit, tables, "module"),
        betterGrades(kit, tables),
        thirdStringer(kit),
      ];
    case "deck":
      return [
        thickerBoards(kit, sizes),
        closerCrossPieces(kit),
        thirdStringer(kit),
        betterGrades(kit, tables),
      ];
    case "platform":
      return [
        deeperStringers(kit, sizes),
        morePlatformStringers(kit),
        stouterCrossPieces(kit, sizes, "platform"),
        ...crossPieceScrews(kit, tables, "platform"),
        betterGrades(kit, tables),
        thickerBoards(kit, sizes),
      ];
    case "seat":
    case "supports":
      return [widerSills(kit, sizes), longerCatchBoard(kit), betterGrades(kit, tables)];
    case "fastening":
      return [...crossPieceScrews(kit, tables, "module"), longerCatchBoard(kit)];
    case "bearing":
    case "settling":
      return [shorter(plan, check.id)];
    case "uplift":
    case "anchor":
      return strongerStakes(kit);
    case "lifting":
      return [moreCarriers(plan), shorter(plan, check.id)];
    default:
      return [];
  }
}
