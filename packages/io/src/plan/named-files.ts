import type { Plan } from "@causey/engine/plan";
import { groundFile } from "../ground/index.ts";

/** The files beside plan.json that a plan names, with the .prj of its terrain. */
export function namedFiles(plan: Pick<Plan, "terrain" | "prices" | "water" | "photo">): readonly string[] {
  const ground = groundFile(plan.terrain);
  return [
    ...(ground === null ? [] : [ground, ground.replace(/\.[^./]*$/, ".prj")]),
    plan.prices.file,
    ...(plan.water.series ? [plan.water.series.file] : []),
    ...(plan.water.compare ? [plan.water.compare.file] : []),
    ...(plan.photo ? [plan.photo.file] : []),
  ];
}
