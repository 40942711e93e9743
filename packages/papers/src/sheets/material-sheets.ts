import { planWaste } from "@causey/engine/fabrication";
import { M_PER_IN } from "@causey/engine/units";
import { money, partLength } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";
import { textSheet } from "./text-sheet.ts";

/** Dressed size behind a nominal one, in the plan's units; empty for what is not lumber. */
function actualSize(item: string, { tables, plan }: PaperContext): string {
  const size = tables.sizes.find((s) => s.id === item);
  if (!size) return "";
  const inches = [size.thickness_in, size.width_in];
  return plan.units === "us"
    ? `${inches.map((v) => Number(v.toFixed(3))).join(" x ")} in`
    : `${inches.map((v) => Math.round(v * M_PER_IN * 1000)).join(" x ")} mm`;
}

/** What of each size is bought and becomes no piece. */
function wasteWords(cutting: PaperContext["results"]["cutting"]): string {
  const shares = cutting.flatMap(({ size, plan }) => {
    const waste = planWaste(plan);
    return waste === null ? [] : [`${size} ${(waste * 100).toFixed(1)} %`];
  });
  return shares.length === 0 ? "" : `Left over or sawdust, of the bought length: ${shares.join(", ")}.`;
}

/** Spare modules by length; their timber is in the list above. */
function spareBlocks({ results, plan }: PaperContext): Block[] {
  const { spares } = results;
  const share = `${Number((plan.kit.spares_share * 100).toFixed(2))} %`;
  return [
    { kind: "head", text: "Spare modules" },
    {
      kind: "text",
      text: `${share} of each length, rounded up to whole modules; they are in the order and are built with the others.`,
    },
    {
      kind: "table",
      columns: [
        { head: "Module", share: 2 },
        { head: "In the walkway", share: 2, align: "end" },
        { head: "Spare, for the shelf", share: 2, align: "end" },
      ],
      rows: spares.map((s) => [partLength(s.length_m, plan), String(s.in_layout), String(s.spares)]),
    },
  ];
}

/** What is bought, with a place to tick it off on delivery. */
export const orderSheet = textSheet(
  {
    id: "order",
    title: "Order list",
    about:
      "Sticks and packs to buy, nominal and actual sizes, prices with their day; a box to tick on delivery.",
  },
  (context) => {
    const { results, plan } = context;
    const { cost } = results;
    return [
      {
        kind: "text",
        text: "Look at every grade stamp and treatment tag on delivery; keep the tags. Send back wet, split or wrongly tagged lots.",
      },
      {
        kind: "table",
        columns: [
          { head: "Item", share: 4.4 },
          { head: "Actual", share: 2 },
          { head: "Length", share: 1.8 },
          { head: "Buy", share: 0.9, align: "end" },
          { head: "Needed", share: 1.1, align: "end" },
          { head: "Each", share: 1.9, align: "end" },
          { head: "Amount", share: 2.2, align: "end" },
          { head: "Price of", share: 1.6 },
          { head: "Here", share: 0.8 },
        ],
        rows: [
          ...cost.order.map((l) => [
            l.description.includes(l.item) ? l.description : `${l.item} ${l.description}`,
            actualSize(l.item, context),
            l.length_mm === null ? "" : partLength(l.length_mm / 1000, plan),
            String(l.quantity),
            String(l.needed),
            money(l.unit_price, ""),
            money(l.amount, ""),
            l.price_date,
            "[  ]",
          ]),
          [
            `Sum, ${cost.currency}`,
            "",
            "",
            "",
            "",
            "",
            money(cost.lines.find((l) => l.line === "materials")?.amount ?? 0, ""),
            "",
            "",
          ],
        ],
        sums: [cost.order.length],
      },
      ...cost.unpriced.map((u): Block => ({
        kind: "text",
        bullet: true,
        text: `No price in the list: ${u.needed} of ${u.item}.`,
      })),
      ...spareBlocks(context),
      { kind: "head", text: "Cutting plan" },
      {
        kind: "text",
        text: `${wasteWords(results.cutting)} Saw cut ${partLength(plan.saw.kerf_mm / 1000, plan)}. Cut in this order, longest first; mark each piece with its use.`,
      },
      {
        kind: "table",
        columns: [
          { head: "Size", share: 1 },
          { head: "From", share: 1.6 },
          { head: "Sticks", share: 1, align: "end" },
          { head: "Cut into", share: 7 },
          { head: "Left", share: 1.8, align: "end" },
        ],
        rows: results.cutting.flatMap(({ size, plan: cutting }) =>
          cutting.patterns.map((p) => [
            size,
            partLength(p.stock_mm / 1000, plan),
            String(p.times),
            p.cuts.map((c) => `${c.count} of ${partLength(c.length_mm / 1000, plan)}`).join(" + "),
            partLength(p.offcut_mm / 1000, plan),
          ]),
        ),
      },
    ];
  },
);

/** The whole project's money by year and line. */
export const budgetSheet = textSheet(
  { id: "budget", title: "Budget", about: "Every line in the year it is paid, with low, middle and high." },
  ({ results }) => {
    const { budget } = results;
    const amount = (v: number): string => money(v, "").trim();
    const rows = budget.years.flatMap((year) => [
      ...budget.entries
        .filter((e) => e.year === year.year)
        .map((e) => [String(e.year), e.title, amount(e.low), amount(e.mid), amount(e.high), e.note]),
      [String(year.year), "Sum of the year", amount(year.low), amount(year.mid), amount(year.high), ""],
    ]);
    const sums = rows.flatMap((r, i) => (r[1] === "Sum of the year" ? [i] : []));
    return [
      { kind: "text", text: `Amounts in ${budget.currency}. Labour is a range, bought things have none.` },
      {
        kind: "table",
        columns: [
          { head: "Year", share: 1 },
          { head: "Line", share: 2.6 },
          { head: "Low", share: 1.8, align: "end" },
          { head: "Middle", share: 1.8, align: "end" },
          { head: "High", share: 1.8, align: "end" },
          { head: "Note", share: 5 },
        ],
        rows: [
          ...rows,
          ["", "The whole project", amount(budget.low), amount(budget.mid), amount(budget.high), ""],
        ],
        sums: [...sums, rows.length],
      },
      {
        kind: "rows",
        rows: [
          [
            "To be paid, volunteers' hours left out",
            `${budget.currency} ${amount(budget.cash)} (${amount(budget.cash_low)} to ${amount(budget.cash_high)})`,
          ],
          [
            "Volunteers' hours, and what they count for",
            `${budget.donated_hours.toFixed(0)} h, ${budget.currency} ${amount(budget.donated_value)} (${budget.donated_hours_low.toFixed(0)} to ${budget.donated_hours_high.toFixed(0)} h, ${amount(budget.donated_value_low)} to ${amount(budget.donated_value_high)})`,
          ],
          ...(
            [
              ["Per foot", budget.per_foot],
              ["Per metre", budget.per_metre],
              ["Per visit", budget.per_visit],
              ["Per year of service", budget.per_year],
            ] as const
          ).flatMap(([label, value]) =>
            value === null ? [] : [[label, `${budget.currency} ${amount(value)}`] as const],
          ),
        ],
      },
      ...budget.warnings.map((text): Block => ({ kind: "text", text, bullet: true })),
    ];
  },
);
