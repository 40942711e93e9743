import { defineConstant, type Source } from "../formula/index.ts";

const project = (at: string): Source => ({
  id: "causey-soil-checks",
  title: "Project decision on checks of soft ground (docs/methods/soft-ground.md)",
  at,
  status: "project",
});

export const leastReading = defineConstant(
  "check.soil.least-reading",
  "Strength that a reading of nothing counts as",
  "su_min",
  100,
  "Pa",
  project("0.1 kPa: less than a vane can tell from water"),
);

export const plotStill = defineConstant(
  "check.plot-movement",
  "Most that a sensitive plot may move when someone steps on the last support",
  "w_p",
  0.001,
  "m",
  project("1 mm"),
);

export const consolidationEnd = defineConstant(
  "check.consolidation-end",
  "Time after which creep is counted",
  "t_p",
  30 * 24,
  "h",
  {
    id: "practice-consolidation-end",
    title: "Thin soft layers under a light load: about a month (common practice, no source)",
    status: "practice",
  },
  "30 * 24",
);

/** Draws for the joints together, their seed, and how many of the weakest joints are drawn. */
export const TOGETHER = { draws: 300, seed: 7, joints: 48 } as const;

/** How many of the weakest joints the worth of a reading is worked out for. */
export const WORTH_JOINTS = 12;

export const soilConstants = [leastReading, plotStill, consolidationEnd] as const;
