import { defineFormula, type AnyFormula } from "../formula/index.ts";

const planMoney = { id: "plan-money", title: "The plan's own rates", status: "project" } as const;

/** Hours of inspection rounds in a part of a year. */
export const inspectionHours = defineFormula(
  {
    id: "cost.inspection-hours",
    title: "Hours of inspection rounds in a year",
    symbol: "t",
    unit: "h",
    text: "n * r * d / 365",
    inputs: { n: "1", r: "h", d: "1" },
    validity: "n rounds in a whole year, r hours a round, the walkway standing d days of the year; all >= 0.",
    source: planMoney,
  },
  ({ n, r, d }) => (n * r * d) / 365,
);

/** Materials replaced in a part of a year. */
export const repairMoney = defineFormula(
  {
    id: "cost.repair",
    title: "Materials for repair in a year",
    symbol: "R",
    unit: "money",
    text: "s * M * d / 365",
    inputs: { s: "1", M: "money", d: "1" },
    validity:
      "s of the materials M replaced in a whole year, the walkway standing d days of the year; all >= 0.",
    source: planMoney,
  },
  ({ s, M, d }) => (s * M * d) / 365,
);

/** What watching the plants and the ground costs in a part of a year. */
export const monitoringMoney = defineFormula(
  {
    id: "cost.monitoring",
    title: "Monitoring in a year",
    symbol: "Q",
    unit: "money",
    text: "m * d / 365",
    inputs: { m: "money", d: "1" },
    validity:
      "m for a whole year of monitoring, the walkway standing d days of the year; both >= 0. What is watched before laying and after removal is not in it.",
    source: planMoney,
  },
  ({ m, d }) => (m * d) / 365,
);

/** Hours to build the modules in the jig. */
export const jigHours = defineFormula(
  {
    id: "cost.jig-hours",
    title: "Hours of work in the jig",
    symbol: "t",
    unit: "h",
    text: "n * r",
    inputs: { n: "1", r: "h" },
    validity: "n modules and platforms, spares with them; r hours for one; both >= 0.",
    source: planMoney,
  },
  ({ n, r }) => n * r,
);

/** Visits over a stretch of days at so many a year. */
export const visitCount = defineFormula(
  {
    id: "cost.visits",
    title: "Visits from the first to the last day",
    symbol: "v",
    unit: "1",
    text: "n * d / 365",
    inputs: { n: "1", d: "1" },
    validity: "n visits in a whole year over d days; both >= 0. A season shorter than the year is inside n.",
    source: planMoney,
  },
  ({ n, d }) => (n * d) / 365,
);

export const budgetFormulas: readonly AnyFormula[] = [
  inspectionHours,
  repairMoney,
  monitoringMoney,
  jigHours,
  visitCount,
];
