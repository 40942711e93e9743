import type { Trace } from "../formula/index.ts";
import { toCents, type OrderLine, type Unpriced } from "../materials/index.ts";
import { DomainError, qty } from "../units/index.ts";
import { hoursAtRate, shareOfAmount } from "./money-formulas.ts";
import { priceSources } from "./price-sources.ts";
import type { Cost, CostLine, LabourLine } from "./types.ts";

/** The plan's money decisions; `Plan["money"]` fits. */
export interface MoneyTerms {
  /** ISO 4217 code; every price of the order must be in it. */
  readonly currency: string;
  readonly labour_per_hour: number;
  readonly contingency_share: number;
  readonly tax_share: number;
  readonly delivery: number;
  readonly removal_share: number;
  readonly disposal: number;
}

/**
 * The cost of a plan, line by line; the total is the sum of the lines to the cent.
 *
 * plan      its `money` decisions
 * order     order lines, amounts to the cent, all in the plan's currency
 * unpriced  what has no price: then the total is not the whole, and the materials line says so
 * labour    laying and removal, from `labourHours`; the middle hours are priced
 * trace     receives the working
 *
 * Contingency is a share of the sum of the other lines. Tax is on materials alone. Throws `DomainError` for
 * negative or unknown money.
 */
export function costOf(
  plan: { readonly money: MoneyTerms },
  order: readonly OrderLine[],
  unpriced: readonly Unpriced[],
  labour: readonly LabourLine[],
  trace?: Trace,
): Cost {
  const { money } = plan;
  for (const [key, value] of Object.entries(money))
    if (typeof value === "number" && !(value >= 0)) throw new DomainError("negative-money", { [key]: value });
  const materials = sum(order.map((line) => line.amount));
  const share = (s: number, of: number): number =>
    toCents(shareOfAmount({ s: qty(s, "1"), B: qty(of, "money") }, trace));
  const others = [
    line("materials", "Materials", materials, unpricedNote(unpriced)),
    line("tax", "Tax", share(money.tax_share, materials), `${percent(money.tax_share)} of the materials.`),
    line("delivery", "Delivery", toCents(money.delivery), "As the plan says."),
    workLine("labour", "Labour", "laying", labour, money, trace),
    workLine("removal", "Removal", "removal", labour, money, trace),
    line("disposal", "Disposal", toCents(money.disposal), "As the plan says."),
  ];
  const before = sum(others.map((l) => l.amount));
  const contingency = line(
    "contingency",
    "Contingency",
    share(money.contingency_share, before),
    `${percent(money.contingency_share)} of the lines above.`,
  );
  const lines = [...others, contingency];
  return {
    currency: money.currency,
    order,
    unpriced,
    price_sources: priceSources(order),
    labour,
    lines,
    total: sum(lines.map((l) => l.amount)),
  };
}

/** Adds whole cents, so that the total is exactly what its lines show. */
const sum = (amounts: readonly number[]): number =>
  amounts.reduce((cents, amount) => cents + Math.round(amount * 100), 0) / 100;

const line = (id: CostLine["line"], title: string, amount: number, note: string): CostLine => ({
  line: id,
  title,
  amount,
  note,
});

const percent = (share: number): string => `${Number((share * 100).toFixed(2))} %`;

const unpricedNote = (unpriced: readonly Unpriced[]): string =>
  unpriced.length === 0
    ? "The order list, each line rounded to the cent."
    : `${unpriced.length} ${unpriced.length === 1 ? "item has" : "items have"} no price, so that this is not the whole: ${unpriced.map((u) => u.item).join("; ")}.`;

function workLine(
  id: "labour" | "removal",
  title: string,
  work: LabourLine["work"],
  labour: readonly LabourLine[],
  money: MoneyTerms,
  trace?: Trace,
): CostLine {
  const lines = labour.filter((l) => l.work === work);
  const total = (key: "low_h" | "mid_h" | "high_h"): number => lines.reduce((h, l) => h + l[key], 0);
  const hours = total("mid_h");
  const amount = toCents(
    hoursAtRate({ t: qty(hours, "h"), r: qty(money.labour_per_hour, "money") }, trace, title),
  );
  const range = `${hours.toFixed(1)} person-hours (${total("low_h").toFixed(1)} to ${total("high_h").toFixed(1)}) at ${money.labour_per_hour} ${money.currency} an hour.`;
  return line(id, title, amount, id === "removal" && amount === 0 ? `${removalWarning} ${range}` : range);
}

const removalWarning =
  "Removal is priced at zero: a temporary walkway must come out again, so set hours or a rate for it.";
