import { describe, expect, test } from "vitest";
import { commonPracticeKit as kit } from "../../test/support/common-practice-kit.ts";
import { yardPrices } from "../../test/support/yard-prices.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { labourHours } from "../laying/index.ts";
import type { OrderLine } from "../materials/index.ts";
import { costOf, type MoneyTerms } from "./cost-of.ts";
import { partCosts } from "./part-costs.ts";
import type { Cost } from "./types.ts";

const money: MoneyTerms = {
  currency: "USD",
  labour_per_hour: 33.35,
  contingency_share: 0.15,
  tax_share: 0.0625,
  delivery: 75,
  removal_share: 0.5,
  disposal: 40,
};
const line = (amount: number): OrderLine => ({
  item: "2x4",
  description: "2x4",
  length_mm: 2438.4,
  quantity: 1,
  needed: 1,
  unit_price: amount,
  amount,
  price_date: "2027-02-01",
  price_source: "Quillet Yard, counter list",
});
const labour = labourHours(
  { length_m: 27.432, carry_m: 100, removal_share: money.removal_share },
  yardTables.labour,
);
const amounts = (cost: Cost): Record<string, number> =>
  Object.fromEntries(cost.lines.map((l) => [l.line, l.amount]));

describe("costOf", () => {
  test("each line by hand, the total their exact sum", () => {
    const cost = costOf({ money }, [line(101.1), line(33.33)], [], labour);
    expect(amounts(cost)).toEqual({
      materials: 134.43,
      tax: 8.4,
      delivery: 75,
      labour: 400.2,
      removal: 200.1,
      disposal: 40,
      contingency: 128.72,
    });
    expect(cost.total).toBe(986.85);
    expect(cost.lines.reduce((c, l) => c + Math.round(l.amount * 100), 0)).toBe(98_685);
  });

  test("removal at zero warns, since a temporary walkway must come out again", () => {
    const free = labourHours({ length_m: 27, carry_m: 100, removal_share: 0 }, yardTables.labour);
    const note = costOf({ money }, [], [], free).lines.find((l) => l.line === "removal")!.note;
    expect(note).toContain("priced at zero");
    expect(costOf({ money }, [], [], labour).lines.find((l) => l.line === "removal")!.note).not.toContain(
      "priced at zero",
    );
  });

  test("what has no price is named in the materials line, so that the total never looks whole", () => {
    const cost = costOf({ money }, [], [{ item: "4x4, 600 mm", needed: 2 }], labour);
    expect(cost.lines[0]!.note).toContain("4x4, 600 mm");
    expect(cost.lines[0]!.note).toContain("not the whole");
    expect(cost.unpriced).toHaveLength(1);
  });

  test("labour notes carry the range, and negative money is a broken promise", () => {
    const note = costOf({ money }, [], [], labour).lines.find((l) => l.line === "labour")!.note;
    expect(note).toBe("12.0 person-hours (9.0 to 18.0) at 33.35 USD an hour.");
    expect(() => costOf({ money: { ...money, delivery: -5 } }, [], [], labour)).toThrow("negative-money");
  });
});

describe("partCosts", () => {
  test("8 ft module by hand: each piece at the cheapest stick by length, screws and clips at the cheapest pack", () => {
    const costs = partCosts(kit, yardPrices, yardTables.sizes);
    const perMm = (item: string): number =>
      Math.min(
        ...yardPrices.filter((p) => p.item === item).map((p) => p.price / Math.floor(p.length_mm! + 1e-6)),
      );
    const timber = (2 * 2438 + 3 * 482.6) * perMm("2x4") + 482.6 * (perMm("2x6") + perMm("2x10"));
    const counted = 20 * 0.1095 + 8 * (9.99 / 50) + 2 * 21.4;
    expect(costs.module(2438.4)).toBeCloseTo(timber + counted, 6);
    expect(costs.missing).toEqual([]);
  });

  test("a missing price makes every part that needs it unknown, and is named once", () => {
    const bare = yardPrices.filter((p) => p.item !== "2x10" && p.item !== "mesh-clip");
    const costs = partCosts(kit, bare, yardTables.sizes);
    expect([costs.module(2438.4), costs.platform]).toEqual([null, null]);
    expect(costs.support("open-crate", 0.254)).toBeGreaterThan(0);
    expect(costs.missing).toEqual(["2x10", "mesh-clip"]);
  });

  test("a piece longer than any stick is named with its length", () => {
    const short = yardPrices.filter((p) => p.length_mm === null || p.length_mm < 3000);
    expect(partCosts(kit, short, yardTables.sizes).missing).toEqual(["2x4, 3657.6 mm"]);
  });
});
