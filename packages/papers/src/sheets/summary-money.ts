import { oldPriceWords, priceSourceWords } from "@causey/engine/cost";
import { showShareOfLimit } from "@causey/engine/units";
import { money } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";

type Rows = Extract<Block, { kind: "rows" }>["rows"];

/** What it costs: the lines, the sums that differ, where the prices come from, and what is not in them. */
export function moneyBlocks({ results, plan }: PaperContext): Block[] {
  const { cost, budget } = results;
  const amount = (v: number): string => money(v, cost.currency);
  const lineOf = (id: string): number => cost.lines.find((l) => l.line === id)?.amount ?? 0;
  const range = (id: string): string => {
    const mine = budget.entries.filter((e) => e.id === id);
    const sum = (key: "low" | "high"): number => mine.reduce((s, e) => s + e[key], 0);
    return `${amount(sum("low"))} to ${amount(sum("high"))}`;
  };
  const old = oldPriceWords(budget.old_prices, cost.order.length, plan.money.price_age_days);
  return [
    { kind: "head", text: "Money" },
    {
      kind: "rows",
      rows: [
        ["Materials", amount(lineOf("materials"))],
        ["Labour, laying, range", range("labour")],
        ["Tax and delivery", `${amount(lineOf("tax"))} and ${amount(lineOf("delivery"))}`],
        ["Removal, range", range("removal")],
        ["Disposal", amount(lineOf("disposal"))],
        ["Contingency", amount(lineOf("contingency"))],
        ...sumRows(results, amount),
        ...(budget.per_visit === null
          ? []
          : [["Whole project, per visit", amount(budget.per_visit)] as const]),
        ["Prices of the order", cost.price_sources.map(priceSourceWords).join("; ") || "none used"],
      ],
    },
    ...[...budget.warnings, ...(old === null ? [] : [old])].map((text): Block => ({
      kind: "text",
      text,
      bullet: true,
    })),
    ...(cost.unpriced.length > 0
      ? [
          {
            kind: "text",
            text: `Without a price, left out of every sum: ${cost.unpriced.map((u) => u.item).join("; ")}.`,
          } as const,
        ]
      : []),
  ];
}

/** Each sum once: where the years add nothing, or no volunteer helps, the same number does not stand there again. */
function sumRows({ cost, budget }: PaperContext["results"], amount: (v: number) => string): Rows {
  const years = budget.years.length === 1 ? "1 calendar year" : `${budget.years.length} calendar years`;
  const later = Math.round((budget.mid - cost.total) * 100) / 100;
  const span = budget.low < budget.high ? ` (${amount(budget.low)} to ${amount(budget.high)})` : "";
  return [
    ...(later === 0
      ? []
      : ([
          ["Laid and taken out, the lines above together", amount(cost.total)],
          ["Work in the jig, inspection rounds, repair, and their contingency", amount(later)],
        ] as const)),
    [`The whole project, ${years}, with its range`, `${amount(budget.mid)}${span}`],
    ...(budget.cash === budget.mid
      ? []
      : ([["of it to be paid in money, volunteers' hours left out", amount(budget.cash)]] as const)),
  ];
}

/** How the checks came out, why some could not be made, and the worst that fail. */
export function checkBlocks({ results }: PaperContext): Block[] {
  const count = (status: string): number => results.checks.filter((c) => c.status === status).length;
  const failed = results.checks.flatMap((c) => (c.status === "fail" ? [c] : []));
  const worst = failed.toSorted((a, b) => b.utilisation - a.utilisation).slice(0, 3);
  return [
    { kind: "head", text: "Checks" },
    {
      kind: "text",
      text: `${count("pass")} meet the chosen rule, ${count("fail")} do not, ${count("cannot-check")} cannot be checked${mainReason(results)}, ${count("not-applicable")} do not apply.`,
    },
    ...worst.map((c): Block => ({
      kind: "text",
      bullet: true,
      text: `Does not meet it: ${c.title}, ${showShareOfLimit(c.utilisation)} of the limit.`,
    })),
  ];
}

/** What is missing most often, in words; empty when every check could be made. */
function mainReason({ checks }: PaperContext["results"]): string {
  const open = checks.flatMap((c) => (c.status === "cannot-check" ? [c] : []));
  const counts = new Map<string, number>();
  for (const check of open)
    for (const what of new Set(check.missing)) counts.set(what, (counts.get(what) ?? 0) + 1);
  const [most] = [...counts].toSorted((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  if (!most) return "";
  const share = most[1] === open.length ? "" : `, ${most[1]} of them`;
  return ` (for want of ${most[0]}${share})`;
}
