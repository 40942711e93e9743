// Rows of the feature table on money. Productivity: published work days (2 people laid 90 ft of ready-made units in 6 h,
// 5 to 10 ft per person-hour around them); the rest is the plan's own rates, common practice, no source.
import { tables } from "@causey/data/tables";
import { resultFiles } from "@causey/io/results";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { csvRows } from "../support/csv-rows.ts";
import { deriveLane, laneFiles, sheetTexts, type Derived } from "../support/lane-plan.ts";
import { readWholePlan } from "@causey/runtime/derive";

const money = { monitoring_per_year: 730 };
let d: Derived;
beforeAll(async () => {
  d = await deriveLane({ money });
});
const flat = (texts: readonly string[]): string => texts.join(" ").replaceAll(/\s+/g, " ");
const cents = (values: readonly number[]): number => values.reduce((s, v) => s + Math.round(v * 100), 0);

describe("47 budget lines with removal, disposal, monitoring and contingency, by year", () => {
  test("every line stands in its years, and the years add up to the whole, to the cent (budget.csv)", () => {
    const rows = csvRows(resultFiles(d.results, d.plan).get("budget.csv")!);
    const yearsOf = (line: string): string[] =>
      rows.filter((r) => r["line"] === line && Number(r["mid_USD"]) > 0).map((r) => r["year"]!);
    expect(yearsOf("removal")).toEqual(["2029"]);
    expect(yearsOf("disposal")).toEqual(["2029"]);
    for (const line of ["monitoring", "inspection", "contingency"])
      expect(yearsOf(line), line).toEqual(["2027", "2028", "2029"]);
    const { budget } = d.results;
    for (const key of ["low", "mid", "high"] as const) {
      const column = rows.map((r) => Number(r[`${key}_USD`]));
      expect(cents(column)).toBe(Math.round(budget[key] * 100));
      expect(cents(budget.years.map((y) => y[key]))).toBe(Math.round(budget[key] * 100));
    }
    // 730 a year is 2 a day: the walkway stands 365 days of the second year, and 2028 is a leap year of 366.
    expect(rows.find((r) => r["line"] === "monitoring" && r["year"] === "2028")!["mid_USD"]).toBe("732");
  });

  test("the budget sheet and its years name them", () => {
    const texts = sheetTexts(d, "budget");
    for (const title of ["Removal", "Disposal", "Monitoring of plants and ground", "Contingency"])
      expect(flat(texts)).toContain(title);
    expect(texts.filter((t) => t === "Sum of the year")).toHaveLength(3);
  });

  test("a removal at zero is warned of in the budget, on its sheet and in the summary; with hours it is not", async () => {
    const warning = "Removal stands at zero: a temporary walkway must come out again";
    const none = await deriveLane({ money: { ...money, removal_share: 0 } });
    expect(none.results.budget.warnings.filter((w) => w.startsWith(warning))).toHaveLength(1);
    for (const sheet of ["budget", "summary"]) expect(flat(sheetTexts(none, sheet))).toContain(warning);
    expect(d.results.budget.warnings).toEqual([]);
    expect(flat(sheetTexts(d, "summary"))).not.toContain("Removal stands at zero");
  });

  test.each([
    ["monitoring", { monitoring_per_year: 0 }, "No monitoring is budgeted"],
    ["disposal", { disposal: 0 }, "Disposal stands at zero"],
    ["contingency", { contingency_share: 0 }, "There is no contingency"],
  ])("%s at zero is warned of too", async (_, zero, words) => {
    const { results } = await deriveLane({ money: { ...money, ...zero } });
    expect(results.budget.warnings.map((w) => w.startsWith(words))).toEqual([true]);
  });
});

describe("48 a price list with date, currency, unit, tax and source; over 180 days is flagged", () => {
  const list = readFileSync(resolve(import.meta.dirname, "../../examples/salt-meadow/prices.csv"), "utf8");
  const dated = (day: string): string => list.replaceAll(/,\d{4}-\d\d-\d\d,/g, `,${day},`);
  const oldOn = async (priced: string): Promise<Derived> =>
    deriveLane({ prices: dated(priced), papers: { date: "2027-06-30" } });

  test("180 days before the day of the papers is not old, 181 is (30 June less 180 days: 1 January)", async () => {
    const fresh = await oldOn("2027-01-01");
    expect(fresh.results.budget.old_prices).toEqual([]);
    const old = await oldOn("2026-12-31");
    const items = new Set(csvRows(new TextEncoder().encode(list)).map((r) => r["item"]));
    expect(new Set(old.results.budget.old_prices.map((p) => p.item))).toEqual(items);
    expect(old.results.budget.old_prices.every((p) => p.age_days === 181)).toBe(true);
    expect(flat(sheetTexts(old, "summary"))).toMatch(
      /order.s \d+ lines rest on prices older than 180 days .*: ask the yard again/,
    );
    expect(flat(sheetTexts(fresh, "summary"))).not.toContain("prices older than");
  });

  test("every order line shows the date of its price, by the stick or the pack; tax is a share of the materials", async () => {
    const { results } = await oldOn("2027-01-01");
    expect(results.cost.order.length).toBeGreaterThan(5);
    for (const line of results.cost.order) expect(line.price_date).toBe("2027-01-01");
    const screws = results.cost.order.find((l) => l.item === "screw-10x3")!;
    expect(screws.quantity).toBe(Math.ceil(screws.needed / 100));
    const amount = (id: string): number => results.cost.lines.find((l) => l.line === id)!.amount;
    expect(amount("tax")).toBe(Math.round(amount("materials") * 0.05 * 100) / 100);
  });

  test.each(["currency", "date", "source"])(
    "a list without the column %s is refused by its name",
    async (column) => {
      const prices = list.replace(column, "left_out");
      const read = await readWholePlan(laneFiles({ prices }));
      expect(read.ok).toBe(false);
      expect(!read.ok && read.problems.some((p) => p.message.includes(`"${column}"`))).toBe(true);
    },
  );
});

describe("49 donated labour at the stated rate, hours from productivity: low, middle and high totals", () => {
  test("hours are the length over 10, 7.5 and 5 ft per person-hour (published work days; carry of 140 m)", () => {
    const { budget, cost } = d.results;
    const built_ft = cost.labour[0]!.length_m / 0.3048;
    const laid = [built_ft / 10, built_ft / 7.5, built_ft / 5];
    const entry = budget.entries.find((e) => e.id === "labour")!;
    [entry.hours_low, entry.hours, entry.hours_high].forEach((h, i) => expect(h).toBeCloseTo(laid[i]!, 6));
    expect([tables.labour.ready_made.low_ft_per_h, tables.labour.ready_made.high_ft_per_h]).toEqual([5, 10]);
    // Removal is 0.6 of it; jig and rounds have no range: half of all hours are donated, at 32.
    const others = budget.entries
      .filter((e) => ["jig", "inspection"].includes(e.id))
      .reduce((h, e) => h + e.hours, 0);
    const donated = laid.map((h) => (h * 1.6 + others) / 2);
    const { donated_hours_low, donated_hours, donated_hours_high } = budget;
    [donated_hours_low, donated_hours, donated_hours_high].forEach((h, i) =>
      expect(h).toBeCloseTo(donated[i]!, 6),
    );
    [budget.donated_value_low, budget.donated_value, budget.donated_value_high].forEach((v, i) =>
      expect(v).toBeCloseTo(donated[i]! * 32, 1),
    );
    expect(budget.donated_hours_low).toBeLessThan(budget.donated_hours);
    expect(budget.donated_hours).toBeLessThan(budget.donated_hours_high);
    const labour = laid.map((h) => h * 1.6 * 30 * 1.1);
    expect(budget.high - budget.low).toBeCloseTo(labour[2]! - labour[0]!, 0);
    // What is left to be paid leaves out the donated half of the hours at the paid rate of 30.
    expect(budget.cash_low).toBeCloseTo(budget.low - donated[0]! * 30, 1);
    expect(budget.cash_high).toBeCloseTo(budget.high - donated[2]! * 30, 1);
  });

  test("the budget sheet shows hours and value with their range, and low, middle, high of the whole", () => {
    const { budget } = d.results;
    const texts = flat(sheetTexts(d, "budget"));
    const show = (v: number): string =>
      v.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
    expect(texts).toContain(
      `(${budget.donated_hours_low.toFixed(0)} to ${budget.donated_hours_high.toFixed(0)} h, ${show(budget.donated_value_low)} to ${show(budget.donated_value_high)})`,
    );
    expect(texts).toContain(`The whole project ${show(budget.low)} ${show(budget.mid)} ${show(budget.high)}`);
  });
});

describe("50 cost per foot and metre, per visit, per year of service", () => {
  test("a metre costs 3.28084 times a foot (1 ft = 0.3048 m by definition)", () => {
    const { per_metre, per_foot } = d.results.budget;
    expect(per_metre! / per_foot!).toBeCloseTo(3.28084, 5);
    expect(per_foot! / per_metre!).toBeCloseTo(0.3048, 12);
  });

  test("each is the budget over length, visits and years, and each stands on the budget sheet", () => {
    const { budget, evaluation } = d.results;
    expect(budget.per_metre! * evaluation.length_m).toBeCloseTo(budget.mid, 6);
    // 24 May 2027 to 23 May 2029 is 731 days, with a leap day: 52 visits a year of 365 days.
    expect(budget.visits).toBeCloseTo((52 * 731) / 365, 9);
    expect(budget.per_visit! * budget.visits).toBeCloseTo(budget.mid, 6);
    // Laid from 10 May 2027, out on 31 May 2029: both days counted, 753 days.
    expect(budget.per_year! * (753 / 365)).toBeCloseTo(budget.mid, 6);
    const texts = flat(sheetTexts(d, "budget"));
    const show = (v: number): string =>
      `USD ${v.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
    const rows = [
      ["Per foot", budget.per_foot],
      ["Per metre", budget.per_metre],
      ["Per visit", budget.per_visit],
      ["Per year of service", budget.per_year],
    ] as const;
    for (const [label, value] of rows) expect(texts).toContain(`${label} ${show(value!)}`);
  });

  test("feet or metres on the page change words, not the values", async () => {
    const metric = await deriveLane({ money, units: "metric" });
    expect(metric.results.budget).toEqual(d.results.budget);
    const per = ({ results }: Derived): number =>
      results.figures.find((f) => f.id === "cost-per-length")!.value;
    expect(per(metric) / per(d)).toBeCloseTo(3.28084, 5);
  });
});
