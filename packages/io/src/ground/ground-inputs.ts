import type { Plan } from "@causey/engine/plan";
import type { GroundPlan } from "./site-ground.ts";

/** Everything in the plan that its ground depends on: while this stays, ground that was read may be kept. */
export const groundInputs = (
  plan: GroundPlan,
): readonly [
  Plan["terrain"],
  Plan["survey"],
  string,
  readonly number[],
  readonly Plan["zones"][number]["polygons"][],
] => [
  plan.terrain,
  plan.survey,
  plan.vertical_datum,
  plan.levels.filter((l) => l.datum === plan.vertical_datum).map((l) => l.z_m),
  plan.survey.correct_terrain ? plan.zones.filter((z) => z.use === "habitat").map((z) => z.polygons) : [],
];
