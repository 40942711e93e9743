import { showShareOfLimit } from "@causey/engine/units";
import { levelText, money, partLength, shower } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";
import { textSheet } from "./text-sheet.ts";

/** The summary stays one page: as large as what it says allows [mm]. */
const SUMMARY_SIZES = [3, 2.8, 2.6, 2.4, 2.2, 2];

/** The one page for the director: what it is, what it costs, what it touches, when it comes out. */
export const summarySheet = textSheet(
  {
    id: "summary",
    title: "Summary",
    about:
      "One page: length, width, height over ground, shade and contact, money with its range, dates, cautions.",
  },
  (context) => [
    ...walkwayBlocks(context),
    ...harmBlocks(context),
    ...moneyBlocks(context),
    ...checkBlocks(context),
    { kind: "head", text: "Cautions" },
    ...context.results.cautions
      .slice(0, 4)
      .map((text): Block => ({ kind: "text", text, bullet: true, quiet: true })),
  ],
  SUMMARY_SIZES,
);

function walkwayBlocks({ plan, results }: PaperContext): Block[] {
  const { evaluation: e, layout } = results;
  const show = shower(plan);
  const visits = plan.visits.map((v) => `${v.name}, ${Number(v.per_year.toFixed(1))} a year`).join("; ");
  return [
    { kind: "head", text: `${plan.name}, ${plan.site_name}` },
    ...(plan.request.purpose ? [{ kind: "text", text: plan.request.purpose } as const] : []),
    {
      kind: "rows",
      rows: [
        ["Length of walkway", show(e.length_m, "m")],
        ["Width of deck", partLength(plan.kit.deck.width_mm / 1000, plan)],
        ["Height of the underside over ground, at the lowest point", show(e.lowest_deck_clear_m, "m")],
        [
          "Parts",
          `${e.modules.map((m) => `${m.count} modules of ${partLength(m.length_m, plan)}`).join(", ")}; ${e.platforms} platforms; ${e.joints} supports`,
        ],
        ["Laid", `${plan.laying.from} to ${plan.laying.to}`],
        ["Taken out by", plan.removal.by],
        ["Visits", visits || "none told yet"],
        ...layout.reached.map(
          (r) =>
            [
              `Reaches ${plan.plots.find((p) => p.id === r.plot)?.name ?? r.plot}`,
              `${show(r.walk_m, "m")} from the start`,
            ] as const,
        ),
        ...layout.unreached.map(
          (u) =>
            [`Does not reach ${plan.plots.find((p) => p.id === u.plot)?.name ?? u.plot}`, u.because] as const,
        ),
      ],
    },
  ];
}

function harmBlocks({ plan, results }: PaperContext): Block[] {
  const { evaluation: e } = results;
  const show = shower(plan);
  const shaded = e.shaded_by_zone.filter((z) => z.area_m2 > 0.005);
  return [
    { kind: "head", text: "Harm and water" },
    {
      kind: "rows",
      rows: [
        ["Shaded ground", show(e.shaded_m2, "m2")],
        ...shaded.map((z) => [`of it ${z.name}`, show(z.area_m2, "m2")] as const),
        ["Ground touched by supports", show(e.contact_m2, "m2")],
        [
          "Crossings of channels and pools",
          e.crossings.length === 0
            ? "none"
            : e.crossings.map((c) => `${c.name}, ${show(c.clear_m, "m")} clear`).join("; "),
        ],
        ...plan.levels.map((l) => [l.name, `${levelText(l.z_m, plan)} on ${l.datum}`] as const),
      ],
    },
  ];
}

function moneyBlocks({ results, plan }: PaperContext): Block[] {
  const { cost, budget } = results;
  const amount = (v: number): string => money(v, cost.currency);
  const labour = budget.entries.filter((e) => e.id === "labour");
  const range = (entries: typeof labour): string => {
    const sum = (key: "low" | "high"): number => entries.reduce((s, e) => s + e[key], 0);
    return `${amount(sum("low"))} to ${amount(sum("high"))}`;
  };
  const lineOf = (id: string): number => cost.lines.find((l) => l.line === id)?.amount ?? 0;
  return [
    { kind: "head", text: "Money" },
    {
      kind: "rows",
      rows: [
        ["Materials", amount(lineOf("materials"))],
        ["Labour, laying, range", range(labour)],
        ["Tax and delivery", `${amount(lineOf("tax"))} and ${amount(lineOf("delivery"))}`],
        ["Removal, range", range(budget.entries.filter((e) => e.id === "removal"))],
        ["Disposal", amount(lineOf("disposal"))],
        ["Contingency", amount(lineOf("contingency"))],
        ["Cost of the walkway, laid and taken out", amount(cost.total)],
        [`Budget over ${budget.years.length} calendar years`, amount(budget.mid)],
        ["of it to be paid, volunteers' hours left out", amount(budget.cash)],
        ...(budget.per_visit === null ? [] : [["Budget per visit", amount(budget.per_visit)] as const]),
      ],
    },
    ...[...budget.warnings, ...oldPriceWarning(results.budget.old_prices, plan.money.price_age_days)].map(
      (text): Block => ({ kind: "text", text, bullet: true }),
    ),
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

const oldPriceWarning = (old: readonly { readonly item: string }[], days: number): string[] =>
  old.length === 0 ? [] : [`${old.length} prices are older than ${days} days: ask the yard again.`];

function checkBlocks({ results }: PaperContext): Block[] {
  const count = (status: string): number => results.checks.filter((c) => c.status === status).length;
  const failed = results.checks.flatMap((c) => (c.status === "fail" ? [c] : []));
  const worst = failed.toSorted((a, b) => b.utilisation - a.utilisation).slice(0, 3);
  return [
    { kind: "head", text: "Checks" },
    {
      kind: "text",
      text: `${count("pass")} meet the chosen rule, ${count("fail")} do not, ${count("cannot-check")} cannot be checked, ${count("not-applicable")} do not apply.`,
    },
    ...worst.map((c): Block => ({
      kind: "text",
      bullet: true,
      text: `Does not meet it: ${c.title}, ${showShareOfLimit(c.utilisation)} of the limit.`,
    })),
  ];
}
