import type { Plan } from "@causey/engine/plan";

/** Distances that a new plot gets [m]. */
export interface PlotDistances {
  readonly keep_off_m: number;
  readonly reach_m: number;
}

/** For a plan whose plots say nothing else: a decision of this project. */
const COMMON: PlotDistances = { keep_off_m: 1.5, reach_m: 2 };

/** The distances that all plots of the plan have in common; where there are none or they differ, those of new plans. */
export function plotDistances({ plots }: Pick<Plan, "plots">): PlotDistances {
  const shared = <K extends keyof PlotDistances>(key: K): number => {
    const [first, ...others] = new Set(plots.map((p) => p[key]));
    return first !== undefined && others.length === 0 ? first : COMMON[key];
  };
  return { keep_off_m: shared("keep_off_m"), reach_m: shared("reach_m") };
}
