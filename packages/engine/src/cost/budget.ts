import type { Trace } from "../formula/index.ts";
import { toCents, type Price } from "../materials/index.ts";
import { M_PER_FT, qty } from "../units/index.ts";
import { inspectionHours, jigHours, monitoringMoney, repairMoney, visitCount } from "./budget-formulas.ts";
import type { Budget, BudgetEntry, BudgetYear } from "./budget-types.ts";
import type { MoneyTerms } from "./cost-of.ts";
import { daysBetween, daysByYear } from "./day-count.ts";
import { hoursAtRate, shareOfAmount } from "./money-formulas.ts";
import { oldPrices } from "./old-prices.ts";
import type { Cost, LabourLine } from "./types.ts";

/** The money decisions of the later years; `Plan["money"]` fits. */
export interface BudgetTerms extends MoneyTerms {
  readonly donated_share: number;
  readonly donated_per_hour: number;
  readonly jig_hours_per_module: number;
  readonly inspections_per_year: number;
  readonly hours_per_inspection: number;
  readonly repair_share_per_year: number;
  /** Left out = nothing is planned for it, which is warned about. */
  readonly monitoring_per_year?: number;
  readonly price_age_days: number;
}

export interface BudgetInput {
  readonly money: BudgetTerms;
  readonly cost: Cost;
  /** Modules and platforms to be built, spares with them. */
  readonly built: number;
  readonly length_m: number;
  /** ISO days: laying begins and ends, and the walkway is out. */
  readonly laying: { readonly from: string; readonly to: string };
  readonly out: string;
  /** Null = no last day: counted to the day the walkway is out. */
  readonly visits: readonly {
    readonly per_year: number;
    readonly from: string;
    readonly to: string | null;
  }[];
  readonly prices: readonly Price[];
  /** Day that the prices' age is held against. */
  readonly on: string;
}

/**
 * The budget by line and calendar year: the cost of the walkway (the very lines of `cost`), and what its years add:
 * work in the jig, inspection rounds, repair, monitoring, and the contingency on these. `mid` is exactly the sum of its entries.
 *
 * Labour has a range, bought things have none. Volunteers' hours are a share of all hours: their value counts at the
 * plan's rate, and `cash` is what remains to be paid; both with the range of the hours. A season in which nobody works still has its inspection rounds.
 */
export function budgetOf(input: BudgetInput, trace?: Trace): Budget {
  const entries = withContingency([...costEntries(input), ...yearEntries(input, trace)], input.money);
  const sum = (key: "low" | "mid" | "high"): number => addCents(entries.map((e) => e[key]));
  const mid = sum("mid");
  const days = daysBetween(input.laying.from, input.out) + 1;
  const visits = input.visits.reduce((n, v) => n + visitsOf(v, input.out, trace), 0);
  const per = (count: number): number | null => (count > 0 ? mid / count : null);
  return {
    currency: input.money.currency,
    entries,
    years: byYear(entries),
    low: sum("low"),
    mid,
    high: sum("high"),
    ...donatedOf(entries, input.money, { low: sum("low"), mid, high: sum("high") }),
    days,
    visits,
    per_metre: per(input.length_m),
    per_foot: per(input.length_m / M_PER_FT),
    per_visit: per(visits),
    per_year: per(days / 365),
    warnings: warningsOf(input, entries),
    old_prices: oldPrices(input.prices, input.on, input.money.price_age_days, input.cost.order),
  };
}

/** Volunteers' hours, their value and the money left to be paid, each low, middle and high. */
function donatedOf(
  entries: readonly BudgetEntry[],
  money: BudgetTerms,
  whole: Readonly<Record<"low" | "mid" | "high", number>>,
) {
  const hours = (key: "hours_low" | "hours" | "hours_high"): number =>
    entries.reduce((h, e) => h + e[key], 0) * money.donated_share;
  const [low, mid, high] = [hours("hours_low"), hours("hours"), hours("hours_high")];
  const value = (h: number): number => toCents(h * money.donated_per_hour);
  const cash = (all: number, h: number): number => toCents(all - h * money.labour_per_hour);
  return {
    donated_hours: mid,
    donated_value: value(mid),
    cash: cash(whole.mid, mid),
    donated_hours_low: low,
    donated_hours_high: high,
    donated_value_low: value(low),
    donated_value_high: value(high),
    cash_low: cash(whole.low, low),
    cash_high: cash(whole.high, high),
  };
}

const addCents = (amounts: readonly number[]): number =>
  amounts.reduce((cents, amount) => cents + Math.round(amount * 100), 0) / 100;

/** The lines of the cost, each in the year it is paid; only labour has a range. */
function costEntries({ cost, money, laying, out }: BudgetInput): BudgetEntry[] {
  const [first, last] = [Number(laying.from.slice(0, 4)), Number(out.slice(0, 4))];
  const works: Partial<Record<string, LabourLine["work"]>> = { labour: "laying", removal: "removal" };
  return cost.lines
    .filter((line) => line.line !== "contingency")
    .map((line) => {
      const year = line.line === "removal" || line.line === "disposal" ? last : first;
      const labour = cost.labour.filter((l) => l.work === works[line.line]);
      const at = (key: "low_h" | "mid_h" | "high_h"): number => labour.reduce((h, l) => h + l[key], 0);
      const amount = (hours: number): number => toCents(hours * money.labour_per_hour);
      const isWork = works[line.line] !== undefined;
      return {
        id: line.line,
        title: line.title,
        year,
        low: isWork ? amount(at("low_h")) : line.amount,
        mid: line.amount,
        high: isWork ? amount(at("high_h")) : line.amount,
        hours: at("mid_h"),
        donated_hours: at("mid_h") * money.donated_share,
        hours_low: at("low_h"),
        hours_high: at("high_h"),
        note: line.note,
      };
    });
}

/** Jig work in the year of laying; inspection, repair and monitoring in each year that the walkway stands. */
function yearEntries(input: BudgetInput, trace?: Trace): BudgetEntry[] {
  const { money, built, laying, out, cost } = input;
  const materials = cost.lines.find((l) => l.line === "materials")?.amount ?? 0;
  const jig = jigHours({ n: qty(built, "1"), r: qty(money.jig_hours_per_module, "h") }, trace);
  const first = Number(laying.from.slice(0, 4));
  return [
    work("jig", "Work in the jig", first, jig, money, `${built} modules and platforms.`, trace),
    ...daysByYear(laying.to, out).flatMap(({ year, days }) => {
      const d = qty(days, "1");
      const rounds = inspectionHours(
        { n: qty(money.inspections_per_year, "1"), r: qty(money.hours_per_inspection, "h"), d },
        trace,
        String(year),
      );
      const repair = repairMoney(
        { s: qty(money.repair_share_per_year, "1"), M: qty(materials, "money"), d },
        trace,
        String(year),
      );
      const stands = `Standing ${days} days of ${year}.`;
      return [
        work("inspection", "Inspection rounds", year, rounds, money, stands, trace),
        bought("repair", "Materials for repair", year, toCents(repair), stands),
        bought(
          "monitoring",
          "Monitoring of plants and ground",
          year,
          monitoringIn(year, days, money, trace),
          stands,
        ),
      ];
    }),
  ];
}

function monitoringIn(year: number, days: number, money: BudgetTerms, trace?: Trace): number {
  const terms = { m: qty(money.monitoring_per_year ?? 0, "money"), d: qty(days, "1") };
  return toCents(monitoringMoney(terms, trace, String(year)));
}

function work(
  id: string,
  title: string,
  year: number,
  hours: number,
  money: BudgetTerms,
  note: string,
  trace?: Trace,
): BudgetEntry {
  const amount = toCents(
    hoursAtRate({ t: qty(hours, "h"), r: qty(money.labour_per_hour, "money") }, trace, `${title}, ${year}`),
  );
  return {
    ...bought(id, title, year, amount, `${hours.toFixed(1)} person-hours. ${note}`),
    hours,
    donated_hours: hours * money.donated_share,
    hours_low: hours,
    hours_high: hours,
  };
}

const bought = (id: string, title: string, year: number, amount: number, note: string): BudgetEntry => ({
  id,
  title,
  year,
  low: amount,
  mid: amount,
  high: amount,
  hours: 0,
  donated_hours: 0,
  hours_low: 0,
  hours_high: 0,
  note,
});

/** One entry of contingency in each year: the plan's share of that year's other entries. */
function withContingency(entries: readonly BudgetEntry[], money: BudgetTerms): BudgetEntry[] {
  const share = (amount: number): number =>
    toCents(shareOfAmount({ s: qty(money.contingency_share, "1"), B: qty(amount, "money") }));
  const reserves = byYear(entries).map((y): BudgetEntry => ({
    id: "contingency",
    title: "Contingency",
    year: y.year,
    low: share(y.low),
    mid: share(y.mid),
    high: share(y.high),
    hours: 0,
    donated_hours: 0,
    hours_low: 0,
    hours_high: 0,
    note: `${Number((money.contingency_share * 100).toFixed(2))} % of the lines of ${y.year}.`,
  }));
  return [...entries, ...reserves].toSorted((a, b) => a.year - b.year);
}

function byYear(entries: readonly BudgetEntry[]): BudgetYear[] {
  const years = [...new Set(entries.map((e) => e.year))].toSorted((a, b) => a - b);
  return years.map((year) => {
    const mine = entries.filter((e) => e.year === year);
    const sum = (key: "low" | "mid" | "high"): number => addCents(mine.map((e) => e[key]));
    return { year, low: sum("low"), mid: sum("mid"), high: sum("high") };
  });
}

function visitsOf(visit: BudgetInput["visits"][number], out: string, trace?: Trace): number {
  const last = visit.to === null || visit.to > out ? out : visit.to;
  const days = Math.max(0, daysBetween(visit.from, last) + 1);
  return visitCount({ n: qty(visit.per_year, "1"), d: qty(days, "1") }, trace);
}

function warningsOf({ money, out, visits }: BudgetInput, entries: readonly BudgetEntry[]): string[] {
  const zero = (id: string): boolean =>
    entries.filter((e) => e.id === id).every((e) => e.mid === 0 && e.high === 0);
  return [
    ...(zero("removal")
      ? ["Removal stands at zero: a temporary walkway must come out again, and somebody pays for it."]
      : []),
    ...(zero("jig")
      ? ["No hours for work in the jig: building the modules is in no sum, unless they come ready-made."]
      : []),
    ...(zero("inspection")
      ? [
          "No inspection rounds are budgeted: give their number and hours (common practice is monthly in season).",
        ]
      : []),
    ...(zero("repair") ? ["No repair is budgeted."] : []),
    ...(zero("monitoring")
      ? ["No monitoring is budgeted: permits often ask for it, after removal too."]
      : []),
    ...(zero("disposal") ? ["Disposal stands at zero: what cannot be used again must go somewhere."] : []),
    ...(money.contingency_share === 0 ? ["There is no contingency."] : []),
    ...(visits.some((v) => v.to === null)
      ? [`A visit has no last day: visits are counted to ${out}, the day the walkway is out.`]
      : []),
  ];
}
