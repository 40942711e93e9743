import type { Budget } from "../cost/index.ts";
import type { Source, Trace, TraceStep } from "../formula/index.ts";
import type { Figure } from "./results.ts";
import { sumStep } from "./sum-step.ts";

const planMoney: Source = {
  id: "plan-money",
  title: "The plan's rates and its dated price list",
  status: "project",
};

/** The whole project in money, and what a visit and a year of it cost. */
export function budgetFigures(budget: Budget, working: Trace): Figure[] {
  const whole = sumStep(
    { id: "budget.total", title: "Budget, first to last day", symbol: "B", unit: "money", source: planMoney },
    budget.entries.map((e, n) => ({
      symbol: `b${n + 1}`,
      title: `${e.title} ${e.year}: ${e.note}`,
      count: 1,
      value: e.mid,
      unit: "money",
    })),
  );
  const figure = (id: string, title: string, value: number, note: string, steps: TraceStep[]): Figure => ({
    id,
    title,
    value,
    unit: "money",
    note,
    working: steps,
    sources: [planMoney],
  });
  const shares = [
    ["cost-per-visit", "Budget per visit", budget.per_visit, "v", budget.visits, "visits"],
    ["cost-per-year", "Budget per year of service", budget.per_year, "y", budget.days / 365, "years"],
  ] as const;
  return [
    figure("budget", "Budget, laid to taken out", budget.mid, budget.warnings.join(" "), [...working, whole]),
    ...shares.flatMap(([id, title, value, symbol, count, word]) =>
      value === null
        ? []
        : [
            figure(id, title, value, "", [
              {
                id: `budget.${id}`,
                title,
                symbol: "b",
                text: `B / ${symbol}`,
                inputs: [
                  { symbol: "B", value: budget.mid, unit: "money" },
                  { symbol, value: count, unit: "1" },
                ],
                value,
                unit: "money",
                source: planMoney,
                note: `${symbol}: ${word} from the first day of laying to the day it is out`,
              },
            ]),
          ],
    ),
  ];
}
