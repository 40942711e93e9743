import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Price } from "../materials/index.ts";
import { budgetOf, type BudgetInput } from "./budget.ts";
import { daysByYear } from "./day-count.ts";
import type { Cost } from "./types.ts";

const money = {
  currency: "USD",
  labour_per_hour: 30,
  contingency_share: 0.1,
  tax_share: 0.05,
  delivery: 100,
  removal_share: 0.5,
  disposal: 40,
  donated_share: 0.5,
  donated_per_hour: 32,
  jig_hours_per_module: 2,
  inspections_per_year: 12,
  hours_per_inspection: 3,
  repair_share_per_year: 0.1,
  monitoring_per_year: 730,
  price_age_days: 180,
};
const cost: Cost = {
  currency: "USD",
  order: [],
  unpriced: [],
  price_sources: [],
  labour: [
    { work: "laying", length_m: 60, low_h: 20, mid_h: 30, high_h: 60, note: "" },
    { work: "removal", length_m: 60, low_h: 10, mid_h: 15, high_h: 30, note: "" },
  ],
  lines: [
    { line: "materials", title: "Materials", amount: 2000, note: "" },
    { line: "tax", title: "Tax", amount: 100, note: "" },
    { line: "delivery", title: "Delivery", amount: 100, note: "" },
    { line: "labour", title: "Labour", amount: 900, note: "" },
    { line: "removal", title: "Removal", amount: 450, note: "" },
    { line: "disposal", title: "Disposal", amount: 40, note: "" },
    { line: "contingency", title: "Contingency", amount: 359, note: "" },
  ],
  total: 3949,
};
const input: BudgetInput = {
  money,
  cost,
  built: 20,
  length_m: 60.96,
  laying: { from: "2027-04-01", to: "2027-04-10" },
  out: "2028-10-31",
  visits: [{ per_year: 73, from: "2027-04-11", to: null }],
  prices: [],
  on: "2027-01-01",
};

describe("the budget of a walkway that stands from April 2027 to October 2028, by hand", () => {
  const b = budgetOf(input);
  const at = (id: string, year: number) => b.entries.find((e) => e.id === id && e.year === year)!;

  test("days by calendar year", () => {
    expect(daysByYear("2027-04-10", "2028-10-31")).toEqual([
      { year: 2027, days: 266 },
      { year: 2028, days: 305 },
    ]);
  });

  test("each line in its year, to the cent", () => {
    // 20 x 2 h x 30; 12 x 3 h x 266/365 x 30; 0.1 x 2000 x 305/365; 0.1 of the year's lines.
    expect(at("jig", 2027).mid).toBe(1200);
    expect(at("inspection", 2027).mid).toBe(787.07);
    expect(at("repair", 2028).mid).toBe(167.12);
    expect(at("removal", 2028)).toMatchObject({ low: 300, mid: 450, high: 900, donated_hours: 7.5 });
    expect(at("monitoring", 2027).mid).toBe(2 * 266);
    const lines2027 = 2000 + 100 + 100 + 900 + 1200 + 787.07 + 145.75 + 532;
    expect(at("contingency", 2027).mid).toBe(Math.round(lines2027 * 10) / 100);
  });

  test("years and whole are exact sums of the entries", () => {
    const cents = (values: readonly number[]): number => values.reduce((s, v) => s + Math.round(v * 100), 0);
    expect(Math.round(b.mid * 100)).toBe(cents(b.entries.map((e) => e.mid)));
    expect(Math.round(b.mid * 100)).toBe(cents(b.years.map((y) => y.mid)));
    expect(b.low).toBeLessThan(b.mid);
    expect(b.mid).toBeLessThan(b.high);
  });

  test("volunteers' hours, cash, and the cost of a foot, metre, visit and year", () => {
    const hours = 30 + 15 + 40 + (36 * (266 + 305)) / 365;
    expect(b.donated_hours).toBeCloseTo(hours / 2, 9);
    expect(b.donated_value).toBe(Math.round((hours / 2) * 32 * 100) / 100);
    expect(b.cash).toBe(Math.round((b.mid - (hours / 2) * 30) * 100) / 100);
    // Laying 20 to 60 h, removal 10 to 30 h; the other hours have no range.
    const others = 40 + (36 * (266 + 305)) / 365;
    expect(b.donated_hours_low).toBeCloseTo((30 + others) / 2, 9);
    expect(b.donated_hours_high).toBeCloseTo((90 + others) / 2, 9);
    expect(b.donated_value_high).toBe(Math.round(((90 + others) / 2) * 32 * 100) / 100);
    expect(b.cash_low).toBe(Math.round((b.low - ((30 + others) / 2) * 30) * 100) / 100);
    expect(b.per_metre! / b.per_foot!).toBeCloseTo(1 / 0.3048, 9);
    expect(b.visits).toBeCloseTo((73 * 570) / 365, 9);
    expect(b.per_visit).toBeCloseTo(b.mid / 114, 9);
    expect(b.days).toBe(580);
    expect(b.per_year).toBeCloseTo((b.mid * 365) / 580, 9);
    expect(b.warnings).toEqual([expect.stringContaining("no last day")]);
  });
});

describe("warnings", () => {
  test("a removal or disposal at zero, no rounds, no repair, no monitoring, no contingency", () => {
    const { monitoring_per_year: _, ...rest } = money;
    const none = { ...rest, inspections_per_year: 0, repair_share_per_year: 0, contingency_share: 0 };
    const free: Cost = {
      ...cost,
      labour: cost.labour.filter((l) => l.work !== "removal"),
      lines: cost.lines.map((l) => (["removal", "disposal"].includes(l.line) ? { ...l, amount: 0 } : l)),
    };
    const { warnings } = budgetOf({ ...input, money: none, cost: free, visits: [] });
    expect(warnings.map((w) => w.split(":")[0])).toEqual([
      "Removal stands at zero",
      "No inspection rounds are budgeted",
      "No repair is budgeted.",
      "No monitoring is budgeted",
      "Disposal stands at zero",
      "There is no contingency.",
    ]);
  });

  test("a price is old from the day after its age is over", () => {
    const price = (item: string, date: string): Price => ({
      item,
      description: item,
      length_mm: null,
      pack: 1,
      price: 1,
      currency: "USD",
      date,
      source: "yard",
    });
    const prices = [price("a", "2026-07-05"), price("b", "2026-07-04"), price("b", "2026-06-01")];
    expect(budgetOf({ ...input, prices }).old_prices).toEqual([
      { item: "b", date: "2026-06-01", age_days: 214, order_lines: 0 },
    ]);
  });
});

test("more hours, a higher rate or a longer stand never make the budget smaller; nothing is walked free", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 60 }),
      fc.integer({ min: 0, max: 8 }),
      fc.integer({ min: 0, max: 600 }),
      (rounds, hours, more) => {
        const terms = { ...money, inspections_per_year: rounds, hours_per_inspection: hours };
        const out = new Date(Date.UTC(2028, 9, 31) + more * 86_400_000).toISOString().slice(0, 10);
        const small = budgetOf({ ...input, money: terms });
        expect(budgetOf({ ...input, money: terms, out }).mid).toBeGreaterThanOrEqual(small.mid);
        const dearer = { ...terms, inspections_per_year: rounds + 1 };
        expect(budgetOf({ ...input, money: dearer }).mid).toBeGreaterThanOrEqual(small.mid);
        expect(budgetOf({ ...input, length_m: 0, visits: [] })).toMatchObject({
          per_metre: null,
          per_visit: null,
        });
      },
    ),
    { numRuns: 60 },
  );
});
