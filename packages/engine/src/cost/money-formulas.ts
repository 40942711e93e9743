import { defineFormula, type AnyFormula } from "../formula/index.ts";

const planMoney = { id: "plan-money", title: "The plan's own rates", status: "project" } as const;

/** A share of an amount: tax on materials, contingency on everything else. */
export const shareOfAmount = defineFormula(
  {
    id: "cost.share",
    title: "Share of an amount",
    symbol: "A",
    unit: "money",
    text: "s * B",
    inputs: { s: "1", B: "money" },
    validity: "s >= 0; rounded to the cent afterwards.",
    source: planMoney,
  },
  ({ s, B }) => s * B,
);

/** Person-hours at the plan's hourly rate; r is the money for one hour. */
export const hoursAtRate = defineFormula(
  {
    id: "cost.labour",
    title: "Cost of person-hours",
    symbol: "A",
    unit: "money",
    text: "t * r",
    inputs: { t: "h", r: "money" },
    validity:
      "t >= 0, r >= 0 for one hour; 0 for volunteers whose hours are not valued. Rounded to the cent afterwards.",
    source: planMoney,
  },
  ({ t, r }) => t * r,
);

export const costFormulas: readonly AnyFormula[] = [shareOfAmount, hoursAtRate];
