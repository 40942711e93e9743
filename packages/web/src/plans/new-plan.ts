import { ProblemError, type Problem } from "@causey/engine/formula";
import type { UnitSystem } from "@causey/engine/units";
import type { PlanCrs } from "@causey/io/crs";
import type { PlanFiles } from "@causey/io/files";
import {
  freshPlanFiles,
  siteOfStart,
  siteOfTerrain,
  type FreshSite,
  type TerrainLook,
} from "@causey/io/fresh";

/** What is asked before a plan begins, as far as it has been answered. */
export interface NewPlan {
  readonly name: string;
  readonly site_name: string;
  readonly units: UnitSystem;
  readonly ground: "file" | "stations";
  /** How the system is told where no file names it; empty = not told yet. */
  readonly system: "" | "epsg" | "local";
  readonly epsg: number | null;
  readonly grid_name: string;
  readonly datum: string;
  /** Where the walkway begins: east and north on the grid [m]. */
  readonly start: readonly [number, number] | null;
  /** Something stands in the start's fields that is no place. */
  readonly isStartUnread: boolean;
  /** Ground at the start on the datum, where there is no terrain [m]. */
  readonly ground_m: number | null;
}

export const blankPlan: NewPlan = {
  name: "",
  site_name: "",
  units: "us",
  ground: "file",
  system: "",
  epsg: null,
  grid_name: "Site grid",
  datum: "",
  start: null,
  isStartUnread: false,
  ground_m: null,
};

/**
 * The files of the plan folder that the answers make, for the very reader that every plan goes through.
 *
 * look  the chosen terrain; null while none is chosen
 * Throws `ProblemError` with everything that is not answered yet.
 */
export function newPlanFiles(asked: NewPlan, look: TerrainLook | null): PlanFiles {
  const problems = unanswered(asked, look);
  if (problems.length > 0) throw new ProblemError(problems);
  return freshPlanFiles(asked.name, {
    site_name: asked.site_name,
    units: asked.units,
    site: siteOf(asked, look),
  });
}

/** Whether the user has to say the system: there is no file, or it names none. */
export const asksSystem = ({ ground }: NewPlan, look: TerrainLook | null): boolean =>
  ground === "stations" || (look !== null && look.crs === null);

function siteOf(asked: NewPlan, look: TerrainLook | null): FreshSite {
  const { datum, start, ground, ground_m } = asked;
  const crs = asksSystem(asked, look) ? systemOf(asked) : null;
  return ground === "file"
    ? siteOfTerrain(look!, { crs, datum, start })
    : siteOfStart(crs!, datum, start!, ground_m!);
}

/** The system that the start's numbers are in, as far as it is known. */
export const startSystem = (asked: NewPlan, look: TerrainLook | null): PlanCrs | null =>
  asksSystem(asked, look) ? systemOf(asked) : look?.crs ? { epsg: look.crs.code } : null;

const systemOf = ({ system, epsg, grid_name }: NewPlan): PlanCrs | null =>
  system === "epsg" && epsg !== null
    ? { epsg }
    : system === "local"
      ? { local: grid_name.trim() || "Site grid" }
      : null;

function unanswered(asked: NewPlan, look: TerrainLook | null): readonly Problem[] {
  const { ground, start } = asked;
  const isBare = ground === "stations";
  const lacks: readonly (readonly [boolean, string, string])[] = [
    [asked.name.trim() === "", "Name of the plan", "Give the plan a name."],
    [ground === "file" && look === null, "Terrain", "Choose a terrain file, or say that there is none."],
    [
      asksSystem(asked, look) && systemOf(asked) === null,
      "Coordinate system",
      "Give its EPSG code, or say that it is a local grid.",
    ],
    [asked.datum.trim() === "", "Vertical datum", "Name the level that heights are counted from."],
    [isBare && asked.ground_m === null, "Ground at the start", "Give its height on the datum."],
    [
      asked.isStartUnread || (isBare && start === null),
      "Start",
      isBare ? "Give both numbers." : "Give both numbers, or leave both empty.",
    ],
  ];
  return lacks.flatMap(([isLacking, place, mend]) => (isLacking ? [openQuestion(place, mend)] : []));
}

const openQuestion = (place: string, mend: string): Problem => ({
  code: "new-plan",
  severity: "error",
  file: "new plan",
  place,
  value: "",
  message: `${place}: not told yet.`,
  mend,
});
