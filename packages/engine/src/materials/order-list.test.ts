import { describe, expect, test } from "vitest";
import { firstFitPlans, yardPrices } from "../../test/support/yard-prices.ts";
import { cuttingProblems, stockPrices } from "./cutting-problems.ts";
import { orderList, toCents } from "./order-list.ts";
import { priceProblems } from "./price-problems.ts";
import type { Price, TakeOff } from "./types.ts";

const timber = (size: string, length_mm: number, count: number) => ({
  size,
  length_mm,
  count,
  uses: [{ use: "stringer", count }],
});
const off: TakeOff = {
  timber: [timber("2x4", 2438.4, 4), timber("2x4", 482.6, 9), timber("2x6", 482.6, 3)],
  counted: [{ item: "screw-10x3", name: "screw", count: 1100 }],
};

describe("cuttingProblems", () => {
  test("whole millimetres: pieces up, stock down, and a piece that is a whole stick stays one", () => {
    const { problems, unpriced } = cuttingProblems(off, yardPrices, 3);
    const four = problems.find((p) => p.size === "2x4")!.problem;
    expect(four.kerf_mm).toBe(3);
    expect(four.stock.map((s) => s.length_mm)).toEqual([2438, 3048, 3657, 4876]);
    expect(four.pieces).toEqual([
      { length_mm: 2438, count: 4 },
      { length_mm: 483, count: 9 },
    ]);
    expect(unpriced).toEqual([]);
  });

  test("what no stock can serve is stated: sizes without a price, pieces longer than any stick", () => {
    const more = { ...off, timber: [...off.timber, timber("4x4", 600, 2), timber("2x4", 6000, 1)] };
    const { problems, unpriced } = cuttingProblems(more, yardPrices, 3);
    expect(problems.map((p) => p.size)).toEqual(["2x4", "2x6"]);
    expect(unpriced).toEqual([
      { item: "2x4, 6000 mm", needed: 1 },
      { item: "4x4, 600 mm", needed: 2 },
    ]);
  });

  test("the cheaper of two prices for one stick counts, by the piece", () => {
    const bundle: Price = { ...yardPrices.find((p) => p.item === "2x4")!, pack: 10, price: 40 };
    expect(stockPrices([...yardPrices, bundle], "2x4").get(2438)).toBe(bundle);
  });
});

describe("orderList", () => {
  const plans = firstFitPlans(cuttingProblems(off, yardPrices, 3).problems);

  test("sticks from the plan, screws in the cheapest mix of packs, each line to the cent", () => {
    const { order, unpriced } = orderList(off, plans, yardPrices);
    expect(unpriced).toEqual([]);
    expect(order.map((l) => [l.item, l.length_mm, l.quantity, l.needed, l.amount])).toEqual([
      ["2x4", 4876.8, 4, 4, 60.16],
      ["2x6", 4876.8, 1, 1, 22.72],
      ["screw-10x3", null, 1, 100, 14.75],
      ["screw-10x3", null, 1, 1000, 109.5],
    ]);
    for (const line of order)
      expect([line.price_date, line.price_source]).toEqual(["2027-02-01", "invented for tests"]);
  });

  test("a price sold by the bundle is bought in whole bundles", () => {
    const bundles = yardPrices.map((p) => (p.item === "2x4" ? { ...p, pack: 3, price: p.price * 3 } : p));
    const line = orderList(off, firstFitPlans(cuttingProblems(off, bundles, 3).problems), bundles).order[0]!;
    expect([line.needed, line.quantity]).toEqual([4, 2]);
  });

  test("items without a price, and sizes without a plan, are named and not ordered", () => {
    const bare = yardPrices.filter((p) => p.item !== "screw-10x3" && p.item !== "2x6");
    const { order, unpriced } = orderList(off, [], bare);
    expect(order).toEqual([]);
    expect(unpriced).toEqual([
      { item: "2x6, 482.6 mm", needed: 3 },
      { item: "2x4", needed: 13 },
      { item: "screw-10x3", needed: 1100 },
    ]);
  });
});

test("cents: halves away from zero, floating dust ignored", () => {
  expect([1.005, 2.675, -1.005, 0.1 + 0.2, 0].map(toCents)).toEqual([1.01, 2.68, -1.01, 0.3, 0]);
});

describe("priceProblems", () => {
  const good = yardPrices[0]!;
  const codes = (p: Partial<Price>): string[] =>
    priceProblems([{ ...good, ...p }], "USD", "2027-03-01").map((q) => `${q.severity} ${q.code}`);

  test("a good list has none; every fault names its line", () => {
    expect(priceProblems(yardPrices, "USD", "2027-03-01")).toEqual([]);
    const [problem] = priceProblems([good, { ...good, item: "2x9", price: -1 }], "USD", null);
    expect(problem).toMatchObject({ file: "prices.csv", place: "line 3, 2x9", value: "-1" });
  });

  test.each([
    [{ currency: "EUR" }, "error price-currency"],
    [{ price: Number.NaN }, "error price-number"],
    [{ pack: 0 }, "error price-number"],
    [{ length_mm: -3 }, "error price-number"],
    [{ date: "1 March" }, "error price-date"],
    [{ date: "2026-08-01" }, "warning price-old"],
  ] as const)("%o", (change, code) => {
    expect(codes(change)).toEqual([code]);
  });

  test("180 days old is not old yet, 181 is", () => {
    expect(codes({ date: "2026-09-02" })).toEqual([]);
    expect(codes({ date: "2026-09-01" })).toEqual(["warning price-old"]);
  });

  test("the same thing on two lines is a warning", () => {
    expect(priceProblems([good, good], "USD", null).map((p) => p.code)).toEqual(["price-twice"]);
  });
});
