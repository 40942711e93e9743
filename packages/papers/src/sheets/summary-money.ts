import { oldPriceWords, priceSourceWords, type CostLine } from "@causey/engine/cost";
import { wholeMoney } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";

type Results = PaperContext["results"];
type Row = readonly [label: string, value: string];

/** Items without a price that are named; those beyond are only counted. */
const MOST_UNPRICED = 4;

const TITLES: Partial<Record<CostLine["line"], string>> = { labour: "Labour, laying" };

/** What it costs: what is not in the sums, the lines in whole units, the sums that differ, where the prices come from. */
export function moneyBlocks({ results, plan }: PaperContext): Block[] {
  const { cost, budget } = results;
  const old = oldPriceWords(budget.old_prices, cost.order.length, plan.money.price_age_days);
  const perVisit =
    budget.per_visit === null
      ? []
      : [["Whole project, per visit", wholeMoney(budget.per_visit, cost.currency)] as const];
  return [
    { kind: "head", text: `Money${doubts(results)}` },
    ...incomplete(results).map(bullet),
    {
      kind: "rows",
      rows: [
        ...lineRows(results),
        ...sumRows(results),
        ...perVisit,
        ["Prices of the order", sources(results)],
      ],
    },
    ...[...budget.warnings, ...(old === null ? [] : [old])].map(bullet),
  ];
}

const bullet = (text: string): Block => ({ kind: "text", text, bullet: true });

/** What the sums leave out must be read before the first of them. */
function incomplete({ cost }: Results): string[] {
  const items = cost.unpriced.map((u) => u.item);
  if (items.length === 0) return [];
  const left = items.length - MOST_UNPRICED;
  const named = [...items.slice(0, MOST_UNPRICED), ...(left > 0 ? [`and ${left} more`] : [])].join("; ");
  return [`Incomplete: without a price, left out of every sum: ${named}.`];
}

const sources = ({ cost }: Results): string =>
  cost.price_sources.map(priceSourceWords).join("; ") || "none used";

/** Behind the word money: that its sums are not whole, or rest on prices that nobody offered. */
function doubts({ cost }: Results): string {
  const { price_sources: all, unpriced } = cost;
  const examples = all.filter((s) => s.is_example);
  const share = examples.length === all.length ? "all" : "in part";
  return [
    ...(unpriced.length > 0 ? [", incomplete"] : []),
    ...(examples.length > 0 ? [`, ${share} on example prices`] : []),
  ].join("");
}

/** The lines of the cost, labour with its range, in whole units that add up to the whole total. */
function lineRows({ cost, budget }: Results): Row[] {
  const whole = wholeParts(cost.lines.map((l) => l.amount));
  return cost.lines.map((l, i): Row => {
    const mine = budget.entries.filter((e) => e.id === l.line);
    const sum = (key: "low" | "high"): number => Math.round(mine.reduce((s, e) => s + e[key], 0));
    const [low, high] = [sum("low"), sum("high")];
    const hasRange = (l.line === "labour" || l.line === "removal") && low < high;
    const range = hasRange
      ? ` (${wholeMoney(low, cost.currency)} to ${wholeMoney(high, cost.currency)})`
      : "";
    return [TITLES[l.line] ?? l.title, `${wholeMoney(whole[i]!, cost.currency)}${range}`];
  });
}

/** Amounts in whole units that add up to their rounded sum: those with the largest rest are rounded up. */
function wholeParts(amounts: readonly number[]): number[] {
  const parts = amounts.map(Math.floor);
  const total = Math.round(amounts.reduce((sum, a) => sum + Math.round(a * 100), 0) / 100);
  const missing = total - parts.reduce((sum, p) => sum + p, 0);
  const byRest = amounts
    .map((a, i) => ({ i, rest: a - parts[i]! }))
    .toSorted((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRest.slice(0, missing)) parts[i]! += 1;
  return parts;
}

/** Each sum once: where the years add nothing, or no volunteer helps, the same number does not stand there again. */
function sumRows({ cost, budget }: Results): Row[] {
  const amount = (v: number): string => wholeMoney(v, cost.currency);
  const years = budget.years.length === 1 ? "1 calendar year" : `${budget.years.length} calendar years`;
  const later = Math.round(budget.mid) - Math.round(cost.total);
  const span = budget.low < budget.high ? ` (${amount(budget.low)} to ${amount(budget.high)})` : "";
  const open = cost.unpriced.length > 0 ? ", incomplete" : "";
  return [
    ...(later === 0
      ? []
      : ([
          [`Laid and taken out, the lines above together${open}`, amount(cost.total)],
          ["Work in the jig, inspection rounds, repair, and their contingency", amount(later)],
        ] as const)),
    [`The whole project, ${years}${open}`, `${amount(budget.mid)}${span}`],
    ...(Math.round(budget.cash) === Math.round(budget.mid)
      ? []
      : ([["of it to be paid in money, volunteers' hours left out", amount(budget.cash)]] as const)),
  ];
}
